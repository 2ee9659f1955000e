import { beforeAll, expect, test } from "vitest";
import { loggedSteps } from "../../../engine/actual/loggedSteps.ts";
import { actualCsv } from "../../../engine/answers/actual/actualCsv.ts";
import { actualPicture, heldAgainst } from "../../../engine/answers/actual/actualPicture.ts";
import { actualSentence, leadingMiss, partsOf, takeable } from "../../../engine/answers/actual/actualWords.ts";
import { ActualDoc } from "../../../engine/answers/actual/doc.ts";
import { meterLogOf } from "../../../engine/answers/actual/keptLog.ts";
import { readMeterLog } from "../../../engine/meter/readMeterLog.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { type LogAsked, readLog } from "../../../explorer/entries/actual/readLog.ts";
import { EXAMPLE, exampleRun } from "../exampleRun.ts";
import { exampleLog, writtenAbroad } from "./exampleLog.ts";

let text = "";
beforeAll(async () => {
  text = (await exampleLog()).text;
});

const asked = (part: Partial<LogAsked>): LogAsked => ({
  name: "meter.csv",
  text,
  mapping: null,
  remembered: [],
  document: EXAMPLE,
  takenAt: "2026-10-12T10:00",
  ...part,
});

test("a log is read, kept within the schema's bounds, and says on the plan's steps what the whole log says", async () => {
  const read = readLog(asked({}));
  expect(read.wrong).toEqual([]);
  const { log } = read;
  expect(ActualDoc.safeParse({ scenario: "roof", log }).success).toBe(true);
  expect(JSON.stringify(log).length).toBeLessThan(20_000);
  const { grid } = (await exampleRun()).prepared;
  const whole = readMeterLog(text, {}, grid.zone);
  if (!whole.ok) throw new Error("reads");
  const [before, after] = [loggedSteps(whole.log, grid), loggedSteps(meterLogOf(log!), grid)];
  for (const name of ["chargeShare", "pvW", "bankV", "loadW"] as const) {
    for (let i = 0; i < grid.steps; i++) {
      const [is, was] = [after[name]![i]!, before[name]![i]!];
      expect(Number.isFinite(is), `${name} ${i}`).toBe(Number.isFinite(was));
      if (Number.isFinite(was)) expect(Math.abs(is - was), `${name} ${i}`).toBeLessThanOrEqual(0.06); // rounded when kept
    }
  }
});

test("rows closer than the plan's steps are kept as means over them, and gaps stay gaps", async () => {
  const [titles, ...rows] = text.trim().split("\n");
  const fine = rows.flatMap((row) => {
    const [time, ...figures] = row.split(",");
    const ms = Date.parse(time!);
    return [0, 5, 10, 15].map((minute) => [new Date(ms + minute * 60_000).toISOString(), ...figures].join(","));
  });
  const read = readLog(asked({ text: [titles, ...fine].join("\n") }));
  expect(read.wrong).toEqual([]);
  const log = read.log!;
  expect(log.stamp).toBe("start");
  const missing = log.atMinutes.filter((minutes, k) => k > 0 && minutes - log.atMinutes[k - 1]! > 11).length;
  expect(missing).toBeGreaterThan(0);
  expect(log.atMinutes.length).toBeLessThanOrEqual(2 * rows.length + 3);
  const { grid } = (await exampleRun()).prepared;
  // Without the charge, whose rows at the edges of a gap would stop a mean from reaching into it.
  const mapping = { columns: { charge: null }, currentSign: "chargingPositive" as const };
  const chargeless = readLog(asked({ text: [titles, ...fine].join("\n"), mapping })).log!;
  const whole = readMeterLog([titles, ...fine].join("\n"), mapping, grid.zone);
  if (!whole.ok) throw new Error("reads");
  const [before, after] = [loggedSteps(whole.log, grid), loggedSteps(meterLogOf(chargeless), grid)];
  for (let i = 0; i < grid.steps; i++) {
    expect(Number.isFinite(after.pvW![i]!), `step ${i}`).toBe(Number.isFinite(before.pvW![i]!));
    if (Number.isFinite(before.pvW![i]!)) expect(Math.abs(after.pvW![i]! - before.pvW![i]!)).toBeLessThanOrEqual(0.06);
  }
});

