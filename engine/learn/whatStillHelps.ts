import { prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { OddsPart } from "../odds/oddsPart.ts";
import type { Odds } from "../odds/wilson.ts";
import { localMoment } from "../run/localClock.ts";
import { applyChanges } from "../scenario/applyChanges.ts";
import type { Change } from "../scenario/change.ts";
import { checkedScenario } from "../scenario/checkedScenario.ts";
import { type PairedDifference, versus } from "../versus/versus.ts";
import { type ChangeToTry, changesToTry } from "./changesToTry.ts";
import { fromNowOn } from "./fromNowOn.ts";
import type { Learned } from "./learn.ts";
import type { LearnHooks } from "./learnHooks.ts";
import { runParticles } from "./runParticles.ts";

/** A change from now on, and what it gains under the same skies and operators. */
export interface StillHelps {
  readonly id: string;
  readonly name: string;
  readonly takes: string;
  readonly caution: string | null;
  /** To be made a variant of, or to be worked into the plan. */
  readonly changes: readonly Change[];
  /** The same as changes of the plan that keep the past: what is changed stays as it was until now. */
  readonly fromNow: readonly Change[];
  /** Members that hold from now to the end with it, and the difference, member by member. */
  readonly holds: Odds;
  readonly gain: PairedDifference;
  /** Difference in the lowest charge from now on, shares of full. */
  readonly margin: PairedDifference;
  /** Hours longer above the reserve on average, the end of the event counting as the last. */
  readonly hoursGained: number;
  readonly sentence: string;
}

/** Gains smaller than this are not worth anybody's trouble: 1 in 100 skies, 1 point of charge at the lowest, half an hour. */
const WORTH_TROUBLE_SHARE = 0.01;
const WORTH_TROUBLE_H = 0.5;
const hundred = (share: number) => Math.round(100 * share);
/** A list that can be taken in at a glance. */
const MOST_NAMED = 6;

/**
 * What can still be done from the last reading on, ranked by what it gains: each change is run with the particles as they stand,
 * so that past, skies and operators are the same and only the change differs.
 * @param candidates what to try; those that fit the scenario when left out
 * @throws LearnCancelled once the hooks say so
 */
export async function whatStillHelps(
  learned: Learned,
  hooks: LearnHooks = {},
  candidates: readonly ChangeToTry[] = changesToTry(learned.ensemble.prepared.scenario),
): Promise<StillHelps[]> {
  const { ensemble, particles, after } = learned;
  const { grid, scenario } = ensemble.prepared;
  if (particles.step >= grid.steps) return [];
  const found: StillHelps[] = [];
  for (const candidate of candidates) {
    const changed = applyChanges(scenario, candidate.changes);
    const read = changed.ok ? checkedScenario(changed.document) : changed;
    const ready = read.ok ? prepareEnsemble(read.scenario, ensemble.surroundings, ensemble.seed) : read;
    if (!ready.ok) continue; // it does not fit this scenario, such as a power below the least that may be typed in
    const part = await runParticles(ready.ensemble, particles, particles.count, hooks);
    const report = versus([
      { name: "the plan as it is", ensemble, part: after },
      { name: candidate.name, ensemble: ready.ensemble, part },
    ]);
    const { holds, margin, report: odds } = report.others[0]!;
    const hoursGained = meanHours(part) - meanHours(after);
    // Where it holds anyway, more charge at the lowest is no gain to anybody: "100 of 100, not 100".
    const holdsAnyway = hundred(report.first.report.holds.share) === 100;
    const helps =
      holds.mean >= WORTH_TROUBLE_SHARE ||
      (holds.mean >= 0 && !holdsAnyway && (margin.mean >= WORTH_TROUBLE_SHARE || hoursGained >= WORTH_TROUBLE_H));
    if (!helps) continue;
    const sentence = gainWords(candidate.name, holds, margin, hoursGained, odds.holds, report.first.report.holds);
    const fromNow =
      fromNowOn(scenario, candidate.changes, localNow(), momentNow().words, fuelLeftL) ?? candidate.changes;
    found.push({ ...candidate, fromNow, holds: odds.holds, gain: holds, margin, hoursGained, sentence });
  }
  // Differences within one member in a hundred are no ranking; what gains alike in odds goes by the hours.
  const hundredths = ({ gain }: StillHelps) => Math.round(100 * gain.mean);
  found.sort((a, b) => hundredths(b) - hundredths(a) || b.hoursGained - a.hoursGained || b.margin.mean - a.margin.mean);
  return found.slice(0, MOST_NAMED);

  function momentNow() {
    return localMoment(grid, grid.startMs + particles.step * grid.stepMs);
  }

  function localNow(): string {
    const { date, clock } = momentNow();
    return `${date}T${clock}`;
  }

  /** Litres that a source still has, in the middle of the particles. */
  function fuelLeftL(id: string): number {
    const { sources } = ensemble.prepared;
    const s = sources.findIndex((source) => source.id === id);
    const left = Array.from({ length: particles.count }, (_, p) => particles.fuelL[p * sources.length + s]!);
    left.sort((a, b) => a - b);
    return Math.round(1000 * left[left.length >> 1]!) / 1000;
  }

  function meanHours({ outcomes }: OddsPart): number {
    const hours = outcomes.belowFromStep.map((step) => ((step < 0 ? grid.steps : step) - particles.step) * grid.stepH);
    return hours.reduce((sum, each) => sum + each, 0) / hours.length;
  }

  function gainWords(
    name: string,
    holds: PairedDifference,
    margin: PairedDifference,
    hours: number,
    now: Odds,
    before: Odds,
  ): string {
    const end = localMoment(grid, grid.startMs + grid.steps * grid.stepMs).words;
    const points = Math.round(1000 * margin.mean) / 10;
    const lift = `the lowest charge is ${Math.abs(points)} points ${points >= 0 ? "higher" : "lower"} on average`;
    const capital = name.charAt(0).toUpperCase() + name.slice(1);
    const isSame = hundred(now.share) === hundred(before.share);
    const either = isSame ? " either way" : `, not ${hundred(before.share)}`;
    const odds = `holds to ${end} in ${hundred(now.share)} of 100 skies${either}`;
    const signed = (share: number) => String(hundred(share)).replace("-", "−");
    const range = `${signed(holds.low)} to ${signed(holds.high)}`;
    const longer = hours >= 0 ? `${hours.toFixed(1)} h longer` : `${(-hours).toFixed(1)} h shorter`;
    return `${capital}: ${odds} (a gain of ${signed(holds.mean)}, ${range}), ${longer} above the reserve; ${lift}.`;
  }
}
