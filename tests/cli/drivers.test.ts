import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { duskline } from "./duskline.ts";

const GROVE = "scenarios/walnut-grove.json";
const PAGE = readFileSync("docs/command-line.md", "utf8");
const folder = mkdtempSync(join(tmpdir(), "duskline-drivers-"));
afterAll(() => rmSync(folder, { recursive: true }));

const Sampled = z.strictObject({ value: z.number(), plusMinus: z.number().min(0) });
const Odds = z.strictObject({ count: z.int(), of: z.int(), share: z.number(), low: z.number(), high: z.number() });
const DriverShare = z.strictObject({ first: Sampled, total: Sampled }).nullable();
const Effect = { holds: Odds, holdsGain: Sampled, marginGain: Sampled };
const End = z.strictObject({ value: z.number(), ...Effect }).nullable();
/** The shape that docs/command-line.md promises, written down a second time and on purpose. */
const DriversJson = z.strictObject({
  format: z.literal("duskline-drivers"),
  version: z.literal(1),
  scenario: z.strictObject({ name: z.string().min(1), place: z.looseObject({ name: z.string() }) }),
  remarks: z.array(z.string()),
  seed: z.string(),
  members: z.int(),
  runs: z.int(),
  reserveShare: z.number(),
  holds: Odds,
  dry: Odds,
  meanMarginShare: z.number(),
  factors: z
    .array(
      z.strictObject({
        factor: z.enum(["weather", "intensity", "idleDraw", "canopy", "panelYield", "startCharge", "bankHealth"]),
        name: z.string().min(1),
        margin: DriverShare,
        holds: DriverShare,
        unit: z.string(),
        low: End,
        high: End,
      }),
    )
    .length(7),
  marginFirstSum: Sampled.nullable(),
  holdsFirstSum: Sampled.nullable(),
  shedding: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      isStation: z.boolean(),
      ...Effect,
      gainedH: z.number().nullable(),
      medianHolds: z.boolean(),
    }),
  ),
  medianFailing: z.strictObject({ member: z.int(), failsAfterH: z.number() }).nullable(),
  sentences: z.array(z.string().min(1)).min(1),
});

describe("drivers --json", () => {
  const call = duskline("drivers", GROVE, "--members", "60", "--seed", "any ∿ text", "--json");
  const report = DriversJson.parse(JSON.parse(call.out));

  test("says what it is, with nothing on the error stream", () => {
    expect([call.code, call.err]).toEqual([0, ""]);
    expect([report.members, report.seed, report.holds.of]).toEqual([60, "any ∿ text", 60]);
    // 8 pieces of gear, 3 stations, 14 ends, 9 runs a row.
    expect(report.shedding).toHaveLength(11);
    expect(report.runs).toBe(60 * (9 + 14 + 11));
  });

  test("every field is named on the page", () => {
    const names = [...JSON.stringify(z.toJSONSchema(DriversJson)).matchAll(/"required":\[([^\]]*)\]/g)].flatMap(
      ([, list]) => [...list!.matchAll(/"(\w+)"/g)].map(([, name]) => name!),
    );
    expect(new Set(names).size).toBeGreaterThan(35);
    for (const name of new Set(names)) expect(PAGE, name).toContain(`\`${name}\``);
    for (const { factor } of report.factors) expect(PAGE, factor).toContain(`\`${factor}\``);
  });

  test("the members are those of odds: as many hold", () => {
    const odds = JSON.parse(duskline("odds", GROVE, "--members", "60", "--seed", "any ∿ text", "--json").out);
    expect(report.holds).toEqual({
      ...odds.holds,
      low: expect.closeTo(odds.holds.low, 5),
      high: expect.closeTo(odds.holds.high, 5),
      share: expect.closeTo(odds.holds.share, 5),
    });
  });

  test("the same seed prints the same, another one something else", () => {
    expect(duskline("drivers", GROVE, "--members", "60", "--seed", "any ∿ text", "--json").out).toBe(call.out);
    expect(duskline("drivers", GROVE, "--members", "60", "--seed", "other", "--json").out).not.toBe(call.out);
  });
});

test("in words: shares, ends, the shedding list, and how sure all that is", () => {
  const { code, out, err } = duskline("drivers", GROVE, "--members", "40", "--variant", "meadow");
  expect([code, err]).toEqual([0, ""]);
  expect(out).toMatch(/^Most depends on /m);
  expect(out).toMatch(/^The weather +(about 100 %|\d+ %) ± \d+/m);
  expect(out).toMatch(/^All of them alone: margin .*acting together\.$/m);
  expect(out).toMatch(/^The draw between transmissions +low +87 % of plan/m);
  expect(out).toMatch(/^HF run position +\d+ +\+\d/m);
  expect(out).toMatch(/40 rows, 1360 runs, seed duskline/);
  expect(out).not.toMatch(/NaN|Infinity|undefined|null|-0\b|−\d+ % ±/);
});

test("a scenario in which nothing can fail says so", () => {
  const path = join(folder, "sure.json");
  const document = JSON.parse(readFileSync(GROVE, "utf8"));
  document.bank.blockAh = 2000;
  writeFileSync(path, JSON.stringify(document));
  const { code, out } = duskline("drivers", path, "--members", "40");
  expect(code).toBe(0);
  expect(out).toContain("Of 40 members all hold, so there is nothing to say what that depends on.");
  const bare = join(folder, "bare.json");
  writeFileSync(bare, JSON.stringify({ ...document, gear: [], stations: [], panels: [], obstacles: [], variants: [] }));
  const nothing = duskline("drivers", bare, "--members", "40", "--json");
  const report = DriversJson.parse(JSON.parse(nothing.out));
  expect(report.shedding).toEqual([]);
  expect(report.factors.find(({ factor }) => factor === "canopy")!.low).toBeNull();
});

test.each(["0", "19", "1.5", "1e9", "100001", "500:200", "many"])(
  "--members %s is refused in a sentence",
  (members) => {
    const { code, out, err } = duskline("drivers", GROVE, "--members", members);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toBe(`--members is "${members}" but must be a whole number from 20 to 100000; write such a number.\n`);
  },
);
