import { chmodSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

const inDist = (name: string) => fileURLToPath(new URL(`dist/${name}`, import.meta.url));

/** The command line and the library. Node 20 cannot strip types, so both are bundled; packages stay outside. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: true,
    target: "node20",
    outDir: "dist",
    emptyOutDir: false, // dist/explorer lives there too
    rolldownOptions: {
      input: {
        duskline: "engine/cli/main.ts",
        commandLine: "engine/cli/commandLine.ts", // by itself, so that tests call it without a new process each time
        index: "engine/index.ts",
        node: "engine/cli/nodePool.ts",
        poolWorker: "engine/cli/poolWorker.ts",
        lineWorker: "engine/cli/lineWorker.ts",
      },
      output: { entryFileNames: "[name].js", chunkFileNames: "chunks/[name].js" },
    },
  },
  plugins: [
    {
      name: "make-command-executable",
      buildStart: () => rmSync(inDist("chunks"), { recursive: true, force: true }), // those of an earlier build have other names
      closeBundle: () => chmodSync(inDist("duskline.js"), 0o755),
    },
  ],
});
