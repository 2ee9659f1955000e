import { expect, test } from "vitest";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { readSizeWish, usualWishes, wishValues } from "../../../engine/size/sizeAxis.ts";
import { SIZE_SCENARIO, wish } from "./sizeScenario.ts";

test("values are a range in equal steps or a list, smallest first, each once", () => {
  expect(wishValues(wish("bank.blockAh=100:400:7"))).toEqual([100, 150, 200, 250, 300, 350, 400]);
  expect(wishValues(wish("bank.blockAh=400:100:4"))).toEqual([100, 200, 300, 400]);
  expect(wishValues(wish("bank.startShare=0:0.3:4"))).toEqual([0, 0.1, 0.2, 0.3]); // and not 0.30000000000000004
  expect(wishValues(wish("bank.temperature=20,-5,5,20"))).toEqual([-5, 5, 20]);
  expect(wishValues(wish("bank.blockAh=280"))).toEqual([280]);
});

test.each([
  ["bank.blockAh", /names no field with values/],
  ["=100", /names no field with values/],
  ["bank.blockAh=", /names no field with values/],
  ["bank.blockAh=1=2", /names no field with values/],
  ["bank.blockAh=a:b:c", /"a" .* is not a number/],
  ["bank.blockAh=100,,200", /"" .* is not a number/],
  ["bank.blockAh=1e999", /"1e999" .* is not a number/],
  ["bank.blockAh=0x10", /"0x10" .* is not a number/],
  ["bank.blockAh=100:400", /must be from:to:how many/],
  ["bank.blockAh=100:400:2.5", /must be from:to:how many/],
  ["bank.blockAh=100:400:1", /must be from:to:how many/],
  ["bank.blockAh=100:400:-3", /must be from:to:how many/],
])("%s is refused in a sentence", (text, sentence) => {
  const read = readSizeWish(text);
  expect(read.ok ? "" : read.problems[0]!.message).toMatch(sentence);
});

test("left alone, a map looks at blocks about the present one and at whole strings of the first panel group", () => {
  const of = (parts: object) => {
    const read = readScenario({ ...SIZE_SCENARIO, ...parts });
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const { x, y } = usualWishes(read.scenario);
    return [wishValues(x), y === null ? null : wishValues(y)];
  };
  const roof = SIZE_SCENARIO.panels![0]!;
  expect(of({ bank: { ...SIZE_SCENARIO.bank, blockAh: 105 } })).toEqual([
    [50, 80, 105, 130, 160, 210, 320],
    [0, 1, 2, 3, 4, 6],
  ]);
  expect(of({ panels: [{ ...roof, count: 4, inSeries: 2 }] })[1]).toEqual([0, 2, 4, 6, 8, 12]);
  expect(of({ panels: [{ ...roof, count: 0, inSeries: 2 }] })[1]).toEqual([0, 2, 4, 6]);
  expect(of({ panels: [{ ...roof, count: 50 }] })[1]).toEqual([0, 25, 50]);
  expect(of({ panels: [] })[1]).toBeNull();
});
