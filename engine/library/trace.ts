import { prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { replayMember } from "../odds/odds.ts";
import type { Surroundings } from "../run/surroundings.ts";
import { type Trace, trace as traceOnce } from "../run/trace.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { USUAL_SEED } from "./askOptions.ts";
import { requireScenario } from "./requireScenario.ts";

/** Which run of a scenario is wanted. */
export interface TraceOptions {
  /** Number of one member of the scenario's ensemble, such as `tailMember` of its odds, 0…999,999; left out, the run is under the stated weather. */
  readonly member?: number;
  /** Seed of that ensemble; "duskline" when left out. */
  readonly seed?: string;
}

const MOST_MEMBER = 999_999;

/**
 * Runs a scenario once, step by step: under its stated weather, or as one member of its ensemble.
 * @param scenario as `readScenario` gives it
 * @param surroundings the climate for typical weather, and the weather file where the scenario names one
 * @param options which run; the one under the stated weather when left out
 * @returns every quantity at every step (one value per step; charge has one more, for the end): watts in names that end in W, shares of
 *   full in `chargeShare`; with sums by day and the verdict in sentences. Problems where the surroundings lack what the scenario needs
 * @throws TypeError if the scenario is none; RangeError if the member is no whole number in 0…999,999
 * @see docs/model.md for each equation with its source
 */
export function trace(
  scenario: Scenario,
  surroundings: Surroundings = {},
  { member, seed = USUAL_SEED }: TraceOptions = {},
): { ok: true; trace: Trace } | { ok: false; problems: readonly Problem[] } {
  requireScenario(scenario);
  if (member === undefined) return traceOnce(scenario, surroundings);
  if (!(Number.isInteger(member) && member >= 0 && member <= MOST_MEMBER)) {
    throw new RangeError(`member must be a whole number in 0…${MOST_MEMBER}, got ${member}`);
  }
  const ready = prepareEnsemble(scenario, surroundings, seed);
  return ready.ok ? { ok: true, trace: replayMember(ready.ensemble, member) } : ready;
}
