import { applyChanges } from "../scenario/applyChanges.ts";
import type { Change } from "../scenario/change.ts";
import type { Problem } from "../scenario/problem.ts";
import { readScenario } from "../scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import { type TimeGrid, timeGrid } from "../scenario/timeGrid.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import type { Lever } from "./lever.ts";
import { leversOf } from "./levers.ts";
import { mergedScenario } from "./mergedScenario.ts";
import type { Pulls } from "./reachOrder.ts";
import { spareLevers } from "./spareLevers.ts";

/** A plan with its levers. */
export interface ReachPlan {
  readonly document: ScenarioInput;
  readonly scenario: Scenario;
  readonly grid: TimeGrid;
  /** What could be more, less or other. */
  readonly levers: readonly Lever[];
  /** What could be left away. */
  readonly spares: readonly Lever[];
}

/**
 * Finds the levers of a plan.
 * @param others documents of other plans: panel groups that only those have can be set up here too, as can those of the plan's own variants
 */
export function reachPlan(
  document: ScenarioInput,
  others: readonly ScenarioInput[] = [],
): { ok: true; plan: ReachPlan } | { ok: false; problems: readonly Problem[] } {
  const read = readScenario(document);
  if (!read.ok) return read;
  const { scenario } = read;
  const times = timeGrid(scenario.time, zoneOf(scenario.place));
  if (!times.ok) return times;
  const { grid } = times;
  const lent = [
    ...scenario.variants.flatMap(({ changes }) =>
      changes.flatMap(({ at, add }) => (at === "panels" && add ? [add] : [])),
    ),
    ...others.flatMap(({ panels = [] }) => panels),
  ];
  const once = lent.filter((group, k) => lent.findIndex((each) => idOf(each) === idOf(group)) === k);
  const allowed = (lever: Lever): Lever[] => {
    const amounts = [...lever.amounts];
    while (amounts.length > 0 && !reads(document, amounts.at(-1)!.changes)) amounts.pop();
    return amounts.length > 0 ? [{ ...lever, amounts }] : [];
  };
  const levers = leversOf(scenario, grid, once).flatMap(allowed);
  const spares = spareLevers(scenario, grid).flatMap(allowed);
  return { ok: true, plan: { document, scenario, grid, levers, spares } };
}

const idOf = (group: unknown) => (group as { id?: unknown } | null)?.id;

const reads = (document: ScenarioInput, changes: readonly Change[]) => scenarioWith(document, changes) !== null;

function scenarioWith(document: ScenarioInput, changes: readonly Change[]): Scenario | null {
  const changed = applyChanges(document, changes);
  if (!changed.ok) return null;
  const read = readScenario(changed.document);
  return read.ok ? read.scenario : null;
}

/** Scenarios of a plan with levers pulled; what was read once is not read again. Null where the scenario would be refused. */
export function makePulled(
  { document, scenario }: ReachPlan,
  levers: readonly Lever[],
): (pulls: Pulls) => Scenario | null {
  const alone = new Map<string, Scenario | null>();
  const changesOf = (pulls: Pulls) => pulls.flatMap(({ lever, amount }) => levers[lever]!.amounts[amount - 1]!.changes);
  const pulledAlone = (pulls: Pulls) => {
    const key = keyOf(pulls);
    const known = alone.get(key);
    if (known !== undefined) return known;
    const found = scenarioWith(document, changesOf(pulls));
    alone.set(key, found);
    return found;
  };
  return (pulls) => {
    if (pulls.length === 0) return scenario;
    if (pulls.length === 1) return pulledAlone(pulls);
    const sides = pulls.map((pull) => pulledAlone([pull]));
    if (sides.some((side) => side === null)) return null;
    return mergedScenario(scenario, sides as Scenario[]) ?? scenarioWith(document, changesOf(pulls));
  };
}

/** What stands for levers pulled. */
export const keyOf = (pulls: Pulls) => pulls.map(({ lever, amount }) => `${lever}:${amount}`).join(" ");
