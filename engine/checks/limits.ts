import type { Trace } from "../run/trace.ts";
import { bankLines } from "./bankLines.ts";
import { type CableRun, cableRuns, dropLines } from "./cableRuns.ts";
import { type Caution, cautionsFor } from "./cautions.ts";
import { chargeLines } from "./chargeLines.ts";
import { type LimitContext, type LimitOptions, limitContext } from "./limitContext.ts";
import { inOrder, type LimitLine } from "./limitLine.ts";
import { mainFeedLines } from "./mainFeedLines.ts";
import { carriesPanelAmps, controllerOutputA, panelLines, stringsOf } from "./panelLines.ts";
import type { LostVolts } from "./radioVolts.ts";
import { leadContinuousA, radioVoltsAt, stationLines } from "./stationLines.ts";

/** What flows in one branch, A. */
export interface BranchCurrent {
  readonly id: string;
  readonly about: string;
  /** Greatest that can come about, second by second. */
  readonly peakA: number;
  /** Greatest mean over three hours; for panels and chargers their rated current. */
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
  /** Coldest air that the panels are held against, °C; the event's coldest hour (records are colder), or as given. */
  readonly coldestC: number;
  readonly coldestFrom: "event" | "given";
  /** Warmest air of the event, by which wires carry less, °C. */
  readonly warmestC: number;
  readonly targetDropShare: number;
  readonly branches: readonly BranchCurrent[];
  readonly runs: readonly CableRun[];
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
 * @throws RangeError if an option lies outside its range
 */
export function limits(run: Trace, options: LimitOptions = {}): LimitsReport {
  const context = limitContext(run, options);
  const { scenario, bank } = run.prepared;
  const runs = cableRuns(context);
  const lines = inOrder([
    ...scenario.stations.flatMap((_, s) => stationLines(context, s)),
    ...bankLines(context),
    ...mainFeedLines(context),
    ...scenario.panels.flatMap((group) => panelLines(context, group)),
    ...dropLines(context, runs),
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
    branches: branches(context),
    runs,
    radios: scenario.stations.flatMap((_, s) => radioAtPeak(context, s)),
    lines,
    cautions: cautionsFor(scenario, coldestBankC),
    sentences: sentences(lines),
  };
}

function branches(context: LimitContext): BranchCurrent[] {
  const { scenario, loads, sources } = context.run.prepared;
  const { siteA: peakA, siteContinuousA: continuousA } = context;
  return [
    { id: "main", about: "everything, at the bank", peakA, continuousA, sending: names(context, context.peaks.site) },
    ...scenario.stations.map((station, s) => ({
      id: `lead/${station.id}`,
      about: `lead of ${station.name}`,
      peakA: loads.stations[s]!.peakA,
      continuousA: leadContinuousA(context, s),
      sending: [station.name],
    })),
    ...scenario.panels
      .filter((group) => group.count > 0)
      .map((group) => {
        const carries = carriesPanelAmps(group);
        const outputA = Math.min(controllerOutputA(context, group), group.controller.maxChargeA ?? Number.MAX_VALUE);
        return {
          id: `panels/${group.id}`,
          about: `cable of ${group.name}`,
          peakA: carries ? stringsOf(group) * group.module.iscA : outputA,
          continuousA: carries ? stringsOf(group) * group.module.impA : outputA,
          sending: [],
        };
      }),
    ...sources.map((source) => {
      const givesA = Math.min(source.maxA, source.maxW / context.openV);
      return { id: `source/${source.id}`, about: source.name, peakA: givesA, continuousA: givesA, sending: [] };
    }),
  ];
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
  const [over, close, unknown] = [of("over"), of("close"), of("unknown")];
  const said: string[] = [];
  if (over.length > 0) said.push(`Over the limit: ${list(over)}.`);
  if (close.length > 0) said.push(`Close to it: ${list(close)}.`);
  if (unknown.length > 0) {
    const things = unknown.length === 1 ? "1 thing is" : `${unknown.length} things are`;
    said.push(`${things} not stated in the scenario and could not be checked.`);
  }
  if (said.length === 0)
    said.push("Everything that is stated stays within its limit; look at the cautions all the same.");
  return said;
}
