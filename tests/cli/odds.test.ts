import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import * as z from "zod";
import { duskline as call } from "./duskline.ts";

const SCENARIO = "scenarios/walnut-grove.json";
const folder = mkdtempSync(join(tmpdir(), "duskline-odds-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What a call that ends well prints. */
function duskline(...args: string[]): string {
  const { code, out, err } = call(...args);
  expect([code, err], args.join(" ")).toEqual([0, ""]);
  return out;
}

const Share = z.strictObject({ count: z.int(), of: z.int(), share: z.number(), low: z.number(), high: z.number() });
const Spread = z.strictObject({
  p5: z.number(),
  p25: z.number(),
  p50: z.number(),
  p75: z.number(),
  p95: z.number(),
  mean: z.number(),
});
const Bands = z.strictObject({
  p5: z.array(z.number()),
  p25: z.array(z.number()),
  p50: z.array(z.number()),
  p75: z.array(z.number()),
  p95: z.array(z.number()),
});
const Moment = z.strictObject({ date: z.string(), clock: z.string(), words: z.string() });
/** The documented shape of `odds --json`: nothing more and nothing less. */
const OddsJson = z.strictObject({
  format: z.literal("duskline-odds"),
  version: z.literal(1),
  scenario: z.strictObject({ name: z.string(), place: z.looseObject({ name: z.string() }) }),
  time: z.strictObject({ zone: z.string(), startMs: z.number(), stepMs: z.number(), steps: z.int() }),
  remarks: z.array(z.string()),
  seed: z.string(),
  members: z.int(),
  reserveShare: z.number(),
  holds: Share,
  dark: Share,
  goesWithout: Share,
  dropouts: Share,
  lowestShare: Spread,
  endShare: Spread,
  darkH: Spread,
  unservedWh: Spread,
  solarWh: Spread,
  spilledWh: Spread,
  demandWh: Spread,
  fuelL: Spread,
  generatorH: Spread,
  dropoutH: Spread,
  unservedByDevice: z.array(z.strictObject({ id: z.string(), name: z.string(), meanWh: z.number() })),
  failsMostly: z
    .strictObject({ from: Moment, to: Moment, shareOfFailures: z.number(), by: z.enum(["reserve", "dark"]) })
    .nullable(),
  tailMember: z.int(),
  charge: Bands,
  solarW: Bands,
  loadW: Bands,
  belowShare: z.array(z.number()),
  darkShare: z.array(z.number()),
  sentences: z.array(z.string()),
});

test("odds prints its documented JSON", () => {
  const odds = OddsJson.parse(
    JSON.parse(duskline("odds", SCENARIO, "--members", "60", "--seed", "any text, even this: ∿", "--json")),
  );
  expect(odds.members).toBe(60);
  expect(odds.seed).toBe("any text, even this: ∿");
  expect(odds.charge.p50).toHaveLength(odds.time.steps + 1);
  expect(odds.belowShare).toHaveLength(odds.time.steps);
});

test("parts written to files and put together print what one batch prints", () => {
  const [a, b] = [join(folder, "a.json"), join(folder, "b.json")];
  duskline("odds", SCENARIO, "--members", "0:25", "--part", a);
  duskline("odds", SCENARIO, "--members", "25:40", "--part", b);
  const merged = duskline("odds", SCENARIO, "--parts", `${b},${a}`, "--json");
  expect(merged).toBe(duskline("odds", SCENARIO, "--members", "40", "--json"));
});

test("odds says its answer first and names the member in the bad tail, which trace replays", () => {
  const text = duskline("odds", SCENARIO, "--members", "60");
  expect(text.split("\n")[2]).toMatch(/^The bank holds to Sun 11 Oct 16:00 in (fewer than )?\d+ of 100 skies/);
  const member = /--member (\d+)/.exec(text)![1]!;
  const json = JSON.parse(
    duskline("odds", SCENARIO, "--members", `${member}:${Number(member) + 1}`, "--json"),
  ) as z.infer<typeof OddsJson>;
  const trace = JSON.parse(duskline("trace", SCENARIO, "--member", member, "--json")) as {
    verdict: { lowestShare: number };
  };
  expect(trace.verdict.lowestShare).toBe(json.lowestShare.p50);
});

test("versus compares a scenario with its variants and prints its documented JSON", () => {
  const text = duskline("versus", SCENARIO, "--variants", "meadow", "--members", "40");
  expect(text).toMatch(/against \d+ with the plan as it is/);
  expect(text).toContain("+ panels.meadow");
  const json = JSON.parse(duskline("versus", SCENARIO, "--members", "40", "--json"));
  expect(json).toMatchObject({ format: "duskline-versus", version: 1, members: 40 });
  expect(json.others.map((other: { name: string }) => other.name)).toHaveLength(3);
  expect(json.others[0].changes).toEqual(["+ panels.meadow (Folding panels in the meadow)"]);
});

test.each([
  [["odds", SCENARIO, "--members", "0"], 2, /--members is "0"/],
  [["odds", SCENARIO, "--members", "1e9"], 2, /1000000/],
  [["odds", SCENARIO, "--members", "9:3"], 2, /range such as/],
  [["odds", SCENARIO, "--parts", SCENARIO], 1, /no part of an ensemble/],
  [["odds", SCENARIO, "--parts", "nowhere.json"], 2, /no file nowhere.json/],
  [["trace", SCENARIO, "--member", "x"], 2, /--member is "x"/],
  [["versus", SCENARIO, "--variants", "nope"], 1, /no variant "nope"/],
  [["versus", "scenarios/nope.json"], 2, /no file/],
] as const)("a wrong call is answered in a sentence: %j", (args, code, message) => {
  const { code: ended, err } = call(...args);
  expect(ended).toBe(code);
  expect(err).toMatch(message);
  expect(err).not.toMatch(/\n\s+at /);
});
