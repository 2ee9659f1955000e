import { type LimitOptions, limitPlace } from "../checks/limitContext.ts";
import { type LimitsReport, limits as limitsOf } from "../checks/limits.ts";
import { prepare } from "../run/prepare.ts";
import type { Surroundings } from "../run/surroundings.ts";
import { tracePrepared } from "../run/trace.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { Answer } from "./answer.ts";
import { requireScenario } from "./requireScenario.ts";

/**
 * Holds a plan's currents, fuses, wires, panel volts and the volts at its radios against their limits. Advice for people who know their
 * local code; never a permit.
 * @param scenario as `readScenario` gives it
 * @param surroundings the climate of the place, and the weather file where the scenario names one: how cold and warm it gets
 * @param options volts that a run may lose, charge at which the peaks are met, coldest air; the usual, the run's own and the place's record when left out
 * @returns branches (A), cable runs and radios (V), every limit with value, margin, rule, source and what to change, the worst first, and the
 *   cautions that matter; problems where the surroundings lack what the scenario needs
 * @throws TypeError if the scenario is none; RangeError if an option leaves its range (0.001…0.5, 0…1, −90…60 °C)
 * @see the source of each rule in its line
 */
export function limits(
  scenario: Scenario,
  surroundings: Surroundings = {},
  options: LimitOptions = {},
): Answer<LimitsReport> {
  requireScenario(scenario);
  const ready = prepare(scenario, surroundings);
  if (!ready.ok) return ready;
  const report = limitsOf(tracePrepared(ready.prepared), options, limitPlace(scenario, surroundings.climate));
  return { ok: true, report, remarks: ready.prepared.remarks };
}
