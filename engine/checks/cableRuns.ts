import type { Cable } from "../scenario/cable.ts";
import { cableDropV, sizeInWords, smallestSize } from "./cableDropV.ts";
import { designA } from "./fuseFor.ts";
import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";
import { panelRun, panelRunCarriesA } from "./panelLines.ts";
import { leadContinuousA } from "./stationLines.ts";

/** One run of cable, out and back, and what it loses. */
export interface CableRun {
  readonly id: string;
  readonly about: string;
  /** "8 AWG" or "10 mm²". */
  readonly size: string;
  readonly oneWayM: number;
  /** Temperature of the copper, °C. */
  readonly tempC: number;
  /** Current at which the drop is taken: a radio's peak, the site's peak, the panels' rated current, A. */
  readonly currentA: number;
  readonly dropV: number;
  /** Of the volts that the run is made for: 12 V for loads, the string's or the bank's for panels. */
  readonly dropShare: number;
  /** Thinnest size that is sold which keeps to the target and carries the current; null if none does. */
  readonly smallest: string | null;
}

/** Volts that a 12 V load is made for, by which marine practice takes the share of a drop (ABYC E-11). */
const LOAD_V = 12;

/** Every run of cable that the scenario names. */
export function cableRuns(context: LimitContext): CableRun[] {
  const { prepared } = context.run;
  const { scenario, loads } = prepared;
  const runs: CableRun[] = [];
  const add = (id: string, about: string, cable: Cable, currentA: number, atV: number, carriesA: number) => {
    const dropV = cableDropV(cable, currentA);
    const smallest = smallestSize(cable, currentA, context.targetDropShare * atV, carriesA, context.warmestC);
    runs.push({
      id,
      about,
      size: sizeInWords(cable),
      oneWayM: cable.oneWayM,
      tempC: cable.tempC,
      currentA,
      dropV,
      dropShare: dropV / atV,
      smallest: smallest === null ? null : sizeInWords(smallest),
    });
  };
  const main = scenario.mainFeed?.cable;
  if (main !== undefined) {
    const { siteA } = context;
    add("main", "main feed", main, siteA, scenario.bank.nominalV, designA(siteA, context.siteContinuousA));
  }
  scenario.stations.forEach((station, s) => {
    const { peakA } = loads.stations[s]!;
    const carriesA = designA(peakA, leadContinuousA(context, s));
    add(`lead/${station.id}`, `lead of ${station.name}`, station.feed.cable, peakA, LOAD_V, carriesA);
  });
  for (const group of scenario.panels) {
    if (group.count === 0) continue;
    const { cable, currentA, atV } = panelRun(context, group);
    add(`panels/${group.id}`, `cable of ${group.name}`, cable, currentA, atV, panelRunCarriesA(context, group));
  }
  return runs;
}

/** One line for each run. */
export function dropLines(context: LimitContext, runs: readonly CableRun[]): LimitLine[] {
  return runs.map((run) =>
    limitLine({
      id: `drop/${run.id}`,
      about: run.about,
      quantity: `drop at ${run.currentA.toFixed(1)} A (${run.oneWayM} m of ${run.size} out and back)`,
      value: run.dropShare,
      unit: "share",
      limit: context.targetDropShare,
      rule: LIMIT_RULES.drop,
      change:
        run.smallest === null
          ? "No single cable of the table keeps to this: shorten the run, or run at more volts."
          : `Fit ${run.smallest} or thicker, or shorten the run.`,
    }),
  );
}
