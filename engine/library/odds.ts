import { prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { type OddsReport, oddsReport } from "../odds/odds.ts";
import { oddsTask } from "../odds/oddsTask.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { Answer } from "./answer.ts";
import { type AskOptions, USUAL_MEMBERS, USUAL_SEED } from "./askOptions.ts";
import { poolOr, taskOptions } from "./poolOr.ts";
import { requireScenario } from "./requireScenario.ts";

/**
 * Runs a scenario under many skies, operators and figures: in how many the bank holds, and when it fails.
 * @param scenario as `readScenario` gives it
 * @param surroundings the climate of the place, and the weather file where the scenario names one
 * @param options members (1000 when left out), seed, pool, signal, progress
 * @returns chances as counts with their 95 % intervals, bands of charge (shares of full) and of power (W) with one value per step and one
 *   more of charge for the end, sums in Wh and h over the event, and sentences; problems where the surroundings lack what the scenario needs
 * @throws TypeError if the scenario is none; RangeError if members is no whole number in 1…1,000,000; TaskCancelled once the signal
 *   is aborted; EngineFault, naming seed and member, where a promise of ours is broken
 * @see docs/odds.md for how skies are drawn, with sources; the intervals are E. B. Wilson's (1927)
 */
export async function odds(
  scenario: Scenario,
  surroundings: Surroundings = {},
  options: AskOptions = {},
): Promise<Answer<OddsReport>> {
  requireScenario(scenario);
  const { members: to = USUAL_MEMBERS, seed = USUAL_SEED, pool } = options;
  const ready = prepareEnsemble(scenario, surroundings, seed);
  if (!ready.ok) return ready;
  const run = await poolOr(pool).run(oddsTask, { scenario, surroundings, seed, from: 0, to }, taskOptions(options));
  if (!run.ok) return run;
  return { ok: true, report: oddsReport(ready.ensemble, run.part), remarks: ready.ensemble.remarks };
}
