import { openStream, STREAM_WORDS, wordsFor } from "../chance/stream.ts";
import { type DriversEnd, driversEnds, ENDS_UNIT, heldFigure } from "./driversEnds.ts";
import {
  DRIVER_FACTORS,
  type DriverFactor,
  type DriversRoom,
  INTENSITY,
  makeDriversRoom,
  OUTCOME_BELOW_FROM,
  OUTCOME_LIGHT_WHM2,
  OUTCOME_LOWEST_SHARE,
  OUTCOME_SENDING_WH,
  OUTCOME_UNSERVED_WH,
  stepDriversMember,
  WEATHER,
} from "./driversMember.ts";
import { type DriverShare, type DriversShares, driversShares, pairedMean, type Sampled } from "./driversShares.ts";
import { type SheddableLoad, sheddableLoads, withoutLoad } from "./driversShedding.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import { type Odds, wilson } from "./wilson.ts";

/** What one end of a factor does, all else as drawn: share that holds there, and what changes, member by member. */
export interface EndEffect {
  readonly value: number;
  readonly holds: Odds;
  readonly holdsGain: Sampled;
  readonly marginGain: Sampled;
}

/** What one factor has to do with the outcome. */
export interface DriverLine {
  readonly factor: DriverFactor;
  readonly name: string;
  /** Shares of the variance of the margin, and of holding or not; null where the outcome does not differ enough to tell. */
  readonly margin: DriverShare | null;
  readonly holds: DriverShare | null;
  /** Unit of the ends' values. */
  readonly unit: string;
  /** null for a factor that the scenario does not have, such as trees. */
  readonly low: EndEffect | null;
  readonly high: EndEffect | null;
}

/** What switching one load off for the whole event gains. */
export interface SheddingLine extends SheddableLoad {
  readonly holds: Odds;
  readonly holdsGain: Sampled;
  readonly marginGain: Sampled;
  /** Hours that the median failing member stays above the reserve longer; null if it then holds, or if none fails. */
  readonly gainedH: number | null;
  readonly medianHolds: boolean;
}

export interface DriversReport {
  readonly seed: string;
  /** Rows of the sample: each is a pair of members, and one run for each factor between them. */
  readonly members: number;
  readonly runs: number;
  readonly reserveShare: number;
  readonly holds: Odds;
  readonly meanMarginShare: number;
  /** Share of members in which some load goes without. */
  readonly dry: Odds;
  readonly factors: readonly DriverLine[];
  /** Sum of the first-order shares; null as above. */
  readonly marginFirstSum: Sampled | null;
  readonly holdsFirstSum: Sampled | null;
  /** Largest gain first. */
  readonly shedding: readonly SheddingLine[];
  /** The failing member in the middle, by when it first falls below the reserve; null if none fails. */
  readonly medianFailing: { readonly member: number; readonly failsAfterH: number } | null;
  readonly sentences: readonly string[];
}

export const DRIVERS_FEWEST_MEMBERS = 20;
/** Rows lie at 0…N−1 and N…2N−1 of the members that a stream can tell apart. */
export const DRIVERS_MOST_MEMBERS = 100_000;

/** Fewer members than these on either side say nothing about what the side hangs on. */
const FEWEST_ON_A_SIDE = 20;
/** Where more members than this run dry, the lowest charge alone would say "empty" of them all. */
const DRY_SHARE = 0.2;

const NAMES: Readonly<Record<DriverFactor, string>> = {
  weather: "The weather",
  intensity: "How much is sent",
  idleDraw: "The draw between transmissions",
  canopy: "The light through the trees",
  panelYield: "The yield of the panels",
  startCharge: "The charge at the start",
  bankHealth: "The health of the bank",
};

/** Outcomes of a row of runs, one value per member. */
interface Runs {
  readonly margin: Float64Array;
  readonly holds: Float64Array;
  readonly belowFrom: Float64Array;
}