test("titles, marks and a clock from abroad are found, and the wrong zone is said with what would fix it", () => {
  const read = readLog(asked({ text: writtenAbroad(text) }));
  expect(read.mapping).toMatchObject({ delimiter: ";", decimal: ",", timeForm: "dayFirst" });
  const clock = read.findings.find(({ code }) => code === "clock-off");
  expect(clock?.proposal).toEqual({ zone: "UTC" });
  const corrected = readLog(asked({ text: writtenAbroad(text), mapping: { ...read.mapping, ...clock!.proposal } }));
  expect(corrected.findings.map(({ code }) => code)).not.toContain("clock-off");
});

test("a mapping is remembered for the same titles only, and only if the engine's schema takes it", () => {
  const odd = text.replace("charge %", "what is left");
  const titles = odd.split("\n")[0]!.split(",");
  const mapping = { columns: { time: "time", charge: "what is left" } };
  expect(readLog(asked({ text: odd })).mapping.columns?.charge).toBeUndefined();
  const remembered = readLog(asked({ text: odd, remembered: [{ titles, mapping }] }));
  expect(remembered.isRemembered).toBe(true);
  expect(remembered.mapping.columns?.charge).toBe("what is left");
  expect(readLog(asked({ remembered: [{ titles, mapping }] })).isRemembered).toBe(false);
  const hostile = [{ titles, mapping: { delimiter: "<script>" } as never }];
  expect(readLog(asked({ text: odd, remembered: hostile })).isRemembered).toBe(false);
});

test("a log that fails says why, and nothing is kept", () => {
  const says = (part: Partial<LogAsked>) => {
    const read = readLog(asked(part));
    expect(read.log).toBeNull();
    return read.wrong.join(" ");
  };
  expect(says({ text: "" })).toContain("is empty");
  expect(says({ text: "\u0000\u0001PNG\u0000" })).toMatch(/titles/);
  expect(says({ text: "<html><script>alert(1)</script></html>" })).toMatch(/titles/);
  expect(says({ text: "name,value\na,1\nb,2" })).toMatch(/date and time/);
  expect(says({ text: text.replaceAll("2026-10", "2025-03") })).toMatch(/no step in common/);
  const ambiguous = writtenAbroad(text).replace(/^\d+\.10\./gm, "05/06/");
  expect(says({ text: ambiguous })).toMatch(/day and month either way/);
  const broken = { ...EXAMPLE, stations: "none" } as unknown as ScenarioInput;
  expect(says({ document: broken })).toContain("stations");
});

test("the picture tells of the miss where it was widest, and offers what the log found", async () => {
  const read = readScenario(EXAMPLE);
  if (!read.ok) throw new Error("reads");
  const kept = readLog(asked({})).log!;
  const found = heldAgainst(read.scenario, meterLogOf(kept), { climate: await loadClimateTables() }, "4127");
  if (!found.ok) throw new Error(found.problems[0]!.message);
  const picture = actualPicture(found);
  const miss = leadingMiss(picture)!;
  expect(miss).toBe(picture.widest); // the bank ends empty either way
  const sum = partsOf(miss).reduce((total, { share }) => total + share, 0);
  const lacking = miss.parts.filter(({ lacking }) => lacking !== null).reduce((total, { share }) => total + share, 0);
  expect(sum + lacking).toBeCloseTo(miss.share, 9);
  const words = actualSentence(picture, "Roof alone", "first")
    .map((each) => each.text)
    .join("");
  expect(words).toMatch(/; load took most, \d+\u202fpoints\.$/);
  expect(takeable(picture.correction!).map(({ name }) => name)).toContain("idle");
  expect(actualCsv(picture).split("\n")).toHaveLength(picture.time.steps + 2);
});
