import type { Prepared } from "../run/prepare.ts";
import { drawnW } from "../scenario/draw.ts";
import { SKY_WORDS } from "../sky/skyWords.ts";
import { METER_ERROR, SHARED_ERROR_H } from "./meterError.ts";
import type { PlacedReading } from "./readReadings.ts";

/** What an observation is of, in the order in which messages name them. */
export type ObservationKind = "charge" | "outAh" | "restV" | "panelsW" | "loadA" | "sky";

/** One figure of a reading, with its error. */
export interface Observation {
  readonly kind: ObservationKind;
  /** Number of the reading in its document. */
  readonly number: number;
  /** When, in steps since the start, with fractions. */
  readonly place: number;
  readonly value: number;
  /** Standard deviation of its error, in the unit of the value. */
  readonly sigma: number;
  /** Weight in the likelihood: observations that share one error share one vote. */
  readonly weight: number;
  /** Local day that a word for the sky is about; −1 otherwise. */
  readonly day: number;
}

/** Takes readings apart into figures with errors. */
export function observationsOf(readings: readonly PlacedReading[], prepared: Prepared): Observation[] {
  const found = readings.flatMap((placed) => figuresOf(placed, prepared));
  const shared = SHARED_ERROR_H / prepared.grid.stepH;
  const bunches: Observation[][] = [];
  const open = new Map<string, Observation[]>();
  for (const figure of found) {
    const key = figure.kind === "sky" ? `sky ${figure.day}` : figure.kind;
    let bunch = open.get(key);
    if (bunch === undefined || (figure.kind !== "sky" && figure.place - bunch[0]!.place > shared)) {
      bunch = [];
      bunches.push(bunch);
      open.set(key, bunch);
    }
    bunch.push(figure);
  }
  return bunches
    .flatMap((bunch) => bunch.map((figure) => ({ ...figure, weight: 1 / bunch.length })))
    .sort((a, b) => a.place - b.place || a.number - b.number);
}

function figuresOf({ reading, number, place }: PlacedReading, prepared: Prepared): Observation[] {
  const { bank, scenario, grid } = prepared;
  const found: Observation[] = [];
  const add = (kind: ObservationKind, value: number, sigma: number, day = -1) =>
    found.push({ kind, number, place, value, sigma, weight: 1, day });
  if (reading.chargeShare !== undefined) {
    add("charge", reading.chargeShare, reading.errorShare ?? METER_ERROR.chargeShare);
  }
  if (reading.outAh !== undefined) {
    const usual = Math.hypot(METER_ERROR.outFullShare * bank.fullAh, METER_ERROR.outCountedShare * reading.outAh);
    add("outAh", reading.outAh, reading.errorShare === undefined ? usual : reading.errorShare * bank.fullAh);
  }
  if (reading.restV !== undefined) {
    add("restV", reading.restV, (METER_ERROR.restVPer12V * scenario.bank.nominalV) / 12);
  }
  if (reading.panelsW !== undefined) {
    const ratedW = scenario.panels.reduce((sum, group) => sum + group.count * group.module.ratedW, 0);
    const ofRated = Math.max(1, METER_ERROR.panelsRatedShare * ratedW);
    add("panelsW", reading.panelsW, Math.hypot(METER_ERROR.panelsShare * reading.panelsW, ofRated));
  }
  if (reading.loadA !== undefined) {
    const cyclingA = cyclingW(prepared) / scenario.bank.nominalV;
    add("loadA", reading.loadA, Math.hypot(METER_ERROR.loadShare * reading.loadA, METER_ERROR.loadA, cyclingA));
  }
  if (reading.sky !== undefined) {
    const { date, word } = reading.sky;
    const index = SKY_WORDS.find((known) => known.word === word)!.clearIndexShare;
    add("sky", index, METER_ERROR.skyIndex, grid.dates.indexOf(date));
  }
  return found;
}

/** Spread of the load at one moment by gear that switches itself, such as a fridge: on for its share of the time, W. */
function cyclingW(prepared: Prepared): number {
  const variance = prepared.scenario.gear.reduce((sum, { count, idle, working, use }) => {
    const swingW = drawnW(working) - drawnW(idle);
    return sum + count * swingW * swingW * use.share * (1 - use.share);
  }, 0);
  return Math.sqrt(variance) / prepared.converterShare;
}
