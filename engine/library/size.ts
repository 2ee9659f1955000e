import { requireRange } from "../require.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type SizeWish, wishesOf } from "../size/sizeAxis.ts";
import { prepareSizes } from "../size/sizeMap.ts";
import { type RunMap, type SizeReport, solvedSizes } from "../size/sizeReport.ts";
import { sizesTask } from "../size/sizesTask.ts";
import type { Answer } from "./answer.ts";
import { type AskOptions, USUAL_DAYS, USUAL_MEMBERS, USUAL_SEED, USUAL_TARGET_SHARE } from "./askOptions.ts";
import { poolOr, taskOptions } from "./poolOr.ts";
import { requireScenario } from "./requireScenario.ts";

/** What a map of sizes looks at, and what it is to meet. */
export interface SizeOptions extends AskOptions {
  /** Across: a number of the scenario with its values; the bank's block about its present size when left out. */
  readonly x?: SizeWish;
  /** Down: likewise, modules of the first panel group when left out; null for a map over one number. */
  readonly y?: SizeWish | null;
  /** Share of the skies in which the bank is to hold, 0…1; 0.95 when left out. */
  readonly targetShare?: number;
  /** Days without sun of the handbook's answer, 0.1…60; 2 when left out. */
  readonly autonomyDays?: number;
}

/**
 * Maps the odds over one or two numbers of a scenario, bank against panels unless others are named, all cells under the same members.
 * @param scenario as `readScenario` gives it
 * @param surroundings the climate of the place, and the weather file where the scenario names one
 * @param options what to look at and what to meet; members (1000 when left out), seed, pool, signal, progress
 * @returns rows of cells with the chance that each holds, what each takes to bring, the smallest, lightest and cheapest that meet the
 *   target, the handbook's answer beside them, and sentences; problems where a field does not exist, is no number, or refuses a value
 * @throws TypeError if the scenario is none; RangeError if the target, the days or the members leave their range; TaskCancelled once the
 *   signal is aborted; EngineFault, naming seed and member, where a promise of ours is broken
 * @see docs/odds.md for how cells are held against the target
 */
export async function size(
  scenario: Scenario,
  surroundings: Surroundings = {},
  options: SizeOptions = {},
): Promise<Answer<SizeReport>> {
  requireScenario(scenario);
  const { members: to = USUAL_MEMBERS, seed = USUAL_SEED, pool } = options;
  const { targetShare = USUAL_TARGET_SHARE, autonomyDays = USUAL_DAYS } = options;
  // At the door, and not after minutes of work.
  if (!(targetShare > 0 && targetShare <= 1)) throw new RangeError(`targetShare must lie in 0…1, got ${targetShare}`);
  requireRange({ autonomyDays }, 0.1, 60);
  const wishes = wishesOf(scenario, options);
  const { x, y } = options.y === null ? { x: wishes.x, y: null } : wishes;
  const run: RunMap = async (across, down) => {
    const ready = prepareSizes(scenario, across, down, surroundings, seed);
    if (!ready.ok) throw new WrongMap(ready.problems);
    const task = { document: scenario, x: across, y: down, surroundings, seed, from: 0, to };
    const done = await poolOr(pool).run(sizesTask, task, taskOptions(options));
    if (!done.ok) throw new WrongMap(done.problems);
    return { map: ready.map, part: done.part };
  };
  try {
    const { map, report } = await solvedSizes(x, y, { targetShare, autonomyDays }, run);
    return { ok: true, report, remarks: map.remarks };
  } catch (error) {
    if (error instanceof WrongMap) return { ok: false, problems: error.problems };
    throw error;
  }
}

/** What is wrong with a map, on its way to whoever asked for it. */
class WrongMap extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems[0]?.message);
    this.problems = problems;
  }
}
