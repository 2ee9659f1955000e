import { expect, test } from "vitest";
import { type Lever, NOTHING } from "../../../engine/reach/lever.ts";
import type { Pulls } from "../../../engine/reach/reachOrder.ts";
import type { Held, Single } from "../../../engine/reach/reachSingles.ts";
import { type TogetherAsk, waysTogether } from "../../../engine/reach/reachTogether.ts";

const lever = (id: string, amounts: number): Lever => ({
  id,
  kind: "bank",
  name: id,
  amounts: Array.from({ length: amounts }, (_, k) => ({ words: `${k + 1}`, changes: [], price: NOTHING })),
  isMonotone: true,
  touches: [id],
});

/** Levers that add up: each amount brings its worth in members of a thousand; of the first hundred a tenth, and `lucky` more. */
function ask(worths: readonly (readonly [amounts: number, worth: number])[], lucky = 0): TogetherAsk {
  const levers = worths.map(([amounts], k) => lever(`l${k}`, amounts));
  const heldWith = (pulls: Pulls) =>
    Math.min(1000, 100 + pulls.reduce((sum, pull) => sum + pull.amount * worths[pull.lever]![1], 0));
  const count = (pulls: Pulls, members: number) =>
    members === 1000 ? heldWith(pulls) : Math.min(100, Math.floor(heldWith(pulls) / 10) + lucky);
  const held: Held = {
    held: async (pulls, members) => count(pulls, members),
    reaches: async (pulls, members, need) => count(pulls, members) >= need,
  };
  const singles = worths.map(([amounts, worth], k): Single => {
    const first = Array.from({ length: amounts }, (_, a) => a + 1).find((a) => 100 + a * worth >= 950) ?? null;
    const told = first ?? amounts;
    const next = first === null ? 0 : told - 1;
    const at = (amount: number) => heldWith(amount === 0 ? [] : [{ lever: k, amount }]);
    return { smallest: first, told, heldTold: at(told), next, heldNext: at(next) };
  });
  const isFree = () => true;
  return { levers, singles, isFree, held, heldNow: 100, targetShare: 0.95, members: 1000, coarse: 100, order: "money" };
}

const told = (ways: readonly { pulls: Pulls; held: number }[]) =>
  ways.map(({ pulls, held }) => `${pulls.map(({ lever, amount }) => `${lever}:${amount}`).join(" ")} ${held}`);

test("a pair that only the first hundred bring to the target is none, and no lever goes as far as it takes alone", async () => {
  // The first does it alone with three; two of it and all of the other come to 940.
  const { pairs, threes } = await waysTogether(
    ask(
      [
        [3, 300],
        [3, 80],
      ],
      2,
    ),
  );
  expect([told(pairs), threes]).toEqual([[], []]);
});

test("a pair that the first hundred miss by little is found on all", async () => {
  const { pairs } = await waysTogether(
    ask(
      [
        [2, 300],
        [3, 90],
      ],
      -3,
    ),
  );
  expect(told(pairs)).toEqual(["0:2 1:3 970"]);
});

test("threes are those of which no two do it, each taken back as far as it goes", async () => {
  const { pairs, threes } = await waysTogether(
    ask([
      [4, 100],
      [2, 150],
      [1, 250],
    ]),
  );
  expect(pairs).toEqual([]);
  expect(told(threes)).toEqual(["0:3 1:2 2:1 950"]);
});

test("where two of three do it on all members after all, it is no three", async () => {
  const { pairs, threes } = await waysTogether(
    ask(
      [
        [1, 300],
        [1, 560],
        [1, 20],
      ],
      -3,
    ),
  );
  expect(told(pairs)).toEqual(["0:1 1:1 960"]);
  expect(threes).toEqual([]);
});
