import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    testTimeout: 60_000,
    css: { include: [/\.css\?raw$/] }, // a report carries its rules with it
    projects: [
      {
        extends: true,
        test: {
          name: "node",
          include: ["tests/{engine,truth,promise,example,cli,explorer}/**/*.test.ts"],
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: "tests/browser/serveExplorer.ts",
          fileParallelism: false, // one browser at a time is plenty for two cores
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
