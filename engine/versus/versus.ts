import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { failsFromStep } from "../odds/fails.ts";
import { type OddsReport, oddsReport } from "../odds/odds.ts";
import type { OddsPart } from "../odds/oddsPart.ts";
import { Z95 } from "../odds/wilson.ts";
import { localMoment } from "../run/localClock.ts";
import { type Burden, type BurdenMore, burdenMore, burdenOf } from "./burden.ts";

/** One of the scenarios that are compared, run over the same members as the others. */
export interface Contender {
  readonly name: string;
  readonly ensemble: PreparedEnsemble;
  readonly part: OddsPart;
}

/** A difference with the interval that its sample leaves open; `unpaired` is how wide it would be between strangers. */
export interface PairedDifference {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly unpairedLow: number;
  readonly unpairedHigh: number;
}

/** One scenario against the first. */
export interface Comparison {
  readonly name: string;
  readonly report: OddsReport;
  readonly burden: Burden;
  /** What it takes more than the first. */
  readonly more: BurdenMore;
  /** Difference to the first in the share that holds and in the lowest charge, shares. */
  readonly holds: PairedDifference;
  readonly margin: PairedDifference;
  /** Members that hold either way, only with this one, only with the first, and neither way. */
  readonly tally: {
    readonly both: number;
    readonly onlyThis: number;
    readonly onlyFirst: number;
    readonly neither: number;
  };
  /** Members that flip, at most twenty of each, and what is different about them. */
  readonly gained: Flips;
  readonly lost: Flips;
  readonly sentence: string;
}

export interface Flips {
  readonly members: readonly number[];
  /** Means over all of them: this scenario's less the first's, Wh over the event. */
  readonly moreSunWh: number;
  readonly moreLoadWh: number;
  readonly why: string;
}

/** Scenarios held against the first, under the same members. */
export interface VersusReport {
  readonly seed: string;
  readonly members: number;
  readonly first: { readonly name: string; readonly report: OddsReport; readonly burden: Burden };
  readonly others: readonly Comparison[];
}

/** Fewer than these make no difference that anybody would carry something for: 1 in 100 skies, 1 point of charge. */
const WORTH_CARRYING_SHARE = 0.01;
const MOST_NAMED = 20;

/**
 * Compares scenarios member by member: the same skies, the same operators, so that what they share cancels out.
 * @param contenders two or more, all with the same seed and members; the first is what the others are held against
 * @throws RangeError if the members differ
 */
export function versus(contenders: readonly Contender[]): VersusReport {
  const [first, ...others] = contenders;
  if (first === undefined || others.length === 0)
    throw new RangeError(`contenders must be 2 or more, got ${contenders.length}`);
  for (const { part } of others) {
    if (part.seed !== first.part.seed || part.from !== first.part.from || part.to !== first.part.to) {
      throw new RangeError(
        `contenders must have the same seed and members, got ${part.seed} ${part.from}:${part.to} and ${first.part.seed} ${first.part.from}:${first.part.to}`,
      );
    }
  }
  const firstReport = oddsReport(first.ensemble, first.part);
  return {
    seed: first.part.seed,
    members: first.part.to - first.part.from,
    first: {
      name: first.name,
      report: firstReport,
      burden: burdenOf(first.ensemble.prepared.scenario, first.ensemble.prepared.grid),
    },
    others: others.map((other) => comparison(first, firstReport, other)),
  };
}

function comparison(first: Contender, firstReport: OddsReport, other: Contender): Comparison {
  const report = oddsReport(other.ensemble, other.part);
  const members = other.part.to - other.part.from;
  const holdsFirst = (m: number) => failsFromStep(first.part.outcomes, m) < 0;
  const holdsThis = (m: number) => failsFromStep(other.part.outcomes, m) < 0;
  const all = Array.from({ length: members }, (_, m) => m);
  const gained = all.filter((m) => holdsThis(m) && !holdsFirst(m));
  const lost = all.filter((m) => holdsFirst(m) && !holdsThis(m));
  const both = all.filter((m) => holdsThis(m) && holdsFirst(m)).length;
  const tally = {
    both,
    onlyThis: gained.length,
    onlyFirst: lost.length,
    neither: members - both - gained.length - lost.length,
  };
  const holds = holdsDifference(gained.length, lost.length, members, report.holds.share, firstReport.holds.share);
  const [from, to] = [first.ensemble.prepared, other.ensemble.prepared];
  const { grid } = from;
  const margin = meanDifference(other.part.outcomes.lowestShare, first.part.outcomes.lowestShare);
  return {
    name: other.name,
    report,
    burden: burdenOf(to.scenario, to.grid, from.scenario),
    more: burdenMore(from.scenario, to.scenario, [from.grid, to.grid]),
    holds,
    margin,
    tally,
    gained: flips(gained, first.part, other.part),
    lost: flips(lost, first.part, other.part),
    sentence: comparisonSentence(
      { name: first.name, report: firstReport },
      { name: other.name, report },
      { holds, margin },
      localMoment(grid, grid.startMs + grid.steps * grid.stepMs).words,
    ),
  };
}

