import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import type { Change } from "../../engine/scenario/change.ts";
import { duskline } from "./duskline.ts";

const GROVE = "scenarios/walnut-grove.json";
const PAGE = readFileSync("docs/command-line.md", "utf8");
const folder = mkdtempSync(join(tmpdir(), "duskline-reach-"));
afterAll(() => rmSync(folder, { recursive: true }));

const Odds = z.strictObject({ count: z.int(), of: z.int(), share: z.number(), low: z.number(), high: z.number() });
const Price = z.strictObject({
  cost: z.number().nullable(),
  massKg: z.number().nullable(),
  minutes: z.number().nullable(),
  onAirH: z.number(),
});
const part = { id: z.string(), kind: z.string(), name: z.string().min(1), words: z.string() };
const changes = z.array(z.looseObject({ at: z.string() })).min(1);
const Row = z.strictObject({
  ...part,
  changes,
  price: Price,
  holds: Odds,
  next: z.strictObject({ words: z.string().nullable(), holds: Odds }),
  reaches: z.boolean(),
  isLocked: z.boolean(),
  why: z.string().min(1),
});
const Way = z.strictObject({ parts: z.array(z.strictObject(part)), changes, price: Price, holds: Odds });
/** The shape that docs/command-line.md promises, written down a second time and on purpose. */
const ReachJson = z.strictObject({
  format: z.literal("duskline-reach"),
  version: z.literal(1),
  scenario: z.strictObject({ name: z.string().min(1), place: z.looseObject({ name: z.string() }) }),
  levers: z.array(z.strictObject({ id: z.string(), name: z.string() })),
  seed: z.string(),
  members: z.int(),
  targetShare: z.number(),
  order: z.string(),
  base: Odds,
  reaches: z.boolean(),
  alone: z.array(Row),
  pairs: z.array(Way),
  threes: z.array(Way),
  spare: z.array(Row),
});
const call = (...args: string[]) => duskline("reach", ...args);

describe("reach --json", () => {
  const { code, err, out } = call(GROVE, "--members", "60", "--seed", "any ∿ text", "--target", "90", "--json");
  const report = ReachJson.parse(JSON.parse(out));

  test("says what it is, with nothing on the error stream", () => {
    expect([code, err]).toEqual([0, ""]);
    expect([report.members, report.seed, report.targetShare, report.order]).toEqual([60, "any ∿ text", 0.9, "money"]);
    expect(report.reaches).toBe(false);
    expect(report.alone.some(({ reaches }) => reaches)).toBe(true);
    expect(report.pairs.length).toBeGreaterThan(0);
  });

  test("every field is named on the page", () => {
    const names = [...JSON.stringify(z.toJSONSchema(ReachJson)).matchAll(/"required":\[([^\]]*)\]/g)].flatMap(
      ([, list]) => [...list!.matchAll(/"(\w+)"/g)].map(([, name]) => name!),
    );
    expect(new Set(names).size).toBeGreaterThan(25);
    for (const name of new Set(names)) expect(PAGE, name).toContain(`\`${name}\``);
  });

  test("a row holds as often as odds says of the scenario made of it", () => {
    const document = JSON.parse(readFileSync(GROVE, "utf8"));
    const path = join(folder, "row.json");
    const first = (id: string) => report.alone.find((row) => row.id === id)!;
    for (const row of [first("bank"), first("lent-meadow"), first("home-fridge"), report.pairs[0]!]) {
      const changed = applyChanges(document, row.changes as unknown as Change[]);
      if (!changed.ok) throw new Error(changed.problems[0]!.message);
      writeFileSync(path, JSON.stringify(changed.document));
      const odds = JSON.parse(duskline("odds", path, "--members", "60", "--seed", "any ∿ text", "--json").out);
      expect(odds.holds.count).toBe(row.holds.count);
    }
  });
});

test("in words: the answer, the rows, what is not stated, and that a reserve is a choice", () => {
  const { code, err, out } = call(GROVE, "--members", "40", "--lock", "bank,lent-meadow");
  expect([code, err]).toEqual([0, ""]);
  expect(out).toMatch(/holds in \d+ of 100 skies; 95 of 100 are asked for\. \w+ things? do/);
  expect(out).toMatch(/^A bigger bank +\d+ Ah, was 280 .* locked +bank$/m);
  expect(out).toMatch(/^Vehicle's engine, 20 A .*not stated +not stated +not stated/m);
  expect(out).toContain("A smaller reserve is a choice, not a cure.");
  expect(out.split("Two together")[1] ?? "").not.toContain("A bigger bank");
  expect(out).not.toMatch(/NaN|Infinity|undefined|null/);
});

test("a plan that holds already says what can stay at home", () => {
  const { code, out } = call(GROVE, "--variant", "meadow", "--members", "40", "--target", "60");
  expect(code).toBe(0);
  expect(out).toMatch(/, and 60 of 100 are asked for\. (What can|One thing can) stay at home or be left undone/);
  expect(out).toMatch(/^A smaller bank +\d+ Ah, was 280/m);
  expect(out).not.toContain("Two together");
});

test("--csv has a line for each row", () => {
  const { code, out } = call(GROVE, "--members", "40", "--target", "90", "--csv");
  expect(code).toBe(0);
  expect(out).toMatch(/^lever,One thing alone,How much,holds,Next smaller/m);
  expect(out).toMatch(/^bank,A bigger bank,"?\d+ Ah, was 280"?,0\.9\d+,/m);
});

test.each([
  [["--target", "101"], '--target is "101" but must be a number from 1 to 100'],
  [["--target", ""], '--target is "" but must be a number from 1 to 100'],
  [["--target", "many"], '--target is "many" but must be a number from 1 to 100'],
  [["--most", "beauty"], '--most is "beauty" but must be one of money, mass, minutes, hours'],
  [["--lock", "kettle"], '--lock names "kettle", which is no lever of this plan; its levers are '],
  [["--lock", ","], '--lock names ",", which is no lever of this plan'],
  [["--members", "5:9"], '--members is "5:9" but must be one number here'],
  [["--members", "0"], '--members is "0" but must be a number from 1'],
  [["--json", "--csv"], "--json and --csv are two ways to print"],
])("%s is refused in a sentence", (args, sentence) => {
  const { code, err, out } = call(GROVE, ...args);
  expect([code, out]).toEqual([2, ""]);
  expect(err).toContain(sentence);
});

test("a scenario without panels, gear and stations has an answer", () => {
  const path = join(folder, "bare.json");
  const document = JSON.parse(readFileSync(GROVE, "utf8"));
  const bare = { ...document, gear: [], stations: [], panels: [], obstacles: [], variants: [] };
  writeFileSync(path, JSON.stringify(bare));
  const { code, err, out } = call(path, "--members", "20", "--json");
  expect([code, err]).toEqual([0, ""]);
  expect(ReachJson.parse(JSON.parse(out)).reaches).toBe(true);
});
