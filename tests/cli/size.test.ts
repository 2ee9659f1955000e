import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as z from "zod";
import { duskline } from "./duskline.ts";

const SCENARIO = "scenarios/walnut-grove.json";
const PAGE = readFileSync("docs/command-line.md", "utf8");
const FEW = ["--members", "40", "--seed", "any"];

const Share = z.strictObject({ count: z.int(), of: z.int(), share: z.number(), low: z.number(), high: z.number() });
const Cell = z.strictObject({
  x: z.number(),
  y: z.number().nullable(),
  holds: Share,
  dark: Share,
  goesWithout: Share,
  meets: z.boolean(),
  isOpen: z.boolean(),
  cost: z.number().nullable(),
  massKg: z.number().nullable(),
});
const Axis = z.strictObject({ at: z.string(), values: z.array(z.number()).min(1), present: z.number().nullable() });
/** The documented shape of `size --json`: nothing more and nothing less. */
const Sizes = z.strictObject({
  format: z.literal("duskline-sizes"),
  version: z.literal(1),
  scenario: z.strictObject({ name: z.string(), place: z.looseObject({ name: z.string() }) }),
  remarks: z.array(z.string()),
  seed: z.string(),
  members: z.int(),
  targetShare: z.number(),
  membersToShow: z.int().nullable(),
  x: Axis,
  y: Axis.nullable(),
  rows: z.array(
    z.strictObject({
      y: z.number().nullable(),
      cells: z.array(Cell),
      between: z.array(Cell),
      smallest: Cell.nullable(),
      largest: Cell.nullable(),
      failsAgainAt: z.array(z.number()),
    }),
  ),
  cheapest: Cell.nullable(),
  lightest: Cell.nullable(),
  smallest: Cell.nullable(),
  handbook: z.strictObject({
    dailyAh: z.number(),
    autonomyDays: z.number(),
    maxDepthShare: z.number(),
    temperatureFactor: z.number(),
    coldestBankC: z.number(),
    bankAh: z.number(),
    blockAh: z.number(),
  }),
  sentences: z.array(z.string()).min(1),
});

const sizes = (...args: string[]) => {
  const { code, out, err } = duskline("size", SCENARIO, "--json", ...args);
  expect([code, err]).toEqual([0, ""]);
  return Sizes.parse(JSON.parse(out));
};

test("size prints its documented JSON, and a cell has the odds that odds prints", () => {
  const map = sizes(...FEW, "--x", "bank.blockAh=280,420,560", "--y", "panels.roof.count=2,3", "--days-autonomy", "3");
  expect(map.rows.map((row) => row.cells.length)).toEqual([3, 3]);
  const odds = JSON.parse(duskline("odds", SCENARIO, "--json", ...FEW).out);
  expect(map.rows[0]!.cells[0]!.holds).toEqual(odds.holds);
  expect(map.rows[0]!.cells[0]!.dark).toEqual(odds.dark);
  expect(map.handbook.autonomyDays).toBe(3);
  expect(map.handbook.bankAh).toBeCloseTo((map.handbook.dailyAh * 3) / 0.8, 6);
});

test("the page names every field of it", () => {
  const text = JSON.stringify(z.toJSONSchema(Sizes));
  const names = [...text.matchAll(/"required":\[([^\]]*)\]/g)].flatMap(([, list]) =>
    [...list!.matchAll(/"(\w+)"/g)].map(([, name]) => name!),
  );
  for (const name of new Set(names)) expect(PAGE, name).toContain(`\`${name}\``);
});

test("a variant is mapped as its own scenario; no second direction makes a single row", () => {
  const map = sizes(...FEW, "--variant", "two-blocks", "--x", "bank.blockAh=140,280", "--y", "none");
  expect([map.y, map.rows.length]).toEqual([null, 1]);
  expect(map.scenario.name).toMatch(/a second block$/);
  const odds = JSON.parse(duskline("odds", SCENARIO, "--json", "--variant", "two-blocks", ...FEW).out);
  expect(map.rows[0]!.cells[1]!.holds).toEqual(odds.holds);
});

test("left alone, it prints the map with a stair, the least size of each row and the handbook", () => {
  const { code, out, err } = duskline("size", SCENARIO, "--members", "60");
  expect([code, err]).toEqual([0, ""]);
  expect(out).toMatch(/^With 2 modules of 200 W in Van roof, as now, it takes a bank of \d+ Ah to hold/m);
  expect(out).toMatch(/^By the handbook, no sun counted: 2 days at \d+ Ah a day/m);
  expect(out).toMatch(/^panels\.roof\.count {2}panels, W {2}least enough +140 +210 +280 +350 +420 +560 +840$/m);
  expect(out).toMatch(/^ +2 \(now\) +400 +\d+ .*│/m);
  expect(out).toMatch(/^ +┌─+┘$/m);
});

test("the stair runs between the cells that meet the target and those that do not", () => {
  const { out } = duskline("size", SCENARIO, ...FEW, "--x", "bank.blockAh=100,280,900", "--y", "panels.roof.count=0,2");
  const rows = out.split("\n").filter((line) => /\(\d+–\d+\)/.test(line));
  const map = sizes(...FEW, "--x", "bank.blockAh=100,280,900", "--y", "panels.roof.count=0,2");
  expect(rows).toHaveLength(2);
  rows.forEach((row, r) => {
    const before = row.split("│")[0]!;
    expect(before.match(/\(\d+–\d+\)/g)).toHaveLength(map.rows[r]!.cells.findIndex((cell) => cell.meets));
  });
});

test.each([
  [["--x", "bank.blockAhh=1,2"], 1, /no field "blockAhh".*did you mean blockAh\?/],
  [["--x", "bank.chemistry=1,2"], 1, /holds "lfp" and not a number/],
  [["--x", "bank.blockAh=1:9:1000", "--y", "panels.roof.count=0:9:1000"], 1, /1000000 cells .* at most 2500/],
  [["--x", "bank.blockAh"], 2, /^--x: "bank\.blockAh" names no field with values/],
  [["--target", "101"], 2, /--target is "101" but must be a number from 1 to 100/],
  [["--members", "1.5"], 2, /--members is "1\.5"/],
  [["--days-autonomy", "x"], 2, /--days-autonomy is "x"/],
  [["--variant", "nowhere"], 1, /no variant "nowhere"/],
])("size %s is refused in a sentence", (args, code, sentence) => {
  const call = duskline("size", SCENARIO, ...args);
  expect(call.code).toBe(code);
  expect(call.out).toBe("");
  expect(call.err).toMatch(sentence);
});

test("a target of 100 is answered", () => {
  const map = sizes(...FEW, "--x", "bank.blockAh=900", "--y", "panels.roof.count=2", "--target", "100");
  expect(map.membersToShow).toBeNull();
  expect(map.sentences.join("\n")).toMatch(/No sample shows 100 in 100/);
});
