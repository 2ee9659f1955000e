/**
 * `npm run bench`, or `npm run bench measureEnsemble` for one of them: bundles the measurements as the page and the command line are bundled (module by module, constants of
 * other files cost a load each, and a step has many) and runs them,
 * each in a process of its own.
 */
import { spawnSync } from "node:child_process";
import { build } from "vite";

const OUT = ".cache/bench";
const MEASUREMENTS = ["measure", "measureEnsemble", "measureBrowser"].filter(
  (name) => process.argv.length === 2 || process.argv.includes(name),
);

await build({
  configFile: false,
  logLevel: "warn",
  publicDir: false,
  build: {
    ssr: true,
    outDir: OUT,
    emptyOutDir: true,
    target: "node20",
    rolldownOptions: {
      input: [...MEASUREMENTS.map((name) => `tests/bench/${name}.ts`), "engine/cli/poolWorker.ts"],
    },
  },
});
process.exitCode = 0;
for (const name of MEASUREMENTS) {
  const { status } = spawnSync(process.execPath, ["--expose-gc", `${OUT}/${name}.js`], { stdio: "inherit" });
  process.exitCode ||= status ?? 1;
}
