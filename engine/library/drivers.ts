import type { DriversReport } from "../drivers/driversReport.ts";
import { runDrivers } from "../drivers/runDrivers.ts";
import { prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { Answer } from "./answer.ts";
import { type AskOptions, USUAL_MEMBERS, USUAL_SEED } from "./askOptions.ts";
import { poolOr, taskOptions } from "./poolOr.ts";
import { requireScenario } from "./requireScenario.ts";

/**
 * Says what a scenario's outcome depends on: weather, sending, idle draw …, and which load to switch off first.
 * @param scenario as `readScenario` gives it
 * @param surroundings the climate of the place, and the weather file where the scenario names one
 * @param options members: rows of the sample, 20…100,000, two members each (1000 when left out); seed, pool, signal, progress
 * @returns for each factor its share of the variance (of the margin and of holding, each with its sampling error), what its low and high end
 *   would do, and for each load what switching it off gains; problems where the surroundings lack what the scenario needs
 * @throws TypeError if the scenario is none; RangeError if members leaves its range; TaskCancelled once the signal is aborted; EngineFault,
 *   naming seed and member, where a promise of ours is broken
 * @see docs/odds.md for the shares of variance, with their sources
 */
export async function drivers(
  scenario: Scenario,
  surroundings: Surroundings = {},
  options: AskOptions = {},
): Promise<Answer<DriversReport>> {
  requireScenario(scenario);
  const { members = USUAL_MEMBERS, seed = USUAL_SEED, pool } = options;
  const ready = prepareEnsemble(scenario, surroundings, seed);
  if (!ready.ok) return ready;
  const run = await runDrivers(poolOr(pool), ready.ensemble, members, taskOptions(options));
  return run.ok ? { ok: true, report: run.part, remarks: ready.ensemble.remarks } : run;
}
