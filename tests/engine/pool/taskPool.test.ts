import { expect, test } from "vitest";
import { drivers } from "../../../engine/drivers/drivers.ts";
import { runDrivers } from "../../../engine/drivers/runDrivers.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { EngineFault } from "../../../engine/fault.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { oddsTask } from "../../../engine/odds/oddsTask.ts";
import { serveTasks } from "../../../engine/pool/task.ts";
import type { TaskOrder } from "../../../engine/pool/taskOrder.ts";
import { makeTaskPool } from "../../../engine/pool/taskPool.ts";
import type { ConnectWorker } from "../../../engine/pool/workers.ts";
import { prepareSizes } from "../../../engine/size/sizeMap.ts";
import { sizeMembers } from "../../../engine/size/sizeMembers.ts";
import { sizesTask } from "../../../engine/size/sizesTask.ts";
import { TaskCancelled } from "../../../engine/task/taskRun.ts";
import { pairedCharge } from "../../../engine/versus/pairedCharge.ts";
import { pairsTask } from "../../../engine/versus/pairsTask.ts";
import { bitsOf } from "../../bitsOf.ts";
import { oneEnsemble, oneMapTask, oneTask } from "./oneEnsemble.ts";

/** Workers that are none: each takes turns with the others, and what passes between is cloned as a real one's would be. */
function pretendWorkers() {
  const orders: TaskOrder[][] = [];
  const losses: ((reason: string) => void)[] = [];
  let stopped = 0;
  const connect: ConnectWorker = (reply, broken) => {
    const mine: TaskOrder[] = [];
    orders.push(mine);
    losses.push(broken);
    const take = serveTasks(
      (said) => reply(structuredClone(said)),
      () => new Promise((resolve) => setImmediate(resolve)),
    );
    return {
      post: (order) => {
        mine.push(order);
        take(structuredClone(order));
      },
      keep: () => {},
      stop: () => {
        stopped++;
      },
    };
  };
  return { connect, orders, losses, stopped: () => stopped };
}

const whole = bitsOf(runMembers(oneEnsemble(), 10, 131));

test.each([1, 2, 4, 8])("%i workers give the same bits", async (workers) => {
  const pretend = pretendWorkers();
  const run = await makeTaskPool(workers, pretend.connect).run(oddsTask, oneTask(10, 131), { fewest: 10 });
  expect(run.ok && bitsOf(run.part)).toEqual(whole);
  expect(pretend.orders.map((orders) => orders.length)).toEqual(Array.from({ length: workers }, () => 1));
});

test.each([1, 3])("%i workers give the same map, pairs and drivers, to the last bit", async (workers) => {
  const pool = makeTaskPool(workers, pretendWorkers().connect);
  const task = oneMapTask(3, 24);
  const ready = prepareSizes(task.document, task.x, task.y, {}, task.seed);
  const map = await pool.run(sizesTask, task, { fewest: 5 });
  expect(ready.ok && map.ok && bitsOf(map.part)).toEqual(ready.ok && bitsOf(sizeMembers(ready.map, 3, 24)));
  const ensemble = oneEnsemble();
  const said: number[] = [];
  const found = await runDrivers(pool, ensemble, 31, { fewest: 5, onProgress: (done, of) => said.push(done / of) });
  expect(found.ok && found.part).toEqual(drivers(ensemble, 31));
  expect(said.at(-1)).toBe(1);
  expect(said).toEqual([...said].sort((a, b) => a - b));
  const larger = { ...oneTask(0, 1).scenario, bank: { ...oneTask(0, 1).scenario.bank, blockAh: 90 } };
  const pairs = await pool.run(pairsTask, { ...oneTask(2, 40), other: larger }, { fewest: 5 });
  const other = prepareEnsemble(larger, {}, "4127");
  if (!other.ok || !pairs.ok) throw new Error("prepares");
  expect(bitsOf(pairs.part)).toEqual(bitsOf(pairedCharge(ensemble, other.ensemble, 2, 40)));
});

test("stretches shorter than the workers' equal shares are taken by whoever is free", async () => {
  const pretend = pretendWorkers();
  const run = await makeTaskPool(2, pretend.connect).run(oddsTask, oneTask(10, 131), { fewest: 10, most: 25 });
  expect(run.ok && bitsOf(run.part)).toEqual(whole);
  expect(pretend.orders.map((orders) => orders.length).reduce((sum, count) => sum + count)).toBe(5);
});

test("what waits in the queue is dropped when nobody wants it any more", async () => {
  const pretend = pretendWorkers();
  const pool = makeTaskPool(1, pretend.connect);
  const first = pool.run(oddsTask, oneTask(0, 60));
  const cancel = new AbortController();
  const second = pool.run(oddsTask, oneTask(0, 1_000_000), { signal: cancel.signal });
  cancel.abort();
  await expect(second).rejects.toThrow(TaskCancelled);
  expect((await first).ok).toBe(true);
  expect(pretend.orders[0]).toHaveLength(1);
});