/**
 * What a scenario's outcome hangs on: variance shares by factor, what each factor's ends do, and what switching off each load gains. Every run
 * is paired with the plain members 0…N−1, which are those of `runMembers`.
 *
 * The outcome is the *margin*: lowest charge less reserve, less what loads went without over the bank's full charge at nominal volts. While
 * nothing goes unserved it is the lowest charge; when the bank runs empty it goes on counting, where the lowest charge would stand still.
 * @param members rows N, 20…100000; members 0…2N−1 are drawn
 * @param between called with runs done and to do; returning false gives up
 * @returns null when given up
 * @throws RangeError if `members` is out of range
 */
export function drivers(
  ensemble: PreparedEnsemble,
  members: number,
  between: (done: number, of: number) => boolean = () => true,
): DriversReport | null {
  if (!(Number.isInteger(members) && members >= DRIVERS_FEWEST_MEMBERS && members <= DRIVERS_MOST_MEMBERS)) {
    throw new RangeError(
      `members must be a whole number in ${DRIVERS_FEWEST_MEMBERS}…${DRIVERS_MOST_MEMBERS}, got ${members}`,
    );
  }
  const loads = sheddableLoads(ensemble.prepared.scenario);
  const ends = 2 * (DRIVER_FACTORS.length - (ensemble.canopy === null ? 1 : 0));
  const runs = members * (2 + DRIVER_FACTORS.length + ends + loads.length);
  let done = 0;
  const goOn = (more: number) => {
    done += more;
    return between(done, runs);
  };
  const room = makeDriversRoom(ensemble);
  const rows = runRows(ensemble, members, room, goOn);
  if (rows === null) return null;
  const endRuns = runEnds(ensemble, driversEnds(ensemble, 0, rows.lightWhM2, rows.sendingWh), members, room, goOn);
  if (endRuns === null) return null;
  const shedRuns = runShedding(ensemble, loads, members, room, goOn);
  if (shedRuns === null) return null;
  return report(ensemble, members, runs, rows, endRuns, shedRuns);
}

interface Rows {
  readonly a: Runs;
  readonly b: Runs;
  /** By factor: a's members with that factor from b's. */
  readonly mixed: readonly Runs[];
  readonly dry: Float64Array;
  readonly lightWhM2: Float64Array;
  readonly sendingWh: Float64Array;
}

function makeRuns(members: number): Runs {
  return {
    margin: new Float64Array(members),
    holds: new Float64Array(members),
    belowFrom: new Float64Array(members),
  };
}

function keep({ prepared }: PreparedEnsemble, { outcome }: DriversRoom, runs: Runs, m: number): void {
  const fullWh = prepared.bank.fullAh * prepared.scenario.bank.nominalV;
  const reserveShare = prepared.bank.reserveAh / prepared.bank.fullAh;
  runs.margin[m] = outcome[OUTCOME_LOWEST_SHARE]! - reserveShare - outcome[OUTCOME_UNSERVED_WH]! / fullWh;
  runs.belowFrom[m] = outcome[OUTCOME_BELOW_FROM]!;
  runs.holds[m] = outcome[OUTCOME_BELOW_FROM]! < 0 ? 1 : 0;
}

function runRows(
  ensemble: PreparedEnsemble,
  members: number,
  room: DriversRoom,
  goOn: (more: number) => boolean,
): Rows | null {
  const rows: Rows = {
    a: makeRuns(members),
    b: makeRuns(members),
    mixed: DRIVER_FACTORS.map(() => makeRuns(members)),
    dry: new Float64Array(members),
    lightWhM2: new Float64Array(members),
    sendingWh: new Float64Array(members),
  };
  const { memberOf, outcome } = room;
  for (let m = 0; m < members; m++) {
    const other = members + m;
    memberOf.fill(m);
    stepDriversMember(ensemble, room);
    keep(ensemble, room, rows.a, m);
    rows.dry[m] = outcome[OUTCOME_UNSERVED_WH]! > 1e-6 ? 1 : 0;
    rows.lightWhM2[m] = outcome[OUTCOME_LIGHT_WHM2]!;
    rows.sendingWh[m] = outcome[OUTCOME_SENDING_WH]!;
    // Weather comes last, so that each sky is drawn once.
    for (let f = DRIVER_FACTORS.length - 1; f >= 0; f--) {
      memberOf.fill(m);
      memberOf[f] = other;
      stepDriversMember(ensemble, room);
      keep(ensemble, room, rows.mixed[f]!, m);
    }
    memberOf.fill(other);
    stepDriversMember(ensemble, room);
    keep(ensemble, room, rows.b, m);
    if (!goOn(2 + DRIVER_FACTORS.length)) return null;
  }
  return rows;
}

