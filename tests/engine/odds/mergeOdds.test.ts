import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runMembers } from "../../../engine/odds/odds.ts";
import { mergeOdds, type OddsPart } from "../../../engine/odds/oddsPart.ts";
import { bitsOf } from "../../bitsOf.ts";
import { oneEnsemble } from "../pool/oneEnsemble.ts";

const MEMBERS = 90;
const ensemble = oneEnsemble();
const whole = runMembers(ensemble, 0, MEMBERS);

test("the example leaves nothing uncounted", () => {
  const counted = [...Object.values(whole.outcomes), whole.belowCounts, whole.darkCounts, whole.unservedMilliWh];
  for (const values of counted as Float64Array[]) expect(values.some((value) => value > 0)).toBe(true);
});

test("any stretches, run and put together in any order, are the whole to the last bit", () => {
  const cuts = fc.uniqueArray(fc.integer({ min: 1, max: MEMBERS - 1 }), { maxLength: 5 });
  fc.assert(
    fc.property(cuts, fc.infiniteStream(fc.nat(1000)), (inner, order) => {
      const edges = [0, ...inner.sort((a, b) => a - b), MEMBERS];
      const stretches = edges.slice(1).map((to, k) => ({ from: edges[k]!, to, place: order.next().value as number }));
      const parts = stretches.sort((a, b) => a.place - b.place).map(({ from, to }) => runMembers(ensemble, from, to));
      expect(bitsOf(mergeOdds(parts))).toEqual(bitsOf(whole));
      expect(mergeOdds(parts).seed).toBe(whole.seed);
    }),
    { numRuns: 12, seed: 20261010 },
  );
});

test("parts of parts merge as parts do, and merging leaves them as they were", () => {
  const [a, b, c] = [
    [0, 7],
    [7, 60],
    [60, MEMBERS],
  ].map(([from, to]) => runMembers(ensemble, from!, to!)) as [OddsPart, OddsPart, OddsPart];
  const before = bitsOf([a, b, c]);
  expect(bitsOf(mergeOdds([mergeOdds([b, c]), a]))).toEqual(bitsOf(whole));
  expect(bitsOf([a, b, c])).toEqual(before);
});

test("a member fares alike alone, in company, and after any other", () => {
  const alone = runMembers(oneEnsemble(), 17, 18);
  for (const part of [runMembers(ensemble, 17, 18), runMembers(ensemble, 3, 40), whole]) {
    for (const [name, values] of Object.entries(part.outcomes) as [keyof OddsPart["outcomes"], Float64Array][]) {
      expect(values[17 - part.from], name).toBe(alone.outcomes[name][0]);
    }
  }
});

test("members differ, and so do seeds", () => {
  expect(new Set(whole.outcomes.lowestShare).size).toBeGreaterThan(MEMBERS - 3);
  const other = runMembers(oneEnsemble("4128"), 0, MEMBERS);
  expect(bitsOf(other.outcomes)).not.toEqual(bitsOf(whole.outcomes));
});

describe("parts that do not belong together are refused", () => {
  const one = runMembers(ensemble, 0, 5);
  test.each([
    ["none", [], /at least one part/],
    ["a gap", [one, runMembers(ensemble, 6, 8)], /members up to 5 and then from 6/],
    ["an overlap", [runMembers(ensemble, 4, 8), one], /members up to 5 and then from 4/],
    ["another seed", [one, runMembers(oneEnsemble("4128"), 5, 8)], /one scenario and one seed/],
  ])("%s", (_, parts, message) => {
    expect(() => mergeOdds(parts)).toThrow(message);
  });
});