test("workers stay for the next ensemble, and few members take few of them", async () => {
  const pretend = pretendWorkers();
  const pool = makeTaskPool(3, pretend.connect);
  await pool.run(oddsTask, oneTask(0, 30), { fewest: 10 });
  await pool.run(oddsTask, oneTask(0, 30), { fewest: 10 });
  await pool.run(oddsTask, oneTask(0, 30));
  expect(pretend.orders.map((orders) => orders.length)).toEqual([3, 2, 2]);
  pool.close();
  expect(pretend.stopped()).toBe(3);
});

test("two ensembles at once do not mix", async () => {
  const pool = makeTaskPool(2, pretendWorkers().connect);
  const runs = await Promise.all([
    pool.run(oddsTask, oneTask(10, 131), { fewest: 10 }),
    pool.run(oddsTask, oneTask(10, 131, "4128"), { fewest: 10 }),
  ]);
  expect(runs.map((run) => run.ok && bitsOf(run.part))).toEqual([
    whole,
    bitsOf(runMembers(oneEnsemble("4128"), 10, 131)),
  ]);
});

test("progress never goes back and ends with all", async () => {
  const said: number[] = [];
  const pool = makeTaskPool(3, pretendWorkers().connect);
  await pool.run(oddsTask, oneTask(0, 12_000), { fewest: 10, onProgress: (done, of) => said.push(done + of / 1000) });
  expect(said.length).toBeGreaterThan(6);
  expect(said).toEqual([...said].sort((a, b) => a - b));
  expect(said.at(-1)).toBe(12_012);
});

test("cancelling ends all workers' shares, and the workers are there for the next", async () => {
  const pretend = pretendWorkers();
  const pool = makeTaskPool(2, pretend.connect);
  const cancel = new AbortController();
  const run = pool.run(oddsTask, oneTask(0, 1_000_000), { signal: cancel.signal, onProgress: () => cancel.abort() });
  await expect(run).rejects.toThrow(TaskCancelled);
  await expect(run).rejects.toMatchObject({ name: "AbortError" });
  expect(pretend.orders.map((orders) => orders.at(-1)!.kind)).toEqual(["cancel", "cancel"]);
  expect((await pool.run(oddsTask, oneTask(0, 30))).ok).toBe(true);
  expect(pretend.orders).toHaveLength(2);
  await expect(pool.run(oddsTask, oneTask(0, 30), { signal: cancel.signal })).rejects.toThrow(TaskCancelled);
});

test("closing with work left ends that work", async () => {
  const pool = makeTaskPool(2, pretendWorkers().connect);
  const run = pool.run(oddsTask, oneTask(0, 1_000_000));
  pool.close();
  await expect(run).rejects.toThrow(TaskCancelled);
});

test("what is wrong with the scenario comes back as problems", async () => {
  const { scenario, ...task } = oneTask(0, 30);
  const untyped = { ...scenario, weather: { ...scenario.weather, monthlyKt: undefined } } as never;
  const run = await makeTaskPool(2, pretendWorkers().connect).run(
    oddsTask,
    { ...task, scenario: untyped },
    { fewest: 10 },
  );
  expect(run.ok ? [] : run.problems.map(({ code }) => code)).toEqual(["no-climate"]);
});

test("a fault comes back as one, with seed and member, and stops the others", async () => {
  const { scenario, ...task } = oneTask(0, 30);
  const broken = { ...scenario, bank: { ...scenario.bank, healthShare: Number.NaN } };
  const run = makeTaskPool(2, pretendWorkers().connect).run(oddsTask, { ...task, scenario: broken }, { fewest: 10 });
  await expect(run).rejects.toThrow(EngineFault);
  await expect(run).rejects.toThrow(/^member \d+ of seed "4127": /);
});

test("a worker that is lost is a fault, and a new one takes its place", async () => {
  const pretend = pretendWorkers();
  const pool = makeTaskPool(1, pretend.connect);
  const run = pool.run(oddsTask, oneTask(0, 1_000_000));
  pretend.losses[0]!("out of memory");
  await expect(run).rejects.toThrow("a worker was lost: out of memory");
  expect((await pool.run(oddsTask, oneTask(0, 30))).ok).toBe(true);
  expect(pretend.orders).toHaveLength(2);
});

test.each([
  [0, 0],
  [5, 4],
  [-1, 5],
  [0, 1.5],
  [0, 1_000_001],
  [Number.NaN, 5],
])("members %d to %d are refused", async (from, to) => {
  await expect(makeTaskPool(1, pretendWorkers().connect).run(oddsTask, oneTask(from, to))).rejects.toThrow(RangeError);
});

test("a worker is given the members again that it ran before, whoever is free first", async () => {
  const pretend = pretendWorkers();
  const pool = makeTaskPool(3, pretend.connect);
  await Promise.all(
    ["4127", "4128", "4129"].map((seed) => pool.run(oddsTask, { ...oneTask(0, 300), seed }, { fewest: 10, most: 50 })),
  );
  for (const orders of pretend.orders) {
    const homes = orders.map((order) => order.kind === "run" && (order.task.from / 50) % 3);
    expect(homes.length).toBe(6);
    expect(new Set(homes).size).toBe(1);
  }
});
