/**
 * `npm run bench`: bundles the measurement as the page and the command line are bundled (module by module, constants of
 * other files cost a load each, and a step has many) and runs it.
 */
import { spawnSync } from "node:child_process";
import { build } from "vite";

const OUT = ".cache/bench";

await build({
  configFile: false,
  logLevel: "warn",
  publicDir: false,
  build: { ssr: "tests/bench/measure.ts", outDir: OUT, emptyOutDir: true, target: "node20" },
});
process.exitCode = spawnSync(process.execPath, ["--expose-gc", `${OUT}/measure.js`], { stdio: "inherit" }).status ?? 1;
