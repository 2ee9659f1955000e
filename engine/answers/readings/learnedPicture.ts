import type { PreparedEnsemble } from "../../ensemble/prepareEnsemble.ts";
import { doubtsAbout } from "../../learn/doubts.ts";
import { type Learned, learn } from "../../learn/learn.ts";
import type { LearnHooks } from "../../learn/learnHooks.ts";
import { type LearnReport, learnReport } from "../../learn/learnReport.ts";
import { observationsOf } from "../../learn/observations.ts";
import { readReadings } from "../../learn/readReadings.ts";
import { restingCharge } from "../../learn/restingCharge.ts";
import { type StillHelps, whatStillHelps } from "../../learn/whatStillHelps.ts";
import type { Bands } from "../../odds/odds.ts";
import type { Odds } from "../../odds/wilson.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import { timePicture } from "../../ruler/timePicture.ts";
import type { Problem } from "../../scenario/problem.ts";
import type { ReadingsDoc } from "./doc.ts";

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

export type LearnedFound =
  | { readonly ok: true; readonly picture: LearnedPicture }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Takes an entry's readings into an ensemble.
 * @param early is handed the picture before it is known what can still be done
 * @throws LearnCancelled once the hooks say so
 */
export async function learnedPicture(
  ensemble: PreparedEnsemble,
  readings: ReadingsDoc["readings"],
  members: number,
  hooks: LearnHooks,
  early: (picture: LearnedPicture) => void,
): Promise<LearnedFound> {
  const document = { format: "duskline-readings", version: 1, readings };
  const read = readReadings(document, ensemble.prepared.grid);
  if (!read.ok) return read;
  const { scenario } = ensemble.prepared;
  const all = read.readings.map(({ reading }) => reading);
  const asked = read.readings.flatMap(({ reading, number }) => {
    const doubts = doubtsAbout(reading, all, scenario);
    return doubts.length === 0 ? [] : [{ number, sentence: doubts.join(" ") }];
  });
  const counted = read.readings.filter(({ number }) => !asked.some((each) => each.number === number));
  const learned = await learn(ensemble, counted, members, hooks);
  const picture = { ...pictureOf(learned), asked };
  early(picture);
  return { ok: true, picture: { ...picture, helps: await whatStillHelps(learned, hooks) } };
}

function pictureOf(learned: Learned): Omit<LearnedPicture, "asked"> {
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
    helps: null,
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
