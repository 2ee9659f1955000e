import { openStream, STREAM_WORDS, wordsFor } from "../chance/stream.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { type Odds, wilson } from "../odds/wilson.ts";
import { type DriversEnd, ENDS_UNIT } from "./driversEnds.ts";
import { DRIVER_FACTORS, type DriverFactor } from "./driversMember.ts";
import { type DriversRows, type DriversRuns, RUNS_PER_ROW } from "./driversRows.ts";
import { type DriverShare, type DriversShares, driversShares, pairedMean, type Sampled } from "./driversShares.ts";
import { type SheddableLoad, sheddableLoads } from "./driversShedding.ts";
import type { DriversWhatIfs } from "./driversWhatIfs.ts";

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

/** What the outcome depends on: shares of variance by factor, what the ends of each would do, and what switching off each load gains. */
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

/** Fewer members than these on either side say nothing about what the side depends on. */
export const FEWEST_ON_A_SIDE = 20;
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

function sharesOf(ensemble: PreparedEnsemble, rows: DriversRows, of: "margin" | "holds"): DriversShares | null {
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

function gains(runs: DriversRuns, plain: DriversRuns): { holds: Odds; holdsGain: Sampled; marginGain: Sampled } {
  return {
    holds: wilson(sumOf(runs.holds), runs.holds.length),
    holdsGain: pairedMean(runs.holds.map((value, m) => value - plain.holds[m]!)),
    marginGain: pairedMean(runs.margin.map((value, m) => value - plain.margin[m]!)),
  };
}

/**
 * Adds a sample up, in figures and in sentences.
 * @param rows all rows, merged; @param ends worked out from them; @param whatIfs all rows, merged
 */
export function driversReport(
  ensemble: PreparedEnsemble,
  rows: DriversRows,
  ends: readonly DriversEnd[],
  whatIfs: DriversWhatIfs,
): DriversReport {
  const { bank, grid } = ensemble.prepared;
  const members = rows.of;
  const loads = sheddableLoads(ensemble.prepared.scenario);
  const endRuns = ends.map((end, k) => ({ end, runs: whatIfs.ends[k]! }));
  const shedRuns = loads.map((load, k) => ({ load, runs: whatIfs.shedding[k]! }));
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
  const gainedSteps = ({ belowFrom }: DriversRuns) =>
    median === undefined || belowFrom[median]! < 0 ? null : belowFrom[median]! - rows.a.belowFrom[median]!;
  const shedding = shedRuns
    .map(({ load, runs: without }): SheddingLine => {
      const steps = gainedSteps(without);
      return {
        ...load,
        ...gains(without, rows.a),
        gainedH: steps === null ? null : steps * grid.stepH,
        medianHolds: median !== undefined && without.holds[median] === 1,
      };
    })
    .sort((x, y) => y.holdsGain.value - x.holdsGain.value || y.marginGain.value - x.marginGain.value);
  const found = {
    seed: ensemble.seed,
    members,
    runs: members * (RUNS_PER_ROW + ends.length + loads.length),
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
      `Most depends on ${first.name[0]!.toLowerCase()}${first.name.slice(1)}: by itself it makes ${percent(Math.max(0, first.margin!.first.value))} of what members' margins differ by.`,
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
        ? `${Math.min(holds.count, fails)} of ${members} members ${fails < holds.count ? "fail" : "hold"}: too few to say what that depends on; more members would.`
        : `Of ${members} members ${fails === 0 ? "all hold" : "none holds"}, so there is nothing to say what that depends on.`,
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
