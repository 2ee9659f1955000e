import { expect, test } from "vitest";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { doubtsAbout } from "../../../engine/learn/doubts.ts";
import { learn } from "../../../engine/learn/learn.ts";
import { learnReport } from "../../../engine/learn/learnReport.ts";
import type { Reading } from "../../../engine/learn/reading.ts";
import { readReadings } from "../../../engine/learn/readReadings.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { oneMapTask } from "../pool/oneEnsemble.ts";

const DOCUMENT = oneMapTask(0, 1).document as ScenarioInput;
const READ = readScenario(DOCUMENT);
if (!READ.ok) throw new Error(READ.problems[0]!.message);
const { scenario } = READ;
const AT = "2026-06-11T20:00";
const doubts = (reading: Partial<Reading>, all: readonly Reading[] = []) => {
  const whole = { at: AT, ...reading } as Reading;
  return doubtsAbout(whole, [...all, whole], scenario);
};
const ratedW = scenario.panels.reduce((sum, { count, module }) => sum + count * module.ratedW, 0);

test.each([
  ["another bank's volts", { restV: 26.4 }, /26\.40 V on a 12 V bank: at rest it shows 9\.6 to 14\.\d V/],
  ["no bank's volts", { restV: 7 }, /7\.00 V on a 12 V bank/],
  ["more than it holds", { outAh: 140 }, /140 Ah out of a bank of 60 Ah/],
  ["more than the panels", { panelsW: 2 * ratedW }, /W from panels of \d+ W in all/],
  ["more than everything at once", { loadA: 400 }, /400\.0 A of load, where everything in the plan at once draws/],
  ["still to come", { chargeShare: 0.5, enteredAt: "2026-06-11T12:00" }, /still to come when it was typed in/],
])("%s is asked about", (_, reading, words) => {
  const said = doubts(reading);
  expect(said).toHaveLength(1);
  expect(said[0]).toMatch(words);
  expect(said[0]).toMatch(/Really\?$/);
  expect(doubts({ ...reading, isConfirmed: true })).toEqual([]);
});

test.each([
  ["volts of a rested bank", { restV: 12.6 }],
  ["volts of one on charge", { restV: 14.4 }],
  ["what a worn counter says of an empty bank", { outAh: 75 }],
  ["the edge of a cloud", { panelsW: 1.2 * ratedW }],
  ["a load", { loadA: 3 }],
  ["typed in as it was read", { chargeShare: 0.5, enteredAt: "2026-06-11T18:00" }],
])("%s is not", (_, reading) => {
  expect(doubts(reading)).toEqual([]);
});

test("of two readings of one minute the second is asked about", () => {
  const first = { at: AT, chargeShare: 0.6 } as Reading;
  expect(doubtsAbout(first, [first, { at: AT, chargeShare: 0.3 } as Reading], scenario)).toEqual([]);
  expect(doubts({ chargeShare: 0.3 }, [first])[0]).toMatch(/another reading of 2026-06-11 20:00, the same minute/);
});

test("what is confirmed and nobody explains is named and moves nothing: figures, bands and odds are those without it", async () => {
  const ready = prepareEnsemble(scenario, {}, "4127");
  if (!ready.ok) throw new Error("prepares");
  const { ensemble } = ready;
  const good = { at: "2026-06-11T16:00", chargeShare: 0.55 };
  const learned = async (readings: readonly object[]) => {
    const read = readReadings({ format: "duskline-readings", version: 1, readings }, ensemble.prepared.grid);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    return learnReport(await learn(ensemble, read.readings, 200));
  };
  const [without, odd] = [await learned([good]), await learned([good, { at: AT, restV: 26.4, isConfirmed: true }])];
  expect(odd.holdsAfter).toEqual(without.holdsAfter);
  expect(odd.charge).toEqual(without.charge);
  expect(odd.widened).toBe(without.widened);
  expect(odd.wrong.map(({ sentence }) => sentence).join(" ")).toMatch(
    /26\.40 V\) was confirmed, and no member of the plan explains it .*counts for nothing/,
  );
  // A confirmed reading that the plan explains counts as any other.
  const fine = await learned([{ ...good, isConfirmed: true }]);
  expect(fine.charge).toEqual(without.charge);
  expect(fine.wrong).toEqual([]);
  // A low charge that somebody confirms, and that nobody explains, is no slip: the forecast goes on from it.
  const low = await learned([good, { at: "2026-06-11T17:00", chargeShare: 0.05, isConfirmed: true }]);
  expect(low.wrong.map(({ sentence }) => sentence).join(" ")).not.toMatch(/counts for nothing/);
  expect(low.chargeNow.p90).toBeLessThan(0.3);
  // And alone: the odds of the plan.
  const alone = await learned([{ at: AT, restV: 26.4, isConfirmed: true }]);
  expect(alone.holdsAfter).toEqual(alone.holdsBefore);
  expect(alone.sentences[0]).toMatch(/counts for nothing/);
});
