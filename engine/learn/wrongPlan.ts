import { CHARGE_BINS } from "../odds/oddsPart.ts";
import { localMoment } from "../run/localClock.ts";
import type { Unexplained } from "./filter.ts";
import type { Learned } from "./learn.ts";
import type { ObservationKind } from "./observations.ts";
import { shareOfRestV } from "./startFromReading.ts";

/** A reading that the plan does not explain, and which way it is wrong. */
export interface WrongPlan {
  /** Number of the reading in its document, from 0. */
  readonly number: number;
  readonly kind: ObservationKind;
  /** Whether what was read lies above or below all that the members foretold, or in a gap between them. */
  readonly direction: "higher" | "lower" | "between";
  /** Whether the reading contradicts the ones before it more than the plan. */
  readonly isContradiction: boolean;
  readonly sentence: string;
}

const WHAT: Record<ObservationKind, string> = {
  charge: "charge",
  outAh: "ampere-hours out",
  restV: "resting volts",
  panelsW: "power of the panels",
  loadA: "current of the load",
  sky: "the day's sky, as a share of a cloudless one",
};

/** Says what nobody explains, one entry for each figure. */
export function wrongPlan(learned: Learned): WrongPlan[] {
  const { unexplained, ignored } = learned;
  return [
    ...ignored.map((missed) => ignoredEntry(learned, missed)),
    ...unexplained.map((missed) => entry(learned, missed)),
  ];
}

/** A confirmed reading that nobody explains: named, and nothing else. */
function ignoredEntry({ ensemble }: Learned, { observation, lowest, highest }: Unexplained): WrongPlan {
  const { grid } = ensemble.prepared;
  const { kind, value, number, place } = observation;
  const when = localMoment(grid, grid.startMs + place * grid.stepMs).words;
  const direction = value > highest ? "higher" : value < lowest ? "lower" : "between";
  const sentence = `The reading of ${when} (${WHAT[kind]} ${figure(kind, value)}) was confirmed, and no member of the plan explains it (${figure(kind, lowest)} to ${figure(kind, highest)}): it counts for nothing, and everything else stays as it was.`;
  return { number, kind, direction, isContradiction: false, sentence };
}

function entry(learned: Learned, { observation, lowest, highest, mean }: Unexplained): WrongPlan {
  const { ensemble, widened, neverExplained } = learned;
  const { grid } = ensemble.prepared;
  const { kind, value, number } = observation;
  const direction = value > highest ? "higher" : value < lowest ? "lower" : "between";
  const isContradiction = isFoundBefore(learned, kind, value, observation.place);
  const when = localMoment(grid, grid.startMs + observation.place * grid.stepMs).words;
  const nearest = direction === "higher" ? highest : direction === "lower" ? lowest : mean;
  const ends = { higher: "the highest foretold is", lower: "the lowest foretold is", between: "the mean foretold is" };
  const read = `${WHAT[kind]} ${figure(kind, value)}, where ${ends[direction]} ${figure(kind, nearest)}`;
  const said = isContradiction
    ? `The reading of ${when} contradicts those before it (${read}): one of them is wrong, or something was done that the plan does not know.`
    : `No member of the plan explains the reading of ${when} (${read}). The plan is wrong: ${cause(kind, value > mean)}.`;
  const isNever = neverExplained.some((each) => each.observation.number === number && each.observation.kind === kind);
  const isCharge = kind === "charge" || kind === "outAh" || kind === "restV";
  const then = isNever
    ? `Nobody explains it even with figures ${widened} times as far off as their sureness says; ${isCharge ? "the forecast goes on from the reading itself with twice its error" : "it counts for little"}. If it is a slip, correct it.`
    : `Figures were let be ${widened} times as far off as their sureness says, and the bands are wider for it.`;
  return { number, kind, direction, isContradiction, sentence: `${said} ${then}` };
}

function figure(kind: ObservationKind, value: number): string {
  switch (kind) {
    case "charge":
    case "sky":
      return `${Math.round(100 * value)} %`;
    case "outAh":
      return `${Math.round(value)} Ah`;
    case "restV":
      return `${value.toFixed(2)} V`;
    case "panelsW":
      return `${Math.round(value)} W`;
    case "loadA":
      return `${value.toFixed(1)} A`;
  }
}

function cause(kind: ObservationKind, isHigh: boolean): string {
  switch (kind) {
    case "charge":
    case "restV":
      return isHigh ? "less is drawn, or more comes in, than it says" : "more is drawn, or less comes in, than it says";
    case "outAh":
      return isHigh ? "more is drawn, or less comes in, than it says" : "less is drawn, or more comes in, than it says";
    case "panelsW":
      return isHigh ? "the panels stand in more light than it says" : "the panels stand in less light than it says";
    case "loadA":
      return isHigh ? "more is switched on than it says" : "less is switched on than it says";
    case "sky":
      return "the place has other skies than it says";
  }
}

/** Whether the ensemble had members at that charge then, before anything was read: what is odd are the readings together. */
function isFoundBefore({ ensemble, before }: Learned, kind: ObservationKind, value: number, place: number): boolean {
  const { bank, grid } = ensemble.prepared;
  let share = value;
  if (kind === "outAh") share = 1 - value / bank.fullAh;
  else if (kind === "restV") share = shareOfRestV(ensemble.prepared, value);
  else if (kind !== "charge") return false;
  const row = Math.min(grid.steps, Math.round(place)) * CHARGE_BINS;
  const bin = Math.max(0, Math.min(CHARGE_BINS - 1, Math.floor(share * CHARGE_BINS)));
  let lower = 0;
  let upper = 0;
  for (let b = 0; b < CHARGE_BINS; b++) {
    if (b <= bin) lower += before.chargeCounts[row + b]!;
    if (b >= bin) upper += before.chargeCounts[row + b]!;
  }
  return lower > 0 && upper > 0;
}