function runEnds(
  ensemble: PreparedEnsemble,
  ends: readonly DriversEnd[],
  members: number,
  room: DriversRoom,
  goOn: (more: number) => boolean,
): { end: DriversEnd; runs: Runs }[] | null {
  const found = ends.map((end) => ({ end, runs: makeRuns(members) }));
  const { memberOf, held } = room;
  const skyLast = [...found].sort((x, y) => Number(x.end.factor === "weather") - Number(y.end.factor === "weather"));
  for (let m = 0; m < members; m++) {
    for (const { end, runs } of skyLast) {
      memberOf.fill(m);
      if (end.figure < 0)
        memberOf[end.factor === "weather" ? WEATHER : INTENSITY] = end.lenders[m % end.lenders.length]!;
      held[0] = end.figure;
      held[1] = heldFigure(end);
      stepDriversMember(ensemble, room);
      keep(ensemble, room, runs, m);
    }
    held[0] = -1;
    if (!goOn(found.length)) return null;
  }
  return found;
}

function runShedding(
  ensemble: PreparedEnsemble,
  loads: readonly SheddableLoad[],
  members: number,
  skyRoom: DriversRoom,
  goOn: (more: number) => boolean,
): { load: SheddableLoad; runs: Runs }[] | null {
  const found = loads.map((load) => {
    const without = withoutLoad(ensemble, load);
    return { load, without, room: makeDriversRoom(without, skyRoom), runs: makeRuns(members) };
  });
  for (let m = 0; m < members; m++) {
    for (const { without, room, runs } of found) {
      room.memberOf.fill(m);
      stepDriversMember(without, room);
      keep(without, room, runs, m);
    }
    if (!goOn(found.length)) return null;
  }
  return found;
}

function sharesOf(ensemble: PreparedEnsemble, rows: Rows, of: "margin" | "holds"): DriversShares | null {
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, wordsFor(ensemble.words, of), 0, "resample");
  return driversShares(
    rows.a[of],
    rows.b[of],
    rows.mixed.map((mixed) => mixed[of]),
    state,
  );
}

const sumOf = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

function gains(runs: Runs, plain: Runs): { holds: Odds; holdsGain: Sampled; marginGain: Sampled } {
  return {
    holds: wilson(sumOf(runs.holds), runs.holds.length),
    holdsGain: pairedMean(runs.holds.map((value, m) => value - plain.holds[m]!)),
    marginGain: pairedMean(runs.margin.map((value, m) => value - plain.margin[m]!)),
  };
}

