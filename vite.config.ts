import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import solid from "vite-plugin-solid";
import { hostingFiles } from "./explorer/hosting/hostingFiles.ts";
import { PAGE_HEADERS } from "./explorer/hosting/pagePolicy.ts";
import { OFFLINE_WORKER } from "./explorer/offline/offlineFile.ts";
import { precacheFiles } from "./explorer/offline/precacheFiles.ts";
import { stayInside } from "./explorer/offline/stayInside.ts";
import { shareWorkers } from "./explorer/pool/shareWorkers.ts";
import { wordsLater } from "./explorer/wordsLater.ts";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

// 127.0.0.1 by number: "localhost" may mean ::1 to the server and something else's port 4173 to the browser.
const host = "127.0.0.1";

export default defineConfig({
  root: "explorer",
  base: "./",
  appType: "mpa", // one page: any other address is not found, rather than the page again
  publicDir: "offline/public",
  plugins: [shareWorkers(), wordsLater(), solid(), hostingFiles(), precacheFiles(), stayInside(here("dist/explorer"))],
  build: {
    outDir: here("dist/explorer"),
    emptyOutDir: true,
    rolldownOptions: {
      input: { index: here("explorer/index.html"), offlineWorker: here("explorer/offline/offlineWorker.ts") },
      output: {
        // The schemas' library and the word that forbids it to try eval are one file, so that no schema is made before the word is given.
        codeSplitting: {
          groups: [{ name: "schema", test: /[\\/]node_modules[\\/]zod[\\/]|[\\/]explorer[\\/]noEval\.ts$/ }],
        },
        entryFileNames: ({ name }) => (`${name}.js` === OFFLINE_WORKER ? OFFLINE_WORKER : "assets/[name]-[hash].js"),
      },
    },
  },
  server: { host },
  preview: { host, headers: PAGE_HEADERS },
});
