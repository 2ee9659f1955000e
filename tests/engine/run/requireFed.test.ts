import { describe, expect, test } from "vitest";
import { makeDriversRoom, stepDriversMember } from "../../../engine/drivers/driversMember.ts";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { firstParticles } from "../../../engine/learn/particles.ts";
import { prepareOnward } from "../../../engine/learn/prepareOnward.ts";
import { stepParticle } from "../../../engine/learn/stepParticle.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { runTask } from "../../../engine/pool/task.ts";
import { requireFed } from "../../../engine/run/requireFed.ts";
import { makeTaskStore } from "../../../engine/task/taskStore.ts";
import { exampleEnsemble } from "../ensemble/exampleEnsemble.ts";

const make = () => exampleEnsemble("walnut-grove", [{ at: "time.end", to: "2026-10-09T16:00" }], "broken");

/** Puts something that is no number into what an ensemble draws from. */
const BREAKS: Record<string, [words: string, put: (ensemble: PreparedEnsemble) => void]> = {
  air: ["air of step 0 is NaN", ({ skies }) => skies.air!.middleC.fill(Number.NaN)],
  light: ["light of step \\d+ is NaN", ({ skies }) => skies.whole.clearIndexPerKt.fill(Number.NaN)],
  "a step of the day that no day's light has": [
    "light of step 12 is NaN",
    ({ skies }) => skies.whole.step.set([-1], skies.whole.step.indexOf(12)),
  ],
  loads: ["wanted power of step 7 is NaN", ({ prepared }) => prepared.loads.quietW.set([Number.NaN], 7)],
  figures: ["figure 2 is NaN", ({ spread }) => spread.set([Number.NaN], 2)],
};

describe.each(Object.entries(BREAKS))("where the %s is no number", (kind, [words, put]) => {
  const named = (member: number) => new RegExp(`^member ${member} of seed "broken": .*${words}`);

  test("members are not run, and seed, member and step are named", () => {
    const ensemble = make();
    put(ensemble);
    expect(() => runMembers(ensemble, 5, 9)).toThrow(named(5));
  });

  // There the figures are held one by one.
  test.skipIf(kind === "figures")("nor are members put together from several", () => {
    const ensemble = make();
    const room = makeDriversRoom(ensemble);
    put(ensemble);
    expect(() => stepDriversMember(ensemble, room)).toThrow(named(0));
  });

  test("nor particles", () => {
    const ensemble = make();
    const onward = prepareOnward(ensemble, firstParticles(ensemble, 4));
    put(ensemble);
    if (kind === "figures") onward.particles.traits.fill(Number.NaN);
    expect(() => stepParticle(onward, 3, makeMemberRoom(ensemble))).toThrow(/^member 3 of seed "broken": /);
  });
});

test("a pool says so once", async () => {
  const { prepared, surroundings, seed } = make();
  const task = { kind: "odds" as const, scenario: prepared.scenario, surroundings, seed, from: 0, to: 8 };
  const store = makeTaskStore();
  const ready = store.ensemble(task);
  if (!ready.ok) throw new Error("it is ready");
  ready.value.skies.air!.middleC.fill(Number.NaN);
  const hooks = { progress: () => {}, pause: async () => {}, isCancelled: () => false };
  const end = await runTask(task, hooks, store);
  expect(end).toEqual({ kind: "fault", sentence: 'member 0 of seed "broken": the air of step 0 is NaN' });
});

describe("what is prepared", () => {
  const { prepared } = make();
  const nowhere = (values: Float64Array, at: number) => values.map((value, i) => (i === at ? Number.NaN : value));

  test("passes as it is", () => {
    expect(() => requireFed(prepared)).not.toThrow();
  });

  test("is refused with a step whose number is none", () => {
    expect(() => requireFed({ ...prepared, airTempC: nowhere(prepared.airTempC, 3) })).toThrow("air of step 3 is NaN");
    const light = { ...prepared.light, ghiWm2: nowhere(prepared.light.ghiWm2, 9) };
    expect(() => requireFed({ ...prepared, light })).toThrow("light of step 9 is NaN");
    const group = prepared.groups[0]!;
    const groups = [{ ...group, perStep: nowhere(group.perStep, 4 * group.stride) }];
    expect(() => requireFed({ ...prepared, groups })).toThrow(`panel group ${group.id} of step 4 is NaN`);
  });

  test("is refused with a day that owns no step", () => {
    const { grid } = prepared;
    const withDays = (localDay: Int32Array, dates = grid.dates) => ({
      ...prepared,
      grid: { ...grid, localDay, dates },
    });
    expect(() => requireFed(withDays(grid.localDay.map((day) => day + 1)))).toThrow("day 0 owns no step");
    expect(() => requireFed(withDays(grid.localDay, [...grid.dates, "2026-10-10"]))).toThrow(
      "3 days in the calendar, but 2 own steps",
    );
  });
});
