/**
 * How long preparing and stepping the example take, beside a bare loop of multiply-adds over arrays of
 * the same shapes in the same run (seconds differ from machine to machine, the ratio much less), and whether the step
 * loop leaves the heap alone.
 */
import { Bench } from "tinybench";
import { prepare } from "../../engine/run/prepare.ts";
import { turbidityOf } from "../../engine/run/prepareSky.ts";
import { makeRunRows } from "../../engine/run/runRows.ts";
import { stepRun } from "../../engine/run/stepRun.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { dayLight } from "../../engine/sky/dayClearIndex.ts";
import { makeSkyLight, prepareSplit, splitPrepared } from "../../engine/sky/splitDiffuse.ts";
import { bareLoop } from "./bareLoop.ts";
import { benchScenario } from "./benchScenario.ts";
import { heapGrowth } from "./heapGrowth.ts";

const HEAP_STEPS = 3_000_000;

const read = readScenario(benchScenario);
if (!read.ok) throw new Error(read.problems[0]!.message);
const { scenario } = read;
const ready = prepare(scenario);
if (!ready.ok) throw new Error(ready.problems[0]!.message);
const { prepared } = ready;
const { grid, groups, loads, clear, airTempC, inputs } = prepared;
const run = makeRunRows(prepared);
const light = makeSkyLight(grid.steps);
const days = dayLight({ ...scenario.place, linkeTurbidity: turbidityOf(scenario, grid) }, grid.middleMs, grid.localDay);
const split = prepareSplit(clear, days, grid.stepH);
const clearIndex = new Float64Array(grid.steps).fill(0.7);
const dayIndex = new Float64Array(grid.dates.length).fill(0.7);

const bare = bareLoop([run.rows.length, inputs.rows.length, ...groups.map((group) => group.perStep.length)]);
const step = () => {
  splitPrepared(split, dayIndex, clearIndex, light);
  stepRun(prepared, light, airTempC, inputs, run);
};

const bench = new Bench({ time: 1000 });
bench.add("bare multiply-adds", bare);
bench.add("full step, sky to bank", step);
bench.add("prepare", () => void prepare(scenario));
await bench.run();

console.log(
  `${grid.steps} steps of ${grid.stepMs / 60_000} min, ${groups.length} panel groups, ${scenario.obstacles.length} trees, ${loads.stations.length} stations`,
);
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
