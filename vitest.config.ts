import { defineConfig } from "vitest/config";
import { BROWSER_TEST_MS, NODE_TEST_MS, WAIT_MS } from "./tests/browser/waits.ts";

export default defineConfig({
  test: {
    css: { include: [/\.css\?raw$/] }, // a report carries its rules with it
    projects: [
      {
        extends: true,
        // Node is otherwise given Solid's half for servers, in which nothing ever changes.
        resolve: { alias: [{ find: /^solid-js$/, replacement: "solid-js/dist/solid.js" }] },
        test: {
          name: "node",
          include: ["tests/{engine,truth,promise,example,cli,explorer}/**/*.test.ts"],
          testTimeout: NODE_TEST_MS,
          hookTimeout: NODE_TEST_MS,
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: "tests/browser/serveExplorer.ts",
          isolate: false, // files share what they import; pages are what is kept apart, and each file has its own
          maxWorkers: 2, // while one file waits for its page, the other's has the second core
          testTimeout: BROWSER_TEST_MS,
          hookTimeout: BROWSER_TEST_MS,
          expect: { poll: { timeout: WAIT_MS } },
        },
      },
    ],
  },
});
