import { chmodSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

/** The command line and the library. Node 20 cannot strip types, so both are bundled; packages stay outside. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: true,
    target: "node20",
    outDir: "dist",
    emptyOutDir: false, // dist/explorer lives there too
    rolldownOptions: {
      input: { duskline: "engine/cli/main.ts", index: "engine/index.ts", poolWorker: "engine/cli/poolWorker.ts" },
      output: { entryFileNames: "[name].js", chunkFileNames: "chunks/[name].js" },
    },
  },
  plugins: [
    {
      name: "make-command-executable",
      closeBundle: () => chmodSync(fileURLToPath(new URL("dist/duskline.js", import.meta.url)), 0o755),
    },
  ],
});
