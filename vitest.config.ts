import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/{engine,truth,promise,example,cli,explorer}/**/*.test.ts"],
    testTimeout: 60_000,
  },
});
