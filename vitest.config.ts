import { defineConfig } from "vitest/config";
import { BROWSER_TEST_MS, NODE_TEST_MS, WAIT_MS } from "./tests/browser/waits.ts";

const NODE_TESTS = "tests/{engine,truth,promise,example,cli,explorer}/**/*.test.ts";
const MOCKED_TESTS = "tests/**/*.mocked.test.ts";
/** Node is otherwise given Solid's half for servers, in which nothing ever changes. */
const SOLID_FOR_PAGES = { alias: [{ find: /^solid-js$/, replacement: "solid-js/dist/solid.js" }] };

export default defineConfig({
  test: {
    css: { include: [/\.css\?raw$/] }, // a report carries its rules with it
    projects: [
      {
        extends: true,
        resolve: SOLID_FOR_PAGES,
        test: {
          name: "node",
          include: [NODE_TESTS],
          exclude: [MOCKED_TESTS],
          isolate: false, // 220 files share what they import, which took longer than many of them
          maxWorkers: 2,
          testTimeout: NODE_TEST_MS,
          hookTimeout: NODE_TEST_MS,
        },
      },
      {
        extends: true,
        resolve: SOLID_FOR_PAGES,
        test: {
          name: "mocked", // replaces modules, and so has its own of each
          include: [MOCKED_TESTS],
          maxWorkers: 2,
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