function report(
  ensemble: PreparedEnsemble,
  members: number,
  runs: number,
  rows: Rows,
  endRuns: readonly { end: DriversEnd; runs: Runs }[],
  shedRuns: readonly { load: SheddableLoad; runs: Runs }[],
): DriversReport {
  const { bank, grid } = ensemble.prepared;
  const margin = sharesOf(ensemble, rows, "margin");
  const holding = sumOf(rows.a.holds) + sumOf(rows.b.holds);
  const isTold = Math.min(holding, 2 * members - holding) >= FEWEST_ON_A_SIDE;
  const holds = isTold ? sharesOf(ensemble, rows, "holds") : null;
  const effect = (factor: DriverFactor, isLow: boolean): EndEffect | null => {
    const found = endRuns.find(({ end }) => end.factor === factor && end.isLow === isLow);
    return found === undefined ? null : { value: found.end.value, ...gains(found.runs, rows.a) };
  };
  const failing = Array.from(rows.a.belowFrom.keys())
    .filter((m) => rows.a.belowFrom[m]! >= 0)
    .sort((x, y) => rows.a.belowFrom[x]! - rows.a.belowFrom[y]! || x - y);
  const median = failing[Math.floor((failing.length - 1) / 2)];
  const gainedSteps = ({ belowFrom }: Runs) =>
    median === undefined || belowFrom[median]! < 0 ? null : belowFrom[median]! - rows.a.belowFrom[median]!;
  const shedding = shedRuns
    .map(({ load, runs: without }): SheddingLine => {
      const steps = gainedSteps(without);
      return {
        ...load,
        ...gains(without, rows.a),
        gainedH: steps === null ? null : steps * grid.stepH,
        medianHolds: median !== undefined && steps === null,
      };
    })
    .sort((x, y) => y.holdsGain.value - x.holdsGain.value || y.marginGain.value - x.marginGain.value);
  const found = {
    seed: ensemble.seed,
    members,
    runs,
    reserveShare: bank.reserveAh / bank.fullAh,
    holds: wilson(sumOf(rows.a.holds), members),
    meanMarginShare: sumOf(rows.a.margin) / members,
    dry: wilson(sumOf(rows.dry), members),
    factors: DRIVER_FACTORS.map(
      (factor, f): DriverLine => ({
        factor,
        name: NAMES[factor],
        margin: margin?.factors[f] ?? null,
        holds: holds?.factors[f] ?? null,
        unit: ENDS_UNIT[factor],
        low: effect(factor, true),
        high: effect(factor, false),
      }),
    ),
    marginFirstSum: margin?.firstSum ?? null,
    holdsFirstSum: holds?.firstSum ?? null,
    shedding,
    medianFailing:
      median === undefined ? null : { member: median, failsAfterH: rows.a.belowFrom[median]! * grid.stepH },
  };
  return { ...found, sentences: sentences(found) };
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

function sentences(report: Omit<DriversReport, "sentences">): string[] {
  const said: string[] = [];
  const { factors, marginFirstSum: sum, holds, members, shedding } = report;
  if (sum === null) {
    said.push("All members come out alike: nothing that is drawn has a part in it.");
  } else {
    const byTotal = [...factors].sort((x, y) => y.margin!.total.value - x.margin!.total.value);
    const first = byTotal[0]!;
    said.push(
      `Most hangs on ${first.name[0]!.toLowerCase()}${first.name.slice(1)}: by itself it makes ${percent(Math.max(0, first.margin!.first.value))} of what members' margins differ by.`,
    );
    const missing = 1 - sum.value;
    if (missing > sum.plusMinus) {
      said.push(
        `By themselves all of them make ${percent(sum.value)}; the other ${percent(missing)} come from several acting together, so the shares do not add up to 1.`,
      );
    } else {
      said.push(
        `By themselves all of them make ${percent(sum.value)} (± ${Math.round(100 * sum.plusMinus)}), which is all of it as far as this sample can tell.`,
      );
    }
  }
  if (report.holdsFirstSum === null) {
    const fails = holds.of - holds.count;
    said.push(
      holds.count > 0 && fails > 0
        ? `${Math.min(holds.count, fails)} of ${members} members ${fails < holds.count ? "fail" : "hold"}: too few to say what that hangs on; more members would.`
        : `Of ${members} members ${fails === 0 ? "all hold" : "none holds"}, so there is nothing to say what that hangs on.`,
    );
  }
  if (report.dry.share > DRY_SHARE) {
    said.push(
      `In ${percent(report.dry.share)} of the members loads go without: their lowest charge is the floor, so the margin goes on counting below it by the energy missed.`,
    );
  }
  const best = shedding[0];
  if (best !== undefined && best.holdsGain.value > best.holdsGain.plusMinus) {
    said.push(
      `Switched off for the whole event, ${best.name} gains most: ${percent(holds.share)} hold with it, ${percent(best.holds.share)} without.`,
    );
  }
  return said;
}
