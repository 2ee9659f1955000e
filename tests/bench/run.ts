/**
 * `npm run bench`: how long a member-step takes, beside a bare loop of multiply-adds in the same run (seconds differ
 * from machine to machine, the ratio hardly), and whether the step loop leaves the heap alone.
 */
import { Bench } from "tinybench";
import { bareLoop } from "./bareLoop.ts";
import { heapGrowth } from "./heapGrowth.ts";

const MEMBERS = 500;
const STEPS = 96;
const REPEATS = 100; // for the heap: some millions of member-steps

const bare = bareLoop(MEMBERS, STEPS);
const bench = new Bench({ time: 1000 });
bench.add("bare multiply-adds", () => void bare());
await bench.run();

const nsPerStep = bench.tasks.map((task) => {
  const { result } = task;
  if (!("latency" in result)) throw new Error(`${task.name} did not finish: ${result.state}`);
  return { name: task.name, ns: (result.latency.p50 * 1e6) / (MEMBERS * STEPS) };
});
const [yardstick] = nsPerStep;
for (const { name, ns } of nsPerStep) {
  console.log(`${name}: ${ns.toFixed(2)} ns per member-step, ${(ns / yardstick!.ns).toFixed(1)} times the bare loop`);
}

const { bytes, collections } = await heapGrowth(() => {
  for (let i = 0; i < REPEATS; i++) bare();
});
const millions = ((REPEATS * MEMBERS * STEPS) / 1e6).toFixed(1);
console.log(`heap after ${millions} million member-steps: ${bytes} bytes more, ${collections} collections`);
