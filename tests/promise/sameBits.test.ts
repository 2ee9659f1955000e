import { Worker } from "node:worker_threads";
import { beforeAll, expect, test } from "vitest";
import { bitsBundle } from "../bitsBundle.ts";
import { differingBits } from "../bitsOf.ts";
import type { ScenarioBits } from "../bitsReport.ts";
import { record } from "../truth/record.ts";

/** ECMA-262 leaves these to the engine ("implementation-approximated"); square roots and the four operations it does not. */
const APPROXIMATED =
  "acos acosh asin asinh atan atanh atan2 cbrt cos cosh exp expm1 hypot log log1p log10 log2 pow sin sinh tan tanh";

/** Moves what each of them returns by up to `units` in the last place, never the same way twice running. */
const NOISE = (units: number) => `
  const number = new Float64Array(1);
  const bits = new BigInt64Array(number.buffer);
  let turn = 0;
  for (const name of ${JSON.stringify(APPROXIMATED.split(" "))}) {
    const exact = Math[name];
    Math[name] = (...values) => {
      number[0] = exact(...values);
      // Whole results are exact everywhere; next to nothing, a few units would leave the numbers altogether.
      if (!Number.isFinite(number[0]) || Number.isInteger(number[0]) || Math.abs(number[0]) < 1e-290) return number[0];
      turn = (Math.imul(turn, 1664525) + 1013904223) | 0;
      bits[0] += BigInt(((turn >>> 16) % 3) - 1) * ${units}n;
      return number[0];
    };
  }`;

let program: string;

beforeAll(async () => {
  program = await bitsBundle("es2015");
});

/** The report of an engine whose functions are off by so many units in the last place: a worker has a Math of its own. */
function reportOf(units: number, members: number): Promise<ScenarioBits[]> {
  const noise = units > 0 ? `{${NOISE(units)}}` : "";
  const report = `${noise} ${program}
    bits.bitsReport("4127", ${members}).then((report) => require("node:worker_threads").parentPort.postMessage(report));`;
  return new Promise((resolve, reject) => {
    new Worker(report, { eval: true }).once("message", resolve).once("error", reject);
  });
}

const differences = (one: ScenarioBits[], other: ScenarioBits[]) =>
  one.flatMap((mine, k) => [
    ...differingBits(mine.prepared, other[k]!.prepared).map((name) => `${mine.name}: ${name}`),
    ...differingBits(mine.counted, other[k]!.counted).map((name) => `${mine.name}: ${name}`),
  ]);

test("sines, powers and exponentials a little off, as another JavaScript engine may have them, change no bit", async () => {
  const exact = await reportOf(0, 20);
  // Real engines differ by one or two; eight leaves room for what several in a row add up to.
  const found = differences(exact, await reportOf(8, 20));
  record({
    what: "arrays and numbers of an ensemble that change in any bit when sines, powers and exponentials are up to 8 units in the last place off",
    source: "the same code with exact functions (ECMA-262 leaves their last bits to the engine)",
    tolerance: 0,
    why: "prepared tables are rounded to 2^-20, and steps use + − × ÷ and square roots only",
    worst: found.length,
    unit: "",
    n: exact.reduce((sum, each) => sum + Object.keys(each.prepared).length + Object.keys(each.counted).length, 0),
  });
  expect(found).toEqual([]);
});

test("far enough off, they do", async () => {
  const found = differences(await reportOf(0, 20), await reportOf(2 ** 36, 20));
  for (const name of ["clear.dniWm2", "groups.0.perStep", "operators.keenness", "outcomes.lowestShare"]) {
    expect(
      found.some((each) => each.endsWith(name)),
      name,
    ).toBe(true);
  }
});
