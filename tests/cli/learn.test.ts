import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import * as z from "zod";
import { duskline } from "./duskline.ts";

const SCENARIO = "scenarios/walnut-grove.json";
const folder = mkdtempSync(join(tmpdir(), "duskline-learn-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function fileOf(name: string, readings: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify({ format: "duskline-readings", version: 1, readings }));
  return path;
}

const Share = z.strictObject({ count: z.int(), of: z.int(), share: z.number(), low: z.number(), high: z.number() });
const Interval = z.strictObject({ p10: z.number(), p50: z.number(), p90: z.number() });
const Quantiles = <Value extends z.ZodType>(value: Value) =>
  z.strictObject({ p5: value, p25: value, p50: value, p75: value, p95: value });
const Spread = z.strictObject({ ...Quantiles(z.number()).shape, mean: z.number() });
const Moment = { date: z.string(), clock: z.string(), words: z.string() };
const Difference = z.strictObject({
  mean: z.number(),
  low: z.number(),
  high: z.number(),
  unpairedLow: z.number(),
  unpairedHigh: z.number(),
});
const Hours = z.number().nullable();
/** The documented shape of `learn --json`: nothing more and nothing less. */
const LearnedJson = z.strictObject({
  format: z.literal("duskline-learned"),
  version: z.literal(1),
  scenario: z.strictObject({ name: z.string(), place: z.looseObject({ name: z.string() }) }),
  time: z.strictObject({ zone: z.string(), startMs: z.number(), stepMs: z.number(), steps: z.int() }),
  remarks: z.array(z.string()),
  seed: z.string(),
  members: z.int(),
  readings: z.int(),
  now: z.strictObject({ ...Moment, step: z.int(), ms: z.number() }),
  reserveShare: z.number(),
  holdsBefore: Share,
  holdsAfter: Share,
  darkBefore: Share,
  darkAfter: Share,
  endBefore: Interval,
  endAfter: Interval,
  chargeNow: Interval,
  lowestBefore: Spread,
  lowestAfter: Spread,
  hoursLeft: z.strictObject({ p10: Hours, p50: Hours, p90: Hours }),
  charge: Quantiles(z.array(z.number())),
  lessons: z.array(
    z.strictObject({ name: z.string(), before: Interval, after: Interval, sentence: z.string().nullable() }),
  ),
  stages: z.array(z.strictObject({ ...Moment, effective: z.number(), power: z.number() })),
  fewestEffective: z.number(),
  founders: z.int(),
  wrong: z.array(
    z.strictObject({
      number: z.int(),
      kind: z.string(),
      direction: z.enum(["higher", "lower", "between"]),
      isContradiction: z.boolean(),
      sentence: z.string(),
    }),
  ),
  widened: z.number(),
  helps: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      takes: z.string(),
      caution: z.string().nullable(),
      changes: z.array(z.looseObject({ at: z.string() })),
      fromNow: z.array(z.looseObject({ at: z.string() })),
      holds: Share,
      gain: Difference,
      margin: Difference,
      hoursGained: z.number(),
      sentence: z.string(),
    }),
  ),
  sentences: z.array(z.string()),
});

const READ = [
  { at: "2026-10-08T18:30", chargeShare: 0.9 },
  { at: "2026-10-09T07:00", outAh: 60 },
];

test("learn prints the documented JSON, and its words say the same", () => {
  const file = fileOf("read.json", READ);
  const json = LearnedJson.parse(
    JSON.parse(duskline("learn", SCENARIO, "--readings", file, "--members", "200", "--json").out),
  );
  expect(json.now.words).toBe("Fri 9 Oct 07:00");
  expect(json.charge.p50).toHaveLength(json.time.steps - json.now.step + 1);
  expect(json.helps.length).toBeGreaterThan(0);
  const { out, code } = duskline("learn", SCENARIO, "--readings", file, "--members", "200");
  expect(code).toBe(0);
  for (const sentence of [...json.sentences, ...json.helps.map((each) => each.sentence)])
    expect(out).toContain(sentence);
  expect(out).toContain("Sun 11 Oct 16:00");
});

test("without readings, learn says what odds says", () => {
  const learned = JSON.parse(
    duskline("learn", SCENARIO, "--readings", fileOf("none.json", []), "--members", "200", "--json").out,
  ) as z.infer<typeof LearnedJson>;
  const odds = JSON.parse(duskline("odds", SCENARIO, "--members", "200", "--json").out) as {
    holds: unknown;
    lowestShare: unknown;
    sentences: string[];
  };
  expect(learned.holdsAfter).toEqual(odds.holds);
  expect(learned.lowestAfter).toEqual(odds.lowestShare);
  expect(learned.sentences).toEqual(odds.sentences);
});

test("wrong readings end with code 1, a wrong call with code 2, each in a sentence", () => {
  const early = duskline(
    "learn",
    SCENARIO,
    "--readings",
    fileOf("early.json", [{ at: "2026-10-07T10:00", chargeShare: 1 }]),
  );
  expect(early.code).toBe(1);
  expect(early.err).toContain("before the event starts");
  expect(duskline("learn", SCENARIO)).toMatchObject({ code: 2 });
  const few = duskline("learn", SCENARIO, "--readings", fileOf("few.json", READ), "--members", "20");
  expect(few).toMatchObject({ code: 2 });
  expect(few.err).toContain("from 100 to 20000");
  expect(duskline("learn", SCENARIO, "--readings", join(folder, "nowhere.json"))).toMatchObject({ code: 2 });
});

test("a reading that can hardly be is asked about, and counts once it is confirmed", () => {
  const path = fileOf("odd.json", [
    { at: "2026-10-09T07:00", chargeShare: 0.7 },
    { at: "2026-10-09T12:00", restV: 26.4 },
  ]);
  const asked = duskline("learn", SCENARIO, "--readings", path, "--members", "100");
  expect(asked.code).not.toBe(0);
  expect(asked.err).toMatch(
    /readings\.2 \(2026-10-09 12:00\): 26\.40 V on a 12 V bank.* Really\? Correct it.*--confirm/s,
  );
  const { code, out } = duskline("learn", SCENARIO, "--readings", path, "--members", "100", "--confirm");
  expect(code).toBe(0);
  expect(out.replace(/\s+/g, " ")).toMatch(/was confirmed, and no member of the plan explains it/);
});
