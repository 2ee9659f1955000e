import type { Trace } from "../run/trace.ts";
import { bankLines } from "./bankLines.ts";
import { branchLines } from "./branchLines.ts";
import { type CableRun, cableRuns } from "./cableRuns.ts";
import { type Caution, cautionsFor } from "./cautions.ts";
import { panelBranches, sourceBranches } from "./chargeBranches.ts";
import { chargeLines } from "./chargeLines.ts";
import { type LimitContext, type LimitOptions, type LimitPlace, limitContext } from "./limitContext.ts";
import { inOrder, type LimitLine } from "./limitLine.ts";
import { loadBranches } from "./loadBranches.ts";
import { mainBranches } from "./mainBranches.ts";
import { mainFeedLines } from "./mainFeedLines.ts";
import { panelLines } from "./panelLines.ts";
import type { LostVolts } from "./radioVolts.ts";
import { radioLines, radioVoltsAt } from "./stationLines.ts";
import { type WiringRun, wiringRuns } from "./wiringRuns.ts";

/** What flows in one branch, A. */
export interface BranchCurrent {
  readonly id: string;
  readonly about: string;
  /** Greatest that can come about, second by second. */
  readonly peakA: number;
  /** Greatest that lasts ten minutes and more; for panels and chargers their rated current. */
  readonly continuousA: number;
  /** Names of the stations that send in that moment. */
  readonly sending: readonly string[];
}

/** Volts at one radio in its worst moment, and what took the rest. */
export interface RadioAtPeak {
  readonly id: string;
  readonly name: string;
  readonly minimumV: number;
  readonly radioV: number;
  /** Names of the stations that send in that moment, this one included. */
  readonly sending: readonly string[];
  readonly links: readonly LostVolts[];
  readonly weakLink: LostVolts;
}

/** The limits of a plan: what flows, what is lost, what stands against what, and what can hurt somebody. Plain JSON. */
export interface LimitsReport {
  readonly name: string;
  /** Charge at which the peaks are met, share of full; the reserve, or the run's lowest while the loads are connected where that is less, or as given. */
  readonly lowestShare: number;
  readonly lowestFrom: LimitContext["lowestFrom"];
  /** Open-circuit volts of the bank at that charge. */
  readonly openV: number;
  /** Coldest air that the panels are held against, °C: the place's record by estimate, the event's coldest hour, or as given. */
  readonly coldestC: number;
  readonly coldestFrom: LimitContext["coldestFrom"];
  /** Warmest air of the event, by which wires carry less, °C. */
  readonly warmestC: number;
  readonly targetDropShare: number;
  readonly branches: readonly BranchCurrent[];
  readonly runs: readonly CableRun[];
  /** Every conductor in the order of the wiring sheet, with what flows, what guards it and how it stands. */
  readonly wiring: readonly WiringRun[];
  /** Ratings of main switch and distribution, A; null where they are not stated. */
  readonly rated: { readonly switchA: number | null; readonly distributionA: number | null };
  readonly radios: readonly RadioAtPeak[];
  /** Worst first: over, close, unknown, within. */
  readonly lines: readonly LimitLine[];
  readonly cautions: readonly Caution[];
  /** What is out, close and open, in one sentence each. */
  readonly sentences: readonly string[];
}

/**
 * Holds a plan's currents and volts against what its gear stands and what published rules ask. Advice for people who know
 * their local code; never a permit.
 * @param run one run of the plan; its weather says how cold and how warm it gets, its lowest charge where peaks are met
 * @param place what is known of the place besides: how cold it may ever have been
 * @throws RangeError if an option lies outside its range
 */
export function limits(run: Trace, options: LimitOptions = {}, place: LimitPlace = {}): LimitsReport {
  const context = limitContext(run, options, place);
  const { scenario, bank } = run.prepared;
  const branches = [
    ...panelBranches(context),
    ...sourceBranches(context),
    ...mainBranches(context),
    ...loadBranches(context),
  ];
  const lines = inOrder([
    ...scenario.stations.flatMap((_, s) => radioLines(context, s)),
    ...branches.flatMap((branch) => branchLines(branch, context)),
    ...bankLines(context),
    ...mainFeedLines(context, branches),
    ...scenario.panels.flatMap((group) => panelLines(context, group)),
    ...chargeLines(context),
  ]);
  const coldestBankC = bank.tempC.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY);
  return {
    name: scenario.name,
    lowestShare: context.lowestShare,
    lowestFrom: context.lowestFrom,
    openV: context.openV,
    coldestC: context.coldestC,
    coldestFrom: context.coldestFrom,
    warmestC: context.warmestC,
    targetDropShare: context.targetDropShare,
    branches: branches.map(({ id, about, peakA, lastingA, sending }) => ({
      id,
      about: id === "main" ? "everything, at the bank" : about,
      peakA,
      continuousA: lastingA,
      sending,
    })),
    runs: cableRuns(branches, context),
    wiring: wiringRuns(branches, lines, context),
    rated: { switchA: scenario.mainFeed?.disconnectA ?? null, distributionA: scenario.mainFeed?.distributionA ?? null },
    radios: scenario.stations.flatMap((_, s) => radioAtPeak(context, s)),
    lines,
    cautions: cautionsFor(scenario, coldestBankC),
    sentences: sentences(lines),
  };
}

function names({ run }: LimitContext, moment: { readonly sending: readonly number[] } | null | undefined): string[] {
  return (moment?.sending ?? []).map((s) => run.prepared.scenario.stations[s]!.name);
}

function radioAtPeak(context: LimitContext, s: number): RadioAtPeak[] {
  const volts = radioVoltsAt(context, s);
  if (volts === null) return [];
  const station = context.run.prepared.scenario.stations[s]!;
  const sending = names(context, context.peaks.byStation[s]);
  return [{ id: station.id, name: station.name, minimumV: station.radio.minimumV, ...volts, sending }];
}

function sentences(lines: readonly LimitLine[]): string[] {
  const of = (verdict: LimitLine["verdict"]) => lines.filter((line) => line.verdict === verdict);
  const list = (some: readonly LimitLine[]) => some.map((line) => `${line.about}, ${line.quantity}`).join("; ");
  const [over, close, unknown, assumed] = [of("over"), of("close"), of("unknown"), of("assumed")];
  const said: string[] = [];
  if (over.length > 0) said.push(`Over the limit: ${list(over)}.`);
  if (close.length > 0) said.push(`Close to it: ${list(close)}.`);
  if (unknown.length > 0) {
    const things = unknown.length === 1 ? "1 thing is" : `${unknown.length} things are`;
    said.push(`${things} not stated in the scenario and could not be checked.`);
  }
  if (assumed.length > 0) {
    const things = assumed.length === 1 ? "1 line counts" : `${assumed.length} lines count`;
    said.push(`${things} with leads that nobody stated: no fault, and no all-clear.`);
  }
  if (said.length === 0)
    said.push("Everything that is stated stays within its limit; look at the cautions all the same.");
  return said;
}