/**
 * Difference of two shares over the same members, with its interval.
 * @param gained members that hold only with the second; @param lost only with the first
 * @see A. Agresti and Y. Min, Statistics in Medicine 24 (2005) 729–740: half a member is added to each kind of flip (from memory)
 */
function holdsDifference(
  gained: number,
  lost: number,
  members: number,
  share: number,
  firstShare: number,
): PairedDifference {
  const mean = (gained - lost) / members;
  const n = members + 2;
  const middle = (gained - lost) / n;
  const half = (Z95 * Math.sqrt(gained + lost + 1 - (gained - lost) ** 2 / n)) / n;
  const apart = Z95 * Math.sqrt((share * (1 - share) + firstShare * (1 - firstShare)) / members);
  return {
    mean,
    low: Math.max(-1, middle - half),
    high: Math.min(1, middle + half),
    unpairedLow: mean - apart,
    unpairedHigh: mean + apart,
  };
}

function meanDifference(values: Float64Array, firstValues: Float64Array): PairedDifference {
  const differences = values.map((value, m) => value - firstValues[m]!);
  const mean = meanOf(differences);
  const half = (Z95 * deviationOf(differences)) / Math.sqrt(values.length);
  const apart = Z95 * Math.sqrt((deviationOf(values) ** 2 + deviationOf(firstValues) ** 2) / values.length);
  return { mean, low: mean - half, high: mean + half, unpairedLow: mean - apart, unpairedHigh: mean + apart };
}

function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k]!;
  return values.length === 0 ? 0 : sum / values.length;
}

function deviationOf(values: Float64Array): number {
  if (values.length < 2) return 0;
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

function flips(members: readonly number[], first: OddsPart, other: OddsPart): Flips {
  const more = (name: "solarWh" | "demandWh") =>
    meanOf(members.map((m) => other.outcomes[name][m]! - first.outcomes[name][m]!));
  const moreSunWh = more("solarWh");
  const moreLoadWh = more("demandWh");
  const reasons: string[] = [];
  const said = (wh: number) => `${Math.round(Math.abs(wh))} Wh`;
  if (Math.abs(moreSunWh) >= 1) reasons.push(`${said(moreSunWh)} ${moreSunWh > 0 ? "more" : "less"} from the sun`);
  if (Math.abs(moreLoadWh) >= 1) reasons.push(`${said(moreLoadWh)} ${moreLoadWh > 0 ? "more" : "less"} wanted`);
  const why =
    members.length === 0
      ? ""
      : reasons.length > 0
        ? `on average ${reasons.join(" and ")}`
        : "another bank, reserve or source";
  return { members: members.slice(0, MOST_NAMED).map((m) => first.from + m), moreSunWh, moreLoadWh, why };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const inHundred = (share: number) => Math.round(100 * share);

/** What a sentence about two scenarios needs to know of either. */
export interface Compared {
  readonly name: string;
  readonly report: Pick<OddsReport, "holds" | "dark">;
}

/**
 * Says what one scenario changes against another.
 * @param difference the second's less the first's
 * @param end when the event ends, in words
 */
export function comparisonSentence(
  first: Compared,
  other: Compared,
  { holds, margin }: Pick<Comparison, "holds" | "margin">,
  end: string,
): string {
  const points = 100 * margin.mean;
  const lift = `the lowest charge is ${Math.abs(points) < 9.5 ? Math.abs(points).toFixed(1) : Math.round(Math.abs(points))} points ${points >= 0 ? "higher" : "lower"} on average`;
  const moreDark = other.report.dark.share - first.report.dark.share;
  const dark =
    Math.abs(moreDark) < WORTH_CARRYING_SHARE
      ? ""
      : ` Loads ever go dark in ${inHundred(other.report.dark.share)} of 100, against ${inHundred(first.report.dark.share)}.`;
  const isSmall =
    Math.abs(holds.mean) < WORTH_CARRYING_SHARE && Math.abs(margin.mean) < WORTH_CARRYING_SHARE && dark === "";
  if (isSmall) {
    return `${capital(other.name)} against ${first.name}: no difference worth carrying; both hold in about ${inHundred(first.report.holds.share)} of 100 skies, and ${lift}.`;
  }
  const isOpen = holds.low <= 0 && holds.high >= 0;
  const range = `${inHundred(holds.low)} to ${inHundred(holds.high)}`;
  const odds = `${capital(other.name)}: the bank holds to ${end} in ${inHundred(other.report.holds.share)} of 100 skies, against ${inHundred(first.report.holds.share)} with ${first.name}`;
  const difference = isOpen
    ? `whether that is a difference these members cannot tell (${range} in 100)`
    : `${inHundred(holds.mean) > 0 ? "+" : "−"}${Math.abs(inHundred(holds.mean))} in 100 (${range})`;
  return `${odds}: ${difference}; ${lift}.${dark}`;
}
