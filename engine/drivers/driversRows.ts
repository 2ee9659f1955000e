import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import {
  DRIVER_FACTORS,
  type DriversRoom,
  makeDriversRoom,
  OUTCOME_BELOW_FROM,
  OUTCOME_DARK_FROM,
  OUTCOME_LIGHT_WHM2,
  OUTCOME_LOWEST_SHARE,
  OUTCOME_SENDING_WH,
  OUTCOME_UNSERVED_WH,
  stepDriversMember,
} from "./driversMember.ts";

/** Outcomes of a row of runs, one value per member. */
export interface DriversRuns {
  readonly margin: Float64Array;
  /** 1 where the member holds, else 0. */
  readonly holds: Float64Array;
  /** Step in which the charge is first below the reserve; −1 where it never is. */
  readonly belowFrom: Float64Array;
}

/** Rows `from` to `to` (not included) of a sample of `of` rows; one value per row. Plain data that parts merge from exactly. */
export interface DriversRows {
  readonly seed: string;
  readonly of: number;
  readonly from: number;
  readonly to: number;
  /** Row m is member m; of `b`, member `of` + m. */
  readonly a: DriversRuns;
  readonly b: DriversRuns;
  /** By factor: a's members with that factor from b's. */
  readonly mixed: readonly DriversRuns[];
  /** 1 where some load goes without. */
  readonly dry: Float64Array;
  readonly lightWhM2: Float64Array;
  readonly sendingWh: Float64Array;
}

/** Runs that one row takes. */
export const RUNS_PER_ROW = 2 + DRIVER_FACTORS.length;

export function makeDriversRuns(rows: number): DriversRuns {
  return { margin: new Float64Array(rows), holds: new Float64Array(rows), belowFrom: new Float64Array(rows) };
}

/** Keeps the outcome of the run in `room` as number `at`. */
export function keepDriversRun(
  { prepared }: PreparedEnsemble,
  { outcome }: DriversRoom,
  runs: DriversRuns,
  at: number,
): void {
  const fullWh = prepared.bank.fullAh * prepared.scenario.bank.nominalV;
  const reserveShare = prepared.bank.reserveAh / prepared.bank.fullAh;
  runs.margin[at] = outcome[OUTCOME_LOWEST_SHARE]! - reserveShare - outcome[OUTCOME_UNSERVED_WH]! / fullWh;
  runs.belowFrom[at] = outcome[OUTCOME_BELOW_FROM]!;
  runs.holds[at] = outcome[OUTCOME_BELOW_FROM]! < 0 && outcome[OUTCOME_DARK_FROM]! < 0 ? 1 : 0;
}

/**
 * Runs rows `from` to `to` (not included) of a sample of `of` rows: two members each, and one more run for each factor
 * that the first then has from the second.
 */
export function driversRows(ensemble: PreparedEnsemble, of: number, from: number, to: number): DriversRows {
  const room = makeDriversRoom(ensemble);
  const count = to - from;
  const rows: DriversRows = {
    seed: ensemble.seed,
    of,
    from,
    to,
    a: makeDriversRuns(count),
    b: makeDriversRuns(count),
    mixed: DRIVER_FACTORS.map(() => makeDriversRuns(count)),
    dry: new Float64Array(count),
    lightWhM2: new Float64Array(count),
    sendingWh: new Float64Array(count),
  };
  const { memberOf, outcome } = room;
  for (let m = from; m < to; m++) {
    const at = m - from;
    memberOf.fill(m);
    stepDriversMember(ensemble, room);
    keepDriversRun(ensemble, room, rows.a, at);
    rows.dry[at] = outcome[OUTCOME_DARK_FROM]! < 0 ? 0 : 1;
    rows.lightWhM2[at] = outcome[OUTCOME_LIGHT_WHM2]!;
    rows.sendingWh[at] = outcome[OUTCOME_SENDING_WH]!;
    // Weather comes last, so that each sky is drawn once.
    for (let f = DRIVER_FACTORS.length - 1; f >= 0; f--) {
      memberOf.fill(m);
      memberOf[f] = of + m;
      stepDriversMember(ensemble, room);
      keepDriversRun(ensemble, room, rows.mixed[f]!, at);
    }
    memberOf.fill(of + m);
    stepDriversMember(ensemble, room);
    keepDriversRun(ensemble, room, rows.b, at);
  }
  return rows;
}

/**
 * Puts rows together, exactly.
 * @throws RangeError if the parts do not follow one another or are not of one sample
 */
export function mergeDriversRows(parts: readonly DriversRows[]): DriversRows {
  const sorted = inOrder(parts);
  const first = sorted[0]!;
  const joined = (of: (part: DriversRows) => Float64Array) => joinFigures(sorted.map(of));
  const runs = (of: (part: DriversRows) => DriversRuns) => joinDriversRuns(sorted.map(of));
  return {
    seed: first.seed,
    of: first.of,
    from: first.from,
    to: sorted.at(-1)!.to,
    a: runs((part) => part.a),
    b: runs((part) => part.b),
    mixed: first.mixed.map((_, f) => runs((part) => part.mixed[f]!)),
    dry: joined((part) => part.dry),
    lightWhM2: joined((part) => part.lightWhM2),
    sendingWh: joined((part) => part.sendingWh),
  };
}

interface Stretch {
  readonly seed: string;
  readonly of: number;
  readonly from: number;
  readonly to: number;
}

/** @throws RangeError if the parts do not follow one another or are not of one sample */
export function inOrder<Part extends Stretch>(parts: readonly Part[]): Part[] {
  const sorted = [...parts].sort((x, y) => x.from - y.from);
  if (sorted.length === 0) throw new RangeError("parts must hold at least one part, got none");
  sorted.slice(1).forEach((part, p) => {
    const before = sorted[p]!;
    if (before.to !== part.from) {
      throw new RangeError(`parts must follow one another, got rows up to ${before.to} and then from ${part.from}`);
    }
    if (part.seed !== before.seed || part.of !== before.of) {
      throw new RangeError("parts must be of one sample and one seed, got different ones");
    }
  });
  return sorted;
}

export function joinDriversRuns(runs: readonly DriversRuns[]): DriversRuns {
  return {
    margin: joinFigures(runs.map(({ margin }) => margin)),
    holds: joinFigures(runs.map(({ holds }) => holds)),
    belowFrom: joinFigures(runs.map(({ belowFrom }) => belowFrom)),
  };
}

function joinFigures(parts: readonly Float64Array[]): Float64Array {
  const whole = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
