import { expect, test } from "vitest";
import type { Change } from "../../../engine/scenario/change.ts";
import { burdenMore, burdenOf } from "../../../engine/versus/burden.ts";
import { MINUTES_A_TURN } from "../../../engine/versus/turns.ts";
import { exampleEnsemble, variantChanges } from "../ensemble/exampleEnsemble.ts";

const meadow = variantChanges("walnut-grove", "meadow");
const blocks = variantChanges("walnut-grove", "two-blocks");
const prepared = (changes: readonly Change[]) => exampleEnsemble("walnut-grove", changes).prepared;
const roof = prepared([]);
const against = (changes: readonly Change[]) => {
  const other = prepared(changes);
  return {
    burden: burdenOf(other.scenario, other.grid, roof.scenario),
    more: burdenMore(roof.scenario, other.scenario, [roof.grid, other.grid]),
  };
};

test("sums are those that a person makes: blocks, modules, and the turns of the clock", () => {
  // The file: a block for 900, 23 kg, no work; panels on the roof for nothing; two folding panels at 130, 7 kg and 12 min each.
  expect(burdenOf(roof.scenario, roof.grid)).toMatchObject({
    cost: 900,
    massKg: 23,
    setupMinutes: 0,
    turns: 0,
    lacks: [],
  });
  const { burden, more } = against(meadow);
  expect(burden).toMatchObject({ cost: 900 + 2 * 130, massKg: 23 + 2 * 7, setupMinutes: 2 * 12, lacks: [] });
  // Aimed at 7:30, 11:00 and 14:30, from Thursday 10:00 to Sunday 16:00: 2 on Thursday, 3 on each of three days.
  expect(burden.turns).toBe(2 + 3 + 3 + 3);
  expect(burden.turnMinutes).toBe(11 * 3);
  expect(MINUTES_A_TURN).toBe(3);
  expect(more).toEqual({ cost: 260, massKg: 14, minutes: 24 + 33 });
});

test("a second block costs and weighs as the first; that the first took no work says nothing of it", () => {
  const { burden, more } = against(blocks);
  expect(burden).toMatchObject({ cost: 1800, massKg: 46, lacks: ["setupMinutes"] });
  expect(more).toEqual({ cost: 900, massKg: 23, minutes: null });
});

test("what both bring alike cancels, stated or not; what only one brings must be stated", () => {
  const bare: Change[] = [{ at: "bank.bring", remove: true }];
  const without = prepared(bare);
  const folding = prepared([...bare, ...meadow]);
  expect(burdenOf(without.scenario, without.grid)).toMatchObject({
    cost: 0,
    massKg: 0,
    lacks: ["cost", "massKg", "setupMinutes"],
  });
  expect(burdenMore(without.scenario, folding.scenario, [without.grid, folding.grid])).toEqual({
    cost: 260,
    massKg: 14,
    minutes: 57,
  });
  const unstated = prepared([...meadow, { at: "panels.meadow.bring.cost", remove: true }]);
  expect(burdenMore(roof.scenario, unstated.scenario, [roof.grid, unstated.grid])).toMatchObject({
    cost: null,
    massKg: 14,
  });
  // The other way round it is what is saved.
  expect(burdenMore(folding.scenario, without.scenario, [folding.grid, without.grid])).toEqual({
    cost: -260,
    massKg: -14,
    minutes: -57,
  });
});

test("panels that are left at home take nothing, and are not turned", () => {
  const { burden, more } = against([...meadow, { at: "panels.meadow.count", to: 0 }]);
  expect(burden).toMatchObject({ cost: 900, massKg: 23, setupMinutes: 0, turns: 0, lacks: [] });
  expect(more).toEqual({ cost: 0, massKg: 0, minutes: 0 });
});

test("a larger block with the smaller one's money, weight and work has had none stated; with its own it has", () => {
  const larger = against([...meadow, { at: "bank.blockAh", to: 420 }]);
  expect(larger.burden).toMatchObject({ cost: 260, massKg: 14, lacks: ["cost", "massKg", "setupMinutes"] });
  expect(larger.more).toEqual({ cost: null, massKg: null, minutes: null });
  const priced = against([
    { at: "bank.blockAh", to: 420 },
    { at: "bank.bring", to: { cost: 1300, massKg: 34, setupMinutes: 0 } },
  ] as Change[]);
  expect(priced.burden).toMatchObject({ cost: 1300, massKg: 34, lacks: [] });
  expect(priced.more).toEqual({ cost: 400, massKg: 11, minutes: 0 });
});
