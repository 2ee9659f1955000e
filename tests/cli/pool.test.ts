import { existsSync } from "node:fs";
import { Worker } from "node:worker_threads";
import { expect, test } from "vitest";
import { poolOf, runOdds, runSizes } from "../../engine/cli/pool.ts";
import { drivers } from "../../engine/drivers/drivers.ts";
import { runDrivers } from "../../engine/drivers/runDrivers.ts";
import { runMembers } from "../../engine/odds/odds.ts";
import type { TaskOrder, TaskReply } from "../../engine/pool/taskOrder.ts";
import { prepareSizes } from "../../engine/size/sizeMap.ts";
import { sizeMembers } from "../../engine/size/sizeMembers.ts";
import { bitsOf } from "../bitsOf.ts";
import { oneEnsemble, oneMapTask, oneTask } from "../engine/pool/oneEnsemble.ts";
import { wholeOdds } from "../engine/pool/wholeOdds.ts";

const { scenario, surroundings, seed } = oneTask(0, 1);
const whole = bitsOf(runMembers(oneEnsemble(), 0, 101));

test.each([0, 1, 4])("%i workers of Node give the same bits", async (workers) => {
  const run = await runOdds(scenario, surroundings, seed, 0, 101, { workers, fewest: 10 });
  expect(run.ok && bitsOf(run.part)).toEqual(whole);
});

test.each([0, 2])("%i workers of Node give the same map and the same drivers", async (workers) => {
  const task = oneMapTask(0, 24);
  const ready = prepareSizes(task.document, task.x, task.y, {}, task.seed);
  const map = await runSizes(task, { workers, fewest: 5 });
  expect(ready.ok && map.ok && bitsOf(map.part)).toEqual(ready.ok && bitsOf(sizeMembers(ready.map, 0, 24)));
  const found = await runDrivers(poolOf(workers), oneEnsemble(), 24, { fewest: 5 });
  expect(found.ok && found.part).toEqual(drivers(oneEnsemble(), 24));
});

test("left to itself, the pool takes as many workers as the machine has cores", async () => {
  const run = await runOdds(scenario, surroundings, seed, 0, 101);
  expect(run.ok && bitsOf(run.part)).toEqual(whole);
});

test("cancelling reaches a worker of Node", async () => {
  const cancel = new AbortController();
  const options = { workers: 2, signal: cancel.signal, onProgress: () => cancel.abort() };
  await expect(runOdds(scenario, surroundings, seed, 0, 1_000_000, options)).rejects.toMatchObject({
    name: "AbortError",
  });
});

test("the bundled worker does the same work", async () => {
  if (!existsSync("dist/poolWorker.js"))
    throw new Error("dist/poolWorker.js is not there; run npm run build:node first.");
  const worker = new Worker("./dist/poolWorker.js");
  try {
    const order: TaskOrder = { kind: "run", number: 1, task: oneTask(0, 101) };
    worker.postMessage(order);
    const end = await new Promise<TaskReply>((resolve, reject) => {
      worker.on("message", (said: TaskReply) => said.kind === "end" && resolve(said)).on("error", reject);
    });
    if (end.kind !== "end") throw new Error(`the worker said ${end.kind}`);
    expect(bitsOf(wholeOdds(end.end))).toEqual(whole);
  } finally {
    await worker.terminate();
  }
});
