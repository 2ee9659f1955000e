import { expect, test } from "vitest";
import { type LearnedPicture, learnedPicture, lessonOf } from "../../../engine/answers/readings/learnedPicture.ts";
import { learnedCsv, learnedRows } from "../../../engine/answers/readings/learnedRows.ts";
import {
  learnedInstant,
  learnedMore,
  learnedSentence,
  lessonRows,
  roughWords,
} from "../../../engine/answers/readings/learnedWords.ts";
import { localTime, suggestedTime, whyNoTime } from "../../../engine/answers/readings/localTime.ts";
import { runPicture } from "../../../engine/answers/run/runPicture.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { draftOf, emptyDraft, readingOf } from "../../../explorer/entries/readings/readingDraft.ts";
import { EXAMPLE, exampleRun } from "../exampleRun.ts";

async function exampleEvent() {
  const run = runPicture(await exampleRun());
  return { ruler: run.ruler, startMs: run.startMs, endMs: run.startMs + run.steps * run.stepMs };
}

/** An entry's readings taken into an ensemble, as `workLearned` does. */
async function learnedFrom(
  ensemble: PreparedEnsemble,
  readings: readonly object[],
  members: number,
  early: (picture: LearnedPicture) => void = () => {},
) {
  const document = { format: "duskline-readings", version: 1, readings };
  const found = await lessonOf(ensemble, document, members, { early: (first) => early(learnedPicture(first, null)) });
  return found.ok ? { ok: true as const, picture: learnedPicture(found.lesson, found.lesson.helps) } : found;
}

const plain = (text: string) => text.replaceAll("\u202f", " ");

test("now is the time of a reading within the event; outside it, it is said and asked for", async () => {
  const event = await exampleEvent();
  const noonMs = Date.parse("2026-10-10T10:00:00Z"); // 12:00 by the clock in October's summer time
  expect(localTime(event.ruler, noonMs)).toBe("2026-10-10T12:00");
  expect(suggestedTime(event, noonMs)).toEqual({ at: "2026-10-10T12:00", says: null });
  const late = suggestedTime(event, Date.parse("2026-11-25T11:00:00Z"));
  expect(late.at).toBe("");
  expect(late.says).toMatch(/^It is Wed 25 November 2026, .* now, after the event has ended; say when it was read\.$/);
  expect(suggestedTime(event, Date.parse("2026-09-01T11:00:00Z")).says).toContain("before the event begins");
  expect(whyNoTime(event, "2026-10-13T09:00")).toBe(
    "Tue 13 October 2026, 09:00 lies after the event, which lasts from Thu 8 20:00 to Sun 11 16:00; correct the time.".replace(
      "Thu 8 20:00",
      `Thu 8 ${localTime(event.ruler, event.startMs).slice(11)}`,
    ),
  );
  expect(whyNoTime(event, "2026-10-10T09:00")).toBeNull();
});

test("what is typed becomes a reading of the engine's format, and back; what is wrong is said in one sentence", async () => {
  const event = await exampleEvent();
  const draft = { ...emptyDraft("2026-10-10T08:00", "Ada"), charge: "40,5", panelsW: "12" };
  const found = readingOf(draft, event, "2026-10-10T06:01");
  expect(found).toEqual({
    ok: true,
    reading: {
      at: "2026-10-10T08:00",
      chargeShare: 0.405,
      panelsW: 12,
      by: "Ada",
      enteredAt: "2026-10-10T06:01",
    },
  });
  if (!found.ok) return;
  expect(draftOf(found.reading)).toEqual({ ...draft, charge: "40.5" });
  const says = (part: object) => {
    const read = readingOf({ ...draft, ...part }, event, "x");
    return read.ok ? "read" : read.sentence;
  };
  expect(says({ charge: "140" })).toBe('Charge, % is "140" but must be a number from 0 to 100 %; correct it.');
  expect(says({ charge: "many" })).toContain('"many"');
  expect(says({ charge: "", panelsW: "" })).toMatch(/^Nothing is read yet/);
  expect(says({ at: "2026-12-01T08:00" })).toContain("after the event");
  expect(says({ skyDate: "2026-10-11", skyWord: "clear" })).toContain("once that day has come");
  expect(says({ way: "restV", charge: "12.9", error: "3" })).toBe("read");
  const volts = readingOf({ ...draft, way: "restV", charge: "12.9", error: "3" }, event, "x");
  expect(volts.ok && volts.reading).not.toHaveProperty("errorShare");
});

