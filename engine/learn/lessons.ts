import { quantileOf } from "../odds/odds.ts";
import type { Learned } from "./learn.ts";
import { type TraitName, traitFigures } from "./traitFigures.ts";

/** Eight in ten lie between `p10` and `p90`. */
export interface Interval {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** What the readings say of one figure of the plan. */
export interface Lesson {
  readonly name: TraitName;
  /** 1 is as planned; the charge at the start is a share of full. */
  readonly before: Interval;
  readonly after: Interval;
  /** What has been learned, in words; null where the figure did not move by more than noise. */
  readonly sentence: string | null;
}

const NAMES: readonly TraitName[] = ["load", "idleDraw", "keenness", "canopy", "panelYield", "capacity", "startCharge"];

/** What each figure is called at the head of a sentence. */
const WORDS: Record<TraitName, string> = {
  load: "The load as a whole",
  idleDraw: "What is drawn between transmissions",
  keenness: "Sending",
  canopy: "Light through the trees",
  panelYield: "What the panels give in good light",
  capacity: "What the bank holds",
  startCharge: "The charge at the start",
};

/** A median that moved by less than this share of the spread it had before has not been learned. */
export const WORTH_SAYING_SHARE = 0.4;
/** Nor has one that moved by less than so many standard errors of the sample. */
const NOISE_ERRORS = 3;

export function intervalOf(values: Float64Array): Interval {
  const sorted = values.slice().sort();
  return { p10: quantileOf(sorted, 0.1), p50: quantileOf(sorted, 0.5), p90: quantileOf(sorted, 0.9) };
}

/** What has been learned of the plan's figures, those that the scenario has. */
export function lessons({ ensemble, first, particles, stages }: Learned): Lesson[] {
  const effective = stages.reduce((fewest, stage) => Math.min(fewest, stage.effective), particles.count);
  return NAMES.flatMap((name): Lesson[] => {
    const priors = traitFigures(ensemble, first, name);
    const posteriors = traitFigures(ensemble, particles, name);
    if (priors === null || posteriors === null) return [];
    const before = intervalOf(priors);
    const after = intervalOf(posteriors);
    const moved = Math.abs(after.p50 - before.p50);
    const noise = (NOISE_ERRORS * deviation(posteriors)) / Math.sqrt(effective);
    const isLearned = stages.length > 0 && moved > Math.max(WORTH_SAYING_SHARE * deviation(priors), noise);
    return [{ name, before, after, sentence: isLearned ? sentence(name, before, after) : null }];
  });
}

function deviation(values: Float64Array): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0) / values.length);
}

function sentence(name: TraitName, before: Interval, after: Interval): string {
  if (name === "startCharge") {
    const percent = (share: number) => Math.round(100 * share);
    return `${WORDS[name]} was ${percent(after.p10)} to ${percent(after.p90)} %, not ${percent(before.p50)} %.`;
  }
  const low = Math.round(100 * (after.p10 - 1));
  const high = Math.round(100 * (after.p90 - 1));
  const density =
    name !== "canopy" ? "" : after.p50 < 1 ? ": they are denser than planned" : ": they are thinner than planned";
  if (low > 0) return `${WORDS[name]} is ${low} to ${high} % above plan${density}.`;
  if (high < 0) return `${WORDS[name]} is ${-high} to ${-low} % below plan${density}.`;
  const signed = (percent: number) => (percent > 0 ? `+${percent}` : percent < 0 ? `−${-percent}` : "0");
  const side = after.p50 > 1 ? "above" : "below";
  return `${WORDS[name]} is probably ${side} plan (${signed(low)} to ${signed(high)} %)${density}.`;
}
