import { afterEach, expect, test, vi } from "vitest";
import type { TaskOrder } from "../../../engine/pool/taskOrder.ts";
import type { Stretch, TaskKind } from "../../../engine/task/taskKind.ts";
import { makePagePool } from "../../../explorer/pool/makePagePool.ts";

/** A worker of the browser, moved by the test. */
class StagedWorker {
  static readonly all: StagedWorker[] = [];
  onmessage: ((event: MessageEvent) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  readonly orders: TaskOrder[] = [];
  isEnded = false;
  constructor() {
    StagedWorker.all.push(this);
  }
  postMessage(order: TaskOrder): void {
    this.orders.push(order);
  }
  terminate(): void {
    this.isEnded = true;
  }
  ends(): void {
    const number = this.orders.at(-1)!.number;
    this.onmessage!({ data: { kind: "end", number, end: { kind: "part", part: 7 } } } as MessageEvent);
  }
}
afterEach(() => {
  StagedWorker.all.length = 0;
  vi.unstubAllGlobals();
});

const kind = { name: "probe", fewest: 1, merge: (parts: number[]) => parts[0]! } as unknown as TaskKind<
  "probe",
  Stretch,
  number,
  number,
  never
>;
const TASK: Stretch = { from: 0, to: 10, seed: "probe", surroundings: {} };

function pool() {
  vi.stubGlobal("navigator", { hardwareConcurrency: 1 });
  return makePagePool(() => new StagedWorker());
}

test("a worker whose script does not come is started again with the orders that it was sent", async () => {
  const run = pool().run(kind, TASK);
  for (let turn = 0; turn < 3; turn++) StagedWorker.all.at(-1)!.onerror!({ message: "" });
  expect(StagedWorker.all.map(({ isEnded }) => isEnded)).toEqual([true, true, true, false]);
  const last = StagedWorker.all.at(-1)!;
  expect(last.orders).toEqual(StagedWorker.all[0]!.orders);
  last.ends();
  expect(await run).toEqual({ ok: true, part: 7 });
});

test("a script that never comes, and a worker that is lost at work, are said", async () => {
  const never = pool().run(kind, TASK);
  for (let turn = 0; turn < 8; turn++) StagedWorker.all.at(-1)!.onerror!({ message: "" });
  await expect(never).rejects.toThrow("a worker was lost: no reason given");
  expect(StagedWorker.all).toHaveLength(8);
  const workers = pool();
  const first = workers.run(kind, TASK);
  StagedWorker.all.at(-1)!.ends();
  await first;
  const second = workers.run(kind, TASK);
  StagedWorker.all.at(-1)!.onerror!({ message: "out of memory" });
  await expect(second).rejects.toThrow("a worker was lost: out of memory");
  expect(StagedWorker.all).toHaveLength(9);
});