test("the picture holds the engine's bands, a mark for each charge, and words that agree with them", async () => {
  const read = readScenario(EXAMPLE);
  if (!read.ok) throw new Error("reads");
  const ready = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, "4127");
  if (!ready.ok) throw new Error("prepares");
  const readings = [
    { at: "2026-10-09T20:00", restV: 13.1 },
    { at: "2026-10-10T08:00", chargeShare: 0.4, panelsW: 12 },
  ];
  let early: unknown = null;
  const found = await learnedFrom(ready.ensemble, readings, 120, (picture) => {
    early = picture.helps;
  });
  if (!found.ok) throw new Error(found.problems[0]!.message);
  const { picture } = found;
  expect(early).toBeNull();
  expect(picture.helps!.length).toBeGreaterThan(0);
  expect(picture.marks.map(({ number, isPoor }) => [number, isPoor])).toEqual([
    [0, true],
    [1, false],
  ]);
  expect(picture.marks[1]).toMatchObject({ share: 0.4 });
  expect(picture.marks[1]!.highShare - picture.marks[1]!.lowShare).toBeCloseTo(0.06, 6);
  expect(picture.after.p50).toHaveLength(picture.time.steps - picture.report.now.step + 1);
  expect(picture.before.p50).toHaveLength(picture.time.steps + 1);
  const says = learnedSentence(picture, "Roof alone", "first")
    .map(({ text }) => text)
    .join("");
  expect(plain(says)).toMatch(
    /^Roof alone: from Sat 10 08:00 on the bank holds to Sun 16:00 in .* of 100 skies; before/,
  );
  expect(plain(learnedMore(picture))).toContain("120 members, seed 4127");
  expect(roughWords(picture).length).toBe(picture.report.fewestEffective < 50 ? 1 : 0);
  expect(lessonRows(picture)).toHaveLength(picture.report.lessons.length);
  const rows = learnedRows(picture, 3 * 3_600_000);
  expect(rows[0]!.name).toBe("Sat 10 08:00");
  expect(rows.at(-1)!.name).toBe("Sun 11 16:00");
  expect(learnedCsv(picture).split("\n")).toHaveLength(picture.after.p50.length + 1);
  expect(plain(learnedInstant(picture, picture.report.now.ms))).toContain("Read: 40 %.");
});

test("ampere-hours out are drawn from a full bank down, and nothing is drawn for what tells no charge", async () => {
  const read = readScenario(EXAMPLE);
  if (!read.ok) throw new Error("reads");
  const ready = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, "4127");
  if (!ready.ok) throw new Error("prepares");
  const readings = [
    { at: "2026-10-10T08:00", outAh: 134.4, errorShare: 0.1 },
    { at: "2026-10-10T09:00", panelsW: 20 },
  ];
  const found = await learnedFrom(ready.ensemble, readings, 100);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  const { marks, fullAh } = found.picture;
  expect(fullAh).toBeCloseTo(0.96 * 280, 6); // 280 Ah of which age has left 96 %
  expect(marks).toHaveLength(1);
  expect(marks[0]!.share).toBeCloseTo(0.5, 6);
  expect(marks[0]!.lowShare).toBeCloseTo(0.4, 6);
});

test("a reading outside the event is a problem that names its number", async () => {
  const read = readScenario(EXAMPLE);
  if (!read.ok) throw new Error("reads");
  const ready = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, "4127");
  if (!ready.ok) throw new Error("prepares");
  const found = await learnedFrom(ready.ensemble, [{ at: "2026-12-01T08:00", chargeShare: 0.4 }], 120);
  expect(found.ok).toBe(false);
  if (!found.ok) expect(found.problems[0]).toMatchObject({ code: "after-end", path: ["readings", 0, "at"] });
});
