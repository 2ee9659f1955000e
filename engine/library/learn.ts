import { prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { learn as learnFrom } from "../learn/learn.ts";
import { LearnCancelled, type LearnHooks } from "../learn/learnHooks.ts";
import { type LearnReport, learnReport } from "../learn/learnReport.ts";
import { readReadings } from "../learn/readReadings.ts";
import { type StillHelps, whatStillHelps } from "../learn/whatStillHelps.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { TaskCancelled } from "../task/taskRun.ts";
import type { Answer } from "./answer.ts";
import { type AskOptions, USUAL_MEMBERS, USUAL_SEED } from "./askOptions.ts";
import { requireScenario } from "./requireScenario.ts";

/** What readings make of a forecast, and what can still be done. */
export interface LearnedReport extends LearnReport {
  /** Changes from the last reading on, those that gain most first. */
  readonly helps: readonly StillHelps[];
}

/**
 * Takes readings in: odds before and after, hours left, what they teach of the plan, and what can still be done. Works in this thread.
 * @param scenario as `readScenario` gives it
 * @param readings the document of readings, as JSON text or parsed: charge, ampere-hours out, resting volts, watts, the sky; at instants of the event
 * @param surroundings the climate of the place, and the weather file where the scenario names one
 * @param options members (100…20,000, 1000 when left out), seed, signal, and progress in members of the part at hand
 * @returns odds before and after, charge from now on (shares of full, one value per step from `now.step` and one for the end), hours left,
 *   lessons, what still helps, and sentences; problems where a reading does not fit the event or the surroundings lack something
 * @throws TypeError if the scenario is none; RangeError if members leaves its range; TaskCancelled once the signal is aborted
 * @see docs/odds.md for the particle filter, with its source
 */
export async function learn(
  scenario: Scenario,
  readings: unknown,
  surroundings: Surroundings = {},
  { members = USUAL_MEMBERS, seed = USUAL_SEED, signal, onProgress }: Omit<AskOptions, "pool"> = {},
): Promise<Answer<LearnedReport>> {
  requireScenario(scenario);
  const ready = prepareEnsemble(scenario, surroundings, seed);
  if (!ready.ok) return ready;
  const { ensemble } = ready;
  const read = readReadings(readings, ensemble.prepared.grid);
  if (!read.ok) return read;
  const hooks: LearnHooks = {
    progress: (done) => onProgress?.(done, members),
    isCancelled: () => signal?.aborted === true,
  };
  try {
    const learned = await learnFrom(ensemble, read.readings, members, hooks);
    const helps = await whatStillHelps(learned, hooks);
    return { ok: true, report: { ...learnReport(learned), helps }, remarks: ensemble.remarks };
  } catch (error) {
    throw error instanceof LearnCancelled ? new TaskCancelled(error.message) : error;
  }
}
