import type { PreparedEnsemble } from "../../ensemble/prepareEnsemble.ts";
import { doubtsAbout } from "../../learn/doubts.ts";
import { type Learned, learn } from "../../learn/learn.ts";
import type { LearnHooks } from "../../learn/learnHooks.ts";
import { type LearnReport, learnReport } from "../../learn/learnReport.ts";
import { observationsOf } from "../../learn/observations.ts";
import { type PlacedReading, readReadings } from "../../learn/readReadings.ts";
import { restingCharge } from "../../learn/restingCharge.ts";
import { type StillHelps, whatStillHelps } from "../../learn/whatStillHelps.ts";
import type { Bands } from "../../odds/odds.ts";
import type { Odds } from "../../odds/wilson.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import { timePicture } from "../../ruler/timePicture.ts";
import type { Problem } from "../../scenario/problem.ts";

/** A reading of the charge as the chart shows it: what was read, and one standard error to either side. */
export interface ReadingMark {
  /** Its number in the entry's list. */
  readonly number: number;
  readonly ms: number;
  readonly share: number;
  readonly lowShare: number;
  readonly highShare: number;
  /** Resting volts: a poor measure. */
  readonly isPoor: boolean;
}

/** What the readings make of a forecast: plain data that a worker can hand over. */
export interface LearnedPicture {
  readonly time: TimePicture;
  readonly fullAh: number;
  readonly report: Omit<LearnReport, "before" | "after" | "charge">;
  /** Share in which loads go dark, from the last reading on. */
  readonly goesWithoutAfter: Odds;
  /** Charge over the whole event before anything was read. */
  readonly before: Bands;
  /** Charge from the last reading to the end. */
  readonly after: Bands;
  readonly marks: readonly ReadingMark[];
  /** Readings that can hardly be, by their number in the entry's list: they wait for a word and do not count meanwhile. */
  readonly asked: readonly { readonly number: number; readonly sentence: string }[];
  /** What can still be done; null while it is not worked out yet. */
  readonly helps: readonly StillHelps[] | null;
  readonly remarks: readonly string[];
}

/** A reading that can hardly be, and what is asked about it before it counts. */
export interface Doubted {
  /** Its number in the list, from 0. */
  readonly number: number;
  readonly at: string;
  readonly doubts: readonly string[];
}

/** What readings taught, with all that was worked out on the way. */
export interface Lesson {
  readonly learned: Learned;
  /** Readings that were set aside. */
  readonly asked: readonly Doubted[];
  readonly helps: readonly StillHelps[];
}

/** What is done besides learning. */
export interface LessonHooks extends LearnHooks {
  /** Told what is asked, before anything is learned; what it throws ends the work. */
  readonly asked?: (asked: readonly Doubted[]) => void;
  /** Handed what was learned before it is known what can still be done. */
  readonly early?: (lesson: Omit<Lesson, "helps">) => void;
}

/**
 * Takes a document of readings into an ensemble.
 * @param document as `readReadings` takes it
 * @param isConfirmed whether all readings are really so, however odd they look
 * @throws LearnCancelled once the hooks say so
 */
export async function lessonOf(
  ensemble: PreparedEnsemble,
  document: unknown,
  members: number,
  hooks: LessonHooks,
  isConfirmed = false,
): Promise<
  { readonly ok: true; readonly lesson: Lesson } | { readonly ok: false; readonly problems: readonly Problem[] }
> {
  const { grid, scenario } = ensemble.prepared;
  const read = readReadings(document, grid);
  if (!read.ok) return read;
  const readings = isConfirmed ? read.readings.map(confirmed) : read.readings;
  const all = readings.map(({ reading }) => reading);
  const asked = readings.flatMap(({ reading, number }) => {
    const doubts = doubtsAbout(reading, all, scenario);
    return doubts.length === 0 ? [] : [{ number, at: reading.at, doubts }];
  });
  hooks.asked?.(asked);
  const counted = readings.filter(({ number }) => !asked.some((each) => each.number === number));
  const learned = await learn(ensemble, counted, members, hooks);
  hooks.early?.({ learned, asked });
  return { ok: true, lesson: { learned, asked, helps: await whatStillHelps(learned, hooks) } };
}

const confirmed = (placed: PlacedReading): PlacedReading => ({
  ...placed,
  reading: { ...placed.reading, isConfirmed: true },
});

/** Takes from what was learned what the page shows. @param helps null while it is not known */
export function learnedPicture(
  { learned, asked }: Omit<Lesson, "helps">,
  helps: readonly StillHelps[] | null,
): LearnedPicture {
  const { ensemble, readings } = learned;
  const { before, after, charge, ...report } = learnReport(learned);
  return {
    time: timePicture(ensemble),
    fullAh: ensemble.prepared.bank.fullAh,
    report,
    goesWithoutAfter: after.goesWithout,
    before: before.charge,
    after: charge,
    marks: marksOf(ensemble, readings),
    helps,
    asked: asked.map(({ number, doubts }) => ({ number, sentence: doubts.join(" ") })),
    remarks: ensemble.remarks,
  };
}

function marksOf({ prepared }: PreparedEnsemble, readings: Learned["readings"]): ReadingMark[] {
  const { grid, bank } = prepared;
  return observationsOf(readings, prepared).flatMap(({ kind, number, place, value, sigma }): ReadingMark[] => {
    const at = { number, ms: grid.startMs + place * grid.stepMs };
    if (kind === "charge") return [{ ...at, ...about(value, sigma), isPoor: false }];
    if (kind === "outAh") return [{ ...at, ...about(1 - value / bank.fullAh, sigma / bank.fullAh), isPoor: false }];
    if (kind !== "restV") return [];
    const { lowShare, middleShare, highShare } = restingCharge(prepared, value);
    return [{ ...at, share: middleShare, lowShare, highShare, isPoor: true }];
  });
}

function about(share: number, spread: number) {
  const within = (value: number) => Math.min(1, Math.max(0, value));
  return { share: within(share), lowShare: within(share - spread), highShare: within(share + spread) };
}
