/**
 * `npm run fuzz -- --minutes N [--seed N]`: the promises of `tests/promise/fuzz` under cases that nobody has met, for as long as is asked.
 * Prints each finding with its smallest case and the seed that leads to it again; ends with code 1 when there is one.
 */
import { parseArgs } from "node:util";
import fc from "fast-check";
import { LONG_PROMISES, PROMISES } from "./promise/fuzz/properties.ts";

const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "10" },
    seed: { type: "string", default: String(Date.now() % 2 ** 31) },
    only: { type: "string", default: "" },
  },
});
const minutes = Number(values.minutes);
let seed = Number(values.seed);
if (!(minutes > 0) || !Number.isInteger(seed)) {
  console.error("Write npm run fuzz -- --minutes N, with a number above 0, and --seed with a whole number.");
  process.exit(2);
}

const endMs = performance.now() + minutes * 60_000;
const promises = [...PROMISES, ...LONG_PROMISES].filter(({ name }) => name.includes(values.only));
const found = new Set<string>();
let cases = 0;
let turn = 0;
while (performance.now() < endMs && found.size < promises.length) {
  // Those that have failed are left out: the next turn would only find them again.
  const open = promises.filter(({ name }) => !found.has(name));
  const { name, property, cases: numRuns } = open[turn++ % open.length]!;
  seed = (seed + 1) % 2 ** 31;
  const details = await fc.check(property, {
    seed,
    numRuns,
    interruptAfterTimeLimit: Math.max(1, endMs - performance.now()),
  });
  cases += details.numRuns;
  if (!details.failed || !details.counterexample) continue;
  found.add(name);
  const error = details.errorInstance instanceof Error ? details.errorInstance.stack : String(details.errorInstance);
  console.log(`\n✗ ${name}\n${error?.split("\n").slice(0, 6).join("\n")}`);
  console.log(`The smallest case found (seed ${seed}):\n${fc.stringify((details.counterexample as [unknown])[0])}`);
}
console.log(`\n${cases} cases, ${found.size} findings.`);
process.exitCode = found.size > 0 ? 1 : 0;
