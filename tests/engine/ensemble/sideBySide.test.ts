import { describe, expect, test } from "vitest";
import { makeKeptMembers } from "../../../engine/ensemble/keptMembers.ts";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { lanesFor, type StepMembers, stepMember, stepMembers } from "../../../engine/ensemble/stepMember.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { mergeOdds } from "../../../engine/odds/oddsPart.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { ROW_SLOTS, type RunRows } from "../../../engine/run/runRows.ts";
import { CONNECTED, DROPOUT_H, LAST_A, STATE_SLOTS, STORED_AH } from "../../../engine/run/stepState.ts";
import { pairedCharge } from "../../../engine/versus/pairedCharge.ts";
import { bitScenarios } from "../../bitScenarios.ts";
import { bitsOf } from "../../bitsOf.ts";

const FROM = 5;
const LANES = 4;

function ensembleOf({ scenario, surroundings }: ReturnType<typeof bitScenarios>[number]): PreparedEnsemble {
  const ready = prepareEnsemble(scenario, surroundings, "beside");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.ensemble;
}

/** All that a run leaves of one lane. */
function lane(run: RunRows, k: number) {
  const of = (rows: Float64Array, slots: number) => {
    const length = (rows.length / run.lanes / slots) * slots;
    return rows.slice(k * length, (k + 1) * length);
  };
  const state = of(run.state, STATE_SLOTS);
  return bitsOf({
    rows: of(run.rows, ROW_SLOTS),
    fuel: of(run.fuelLeftL, 1),
    atEnd: [STORED_AH, LAST_A, CONNECTED, DROPOUT_H].map((slot) => state[slot]), // the others are of use within a step
  });
}

const all = bitScenarios(await loadClimateTables());

describe.each(all.map((one) => [one.name, one] as const))("%s", (_, one) => {
  const ensemble = ensembleOf(one);
  const alone = Array.from({ length: LANES }, (_, k) => {
    const room = makeMemberRoom(ensemble);
    stepMember(ensemble, FROM + k, room);
    return lane(room.run, 0);
  });

  function beside(run: StepMembers, count: number) {
    const room = makeMemberRoom(ensemble, LANES);
    run(ensemble, 90, LANES, room); // rows are written over: what others left in them must not matter
    run(ensemble, FROM, count, room);
    return Array.from({ length: count }, (_, k) => lane(room.run, k));
  }

  test("members side by side are the members by themselves, to the last bit", () => {
    expect(new Set(alone.map(({ rows }) => rows)).size).toBe(LANES);
    for (const count of [1, 3, LANES]) expect(beside(stepMembers, count)).toEqual(alone.slice(0, count));
  });

  test("so are those that are met again", () => {
    const kept = makeKeptMembers(1e9);
    for (const count of [2, LANES, LANES]) expect(beside(kept, count)).toEqual(alone.slice(0, count));
  });

  test("and all that is counted of them", () => {
    const each = Array.from({ length: 6 }, (_, k) => runMembers(ensemble, FROM + k, FROM + k + 1));
    expect(bitsOf(runMembers(ensemble, FROM, FROM + 6))).toEqual(bitsOf(mergeOdds(each)));
    const pairs = pairedCharge(ensemble, ensemble, FROM, FROM + 6)!;
    expect(pairs.moreAh.every((ah) => ah === 0)).toBe(true);
  });
});

test.each([
  [1, 4],
  [576, 4],
  [15_000, 4],
  [20_160, 2],
  [60_001, 1],
  [1_000_000, 1],
])("of %i steps, %i members run side by side", (steps, lanes) => {
  expect(lanesFor(steps)).toBe(lanes);
});

test("pairs side by side are the pairs by themselves", () => {
  const [first, second] = [0, 1].map((k) => ensembleOf(all[k]!)) as [PreparedEnsemble, PreparedEnsemble];
  const together = pairedCharge(first, second, FROM, FROM + 6)!;
  for (let k = 0; k < 6; k++) {
    const { moreAh, moments } = pairedCharge(first, second, FROM + k, FROM + k + 1)!;
    expect(moreAh.some((ah) => ah !== 0)).toBe(true);
    expect(together.moreAh.subarray(k * moments, (k + 1) * moments)).toEqual(moreAh);
  }
});
