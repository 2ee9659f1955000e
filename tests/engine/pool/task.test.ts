import fc from "fast-check";
import { expect, test } from "vitest";
import { runMembers } from "../../../engine/odds/odds.ts";
import { runTask, type TaskHooks } from "../../../engine/pool/task.ts";
import { splitMembers } from "../../../engine/pool/taskPool.ts";
import { bitsOf } from "../../bitsOf.ts";
import { oneEnsemble, oneTask } from "./oneEnsemble.ts";
import { wholeOdds } from "./wholeOdds.ts";

const hooks = (changes: Partial<TaskHooks> = {}): TaskHooks => ({
  progress: () => {},
  pause: () => Promise.resolve(),
  isCancelled: () => false,
  ...changes,
});

test("a task gives the part that the members run in one go give", async () => {
  const end = await runTask(oneTask(5, 95), hooks());
  expect(bitsOf(wholeOdds(end))).toEqual(bitsOf(runMembers(oneEnsemble(), 5, 95)));
});

test("a task says how far it is, up to all of it", async () => {
  const said: number[] = [];
  const { steps } = oneEnsemble().prepared.grid;
  const atOnce = Math.round(60_000 / steps);
  await runTask(oneTask(5, 7 + 2 * atOnce), hooks({ progress: (done) => said.push(done) }));
  expect(said).toEqual([atOnce, 2 * atOnce, 2 * atOnce + 2]);
});

test("a task that is cancelled on the way ends at the next pause", async () => {
  let pauses = 0;
  const pause = async () => {
    pauses++;
  };
  expect(await runTask(oneTask(0, 1_000_000), hooks({ pause, isCancelled: () => pauses > 2 }))).toEqual({
    kind: "cancelled",
  });
});

test("what is wrong with the scenario comes back in sentences", async () => {
  const task = oneTask(0, 5);
  const end = await runTask(
    { ...task, scenario: { ...task.scenario, weather: { ...task.scenario.weather, monthlyKt: undefined } } as never },
    hooks(),
  );
  expect(end.kind === "problems" && end.problems[0]!.code).toBe("no-climate");
});

test("a fault of ours names seed and member", async () => {
  const task = oneTask(3, 9);
  const broken = { ...task.scenario, bank: { ...task.scenario.bank, healthShare: Number.NaN } };
  const end = await runTask({ ...task, scenario: broken }, hooks());
  expect(end.kind === "fault" && end.sentence).toMatch(/^member 3 of seed "4127": /);
});

test("stretches follow one another, cover everything and differ by one member at most", () => {
  const wholes = fc.record({
    from: fc.nat(500),
    members: fc.integer({ min: 1, max: 5000 }),
    workers: fc.integer({ min: 1, max: 8 }),
    fewest: fc.integer({ min: 1, max: 300 }),
  });
  fc.assert(
    fc.property(wholes, ({ from, members, workers, fewest }) => {
      const stretches = splitMembers(from, from + members, workers, fewest);
      expect(stretches[0]!.from).toBe(from);
      expect(stretches.at(-1)!.to).toBe(from + members);
      expect(stretches.slice(1).map((stretch) => stretch.from)).toEqual(
        stretches.slice(0, -1).map((stretch) => stretch.to),
      );
      const lengths = stretches.map((stretch) => stretch.to - stretch.from);
      expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThanOrEqual(1);
      expect(stretches.length).toBe(Math.max(1, Math.min(workers, Math.floor(members / fewest))));
    }),
    { seed: 20261010 },
  );
});
