import { prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { oddsTask } from "../odds/oddsTask.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type Contender, type VersusReport, versus as versusOf } from "../versus/versus.ts";
import type { Answer } from "./answer.ts";
import { type AskOptions, USUAL_MEMBERS, USUAL_SEED } from "./askOptions.ts";
import { poolOr, taskOptions } from "./poolOr.ts";
import { requireScenario } from "./requireScenario.ts";

/**
 * Holds scenarios against the first of them, member by member: the same skies and the same operators, so that what they share cancels out.
 * @param scenarios two or more, as `readScenario` and `readVariant` give them; told apart by their names
 * @param surroundings the climate of their places, and the weather file where they name one: the same one for all
 * @param options members of each (1000 when left out), seed, pool, signal, progress (of all scenarios together)
 * @returns the odds of each, and against the first: differences in the share that holds and in the lowest charge (shares, with 95 %
 *   intervals), members that flip and why, cost, kg and minutes where they are stated; problems where the surroundings lack what one needs
 * @throws TypeError if one of the scenarios is none; RangeError if they are fewer than two or members is no whole number in 1…1,000,000;
 *   TaskCancelled once the signal is aborted; EngineFault, naming seed and member, where a promise of ours is broken
 * @see docs/odds.md for paired differences and their intervals
 */
export async function versus(
  scenarios: readonly Scenario[],
  surroundings: Surroundings = {},
  options: AskOptions = {},
): Promise<Answer<VersusReport>> {
  for (const [k, scenario] of scenarios.entries()) requireScenario(scenario, `scenarios[${k}]`);
  if (scenarios.length < 2) throw new RangeError(`scenarios must be 2 or more, got ${scenarios.length}`);
  const { members: to = USUAL_MEMBERS, seed = USUAL_SEED, onProgress } = options;
  const pool = poolOr(options.pool);
  const contenders: Contender[] = [];
  const remarks = new Set<string>();
  for (const [k, scenario] of scenarios.entries()) {
    const ready = prepareEnsemble(scenario, surroundings, seed);
    if (!ready.ok) return ready;
    const progress = { onProgress: (done: number) => onProgress?.(k * to + done, scenarios.length * to) };
    const run = await pool.run(
      oddsTask,
      { scenario, surroundings, seed, from: 0, to },
      { ...taskOptions(options), ...progress },
    );
    if (!run.ok) return run;
    contenders.push({ name: scenario.name, ensemble: ready.ensemble, part: run.part });
    for (const remark of ready.ensemble.remarks) remarks.add(remark);
  }
  return { ok: true, report: versusOf(contenders), remarks: [...remarks] };
}
