import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { syntheticLog } from "../engine/actual/syntheticLog.ts";
import { exampleEnsemble } from "../engine/ensemble/exampleEnsemble.ts";
import { duskline } from "./duskline.ts";

const GROVE = "scenarios/walnut-grove.json";
const folder = mkdtempSync(join(tmpdir(), "duskline-actual-"));
afterAll(() => rmSync(folder, { recursive: true }));
const truth = exampleEnsemble("walnut-grove", [], "what really happened");
const made = syntheticLog(truth, 4, { rowMinutes: 10, columns: ["charge", "bankV", "bankA", "pvW"], lostShare: 0.05 });

function written(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}
const log = written("log.csv", made.text);

const byStep = (length: number) => z.array(z.number().nullable()).length(length);
const miss = z.strictObject({
  atMs: z.number(),
  plannedShare: z.number(),
  actualShare: z.number(),
  share: z.number(),
  wh: z.number(),
  parts: z
    .array(
      z.strictObject({
        name: z.string(),
        share: z.number(),
        spread: z.number(),
        wh: z.number(),
        spreadWh: z.number(),
        lacking: z.string().nullable(),
      }),
    )
    .length(5),
  loadWh: z.strictObject({ planned: z.number(), actual: z.number() }).nullable(),
  sunWh: z.strictObject({ planned: z.number(), actual: z.number() }).nullable(),
  sentences: z.array(z.string()),
});
const Actual = (steps: number) =>
  z.strictObject({
    format: z.literal("duskline-actual"),
    version: z.literal(1),
    scenario: z.string(),
    time: z.strictObject({ zone: z.string(), startMs: z.number(), stepMs: z.number(), steps: z.literal(steps) }),
    mapping: z.looseObject({}),
    findings: z.array(
      z.strictObject({
        code: z.string(),
        message: z.string(),
        rows: z.number(),
        line: z.number().nullable(),
        proposal: z.looseObject({}).nullable(),
      }),
    ),
    coveredShare: z.number(),
    plan: z.strictObject({
      chargeShare: byStep(steps + 1),
      loadW: byStep(steps),
      solarW: byStep(steps),
      spilledW: byStep(steps),
    }),
    actual: z.strictObject({
      chargeShare: byStep(steps + 1),
      loadW: byStep(steps),
      pvW: byStep(steps),
      bankA: byStep(steps),
      bankV: byStep(steps),
      coverageShare: byStep(steps),
    }),
    days: z.array(z.strictObject({ date: z.string(), clearIndexShare: z.number().nullable(), sunH: z.number() })),
    miss,
    widest: miss,
    correction: z.strictObject({
      figures: z
        .array(
          z.strictObject({
            name: z.string(),
            value: z.number(),
            low: z.number(),
            high: z.number(),
            priorSpread: z.number(),
            spread: z.number(),
            status: z.enum(["found", "leaning", "open", "missing"]),
            sentence: z.string(),
          }),
        )
        .length(6),
      sendingHabit: z.strictObject({ low: z.number(), high: z.number() }),
      skyKnown: z.boolean(),
      coveredH: z.number(),
      fromMs: z.number(),
      toMs: z.number(),
      members: z.number(),
      remarks: z.array(z.string()),
    }),
    variant: z.strictObject({
      id: z.string(),
      name: z.string(),
      changes: z.array(z.looseObject({ at: z.string() })),
      remarks: z.array(z.string()),
    }),
  });

describe("actual", () => {
  test("says what was read, why the plan missed, and what to correct", () => {
    const { code, out, err } = duskline("actual", GROVE, "--log", log, "--map", "stamp=start");
    expect(err).toBe("");
    expect(code).toBe(0);
    expect(out).toContain('pvW from "PV W"');
    expect(out).toContain("Farthest from the plan:");
    expect(out).toMatch(/Draw between transmissions: 1\.2\d of plan, nine times in ten between/);
  });

  test("as JSON has the documented shape, its mapping reads the log again, and its variant is a scenario's", () => {
    const first = duskline("actual", GROVE, "--log", log, "--json");
    expect(first.code).toBe(0);
    const printed = Actual(468).parse(JSON.parse(first.out));
    const page = readFileSync("docs/command-line.md", "utf8");
    for (const [, list] of JSON.stringify(z.toJSONSchema(Actual(468))).matchAll(/"required":\[([^\]]*)\]/g)) {
      for (const [, name] of list!.matchAll(/"(\w+)"/g)) expect(page, name).toContain(`\`${name}\``);
    }
    const map = written("map.json", JSON.stringify(printed.mapping));
    const again = duskline("actual", GROVE, "--log", log, "--map", map, "--json");
    expect(JSON.parse(again.out).correction).toEqual(JSON.parse(first.out).correction);
    const document = JSON.parse(readFileSync(GROVE, "utf8"));
    const { id, name, changes } = printed.variant;
    const calibrated = written("grove.json", JSON.stringify({ ...document, variants: [{ id, name, changes }] }));
    expect(duskline("trace", calibrated, "--variant", id).code).toBe(0);
  });

  test.each<[string, string[], number, RegExp]>([
    ["no log", [], 2, /--log FILE/],
    ["a log that is not there", ["--log", "nowhere.csv"], 2, /There is no file/],
    ["a map of nothing", ["--log", log, "--map", "sun=PV"], 2, /write name=title/],
    ["a column that is not there", ["--log", log, "--map", "pvW=Sun"], 1, /"Sun", which the log does not have/],
    ["a zone that is none", ["--log", log, "--map", "zone=Moon"], 1, /no zone that is known/],
    ["another week", ["--log", log, "--map", "shiftMinutes=20000"], 1, /no step in common/],
  ])("%s ends in words", (_, options, code, words) => {
    const call = duskline("actual", GROVE, ...options);
    expect(call.err).toMatch(words);
    expect(call.code).toBe(code);
    expect(call.err).not.toMatch(/\bat .*\.[jt]s:/);
  });
});
