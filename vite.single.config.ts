import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import solid from "vite-plugin-solid";
import { oneFile } from "./explorer/single/oneFile.ts";
import { wordsLater } from "./explorer/wordsLater.ts";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The page as one file, which opens by double click. */
export default defineConfig({
  root: "explorer",
  mode: "single",
  publicDir: false,
  // The map's finer coast is a quarter of what the file may be; near by, the one file shows the coarse one.
  resolve: { alias: { "world-atlas/countries-50m.json": "world-atlas/countries-110m.json" } },
  plugins: [oneFile("duskline.html"), wordsLater(), solid()],
  build: {
    outDir: here("dist"),
    emptyOutDir: false, // the page and the command line live there too
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    cssCodeSplit: false,
    modulePreload: false,
    chunkSizeWarningLimit: 4000,
    rolldownOptions: {
      input: here("explorer/singleMain.ts"),
      output: { format: "iife", codeSplitting: false },
    },
  },
});
