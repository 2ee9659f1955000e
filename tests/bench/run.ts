/**
 * `npm run bench`: how long preparing and stepping the example take, beside a bare loop of multiply-adds over arrays of
 * the same shapes in the same run (seconds differ from machine to machine, the ratio much less), and whether the step
 * loop leaves the heap alone.
 */
import { readFileSync } from "node:fs";
import { Bench } from "tinybench";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { prepare } from "../../engine/run/prepare.ts";
import { makeRunRecord } from "../../engine/run/runRecord.ts";
import { stepRun } from "../../engine/run/stepRun.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { bareLoop } from "./bareLoop.ts";
import { heapGrowth } from "./heapGrowth.ts";

const EXAMPLE = "scenarios/walnut-grove.json";
const HEAP_STEPS = 3_000_000;

const read = readScenario(readFileSync(EXAMPLE, "utf8"));
if (!read.ok) throw new Error(`${EXAMPLE}: ${read.problems[0]!.message}`);
const { scenario } = read;
const surroundings = { climate: await loadClimateTables() };
const ready = prepare(scenario, surroundings);
if (!ready.ok) throw new Error(`${EXAMPLE}: ${ready.problems[0]!.message}`);
const { prepared } = ready;
const { grid, groups, sources, loads, selector, light, airTempC } = prepared;
const record = makeRunRecord(grid.steps, groups.length, sources.length, loads.stations.length, selector.inputs);

const bare = bareLoop(Object.values(record).map((array: Float64Array) => array.length));
const step = () => stepRun(prepared, light, airTempC, record);

const bench = new Bench({ time: 1000 });
bench.add("bare multiply-adds", bare);
bench.add("step loop", step);
bench.add("prepare", () => void prepare(scenario, surroundings));
await bench.run();

console.log(`${EXAMPLE}: ${grid.steps} steps, ${groups.length} panel groups, ${loads.stations.length} stations`);
const bareUs = medianUs("bare multiply-adds");
for (const { name } of bench.tasks) {
  const us = medianUs(name);
  const perStepNs = ((us / grid.steps) * 1000).toFixed(1);
  console.log(`${name}: ${us.toFixed(1)} µs, ${perStepNs} ns a step, ${(us / bareUs).toFixed(1)} times the bare loop`);
}

const runs = Math.ceil(HEAP_STEPS / grid.steps);
const { bytes, collections } = await heapGrowth(() => {
  for (let i = 0; i < runs; i++) step();
});
const millions = ((runs * grid.steps) / 1e6).toFixed(1);
const found = collections === 0 ? "the step loop allocates nothing that counts" : "the step loop ALLOCATES";
console.log(`heap after ${millions} million steps: ${bytes} bytes more, ${collections} collections: ${found}`);

function medianUs(name: string): number {
  const result = bench.getTask(name)?.result;
  if (!result || !("latency" in result)) throw new Error(`${name} did not finish: ${result?.state}`);
  return result.latency.p50 * 1000;
}
