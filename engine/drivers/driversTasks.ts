import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { FEWEST_RUN_OFTEN, ofOneScenario, type Stretch, type TaskKind, workInParts } from "../task/taskKind.ts";
import type { DriversEnd } from "./driversEnds.ts";
import { type DriversRows, driversRows, mergeDriversRows } from "./driversRows.ts";
import { withoutEachLoad } from "./driversShedding.ts";
import { type DriversWhatIfs, driversWhatIfs, mergeDriversWhatIfs } from "./driversWhatIfs.ts";

/** Rows of a sample of drivers; the what-ifs come after all rows, for these say where the ends lie. */
export interface DriversRowsTask extends Stretch {
  readonly scenario: Scenario;
  /** Rows of the whole sample. */
  readonly of: number;
}

export interface DriversWhatIfsTask extends DriversRowsTask {
  readonly ends: readonly DriversEnd[];
}

/** Runs that a row takes, roughly. */
const RUNS_OF_A_ROW = 20;

export const driversRowsTask: TaskKind<"driversRows", DriversRowsTask, DriversRows> = {
  name: "driversRows",
  fewest: FEWEST_RUN_OFTEN,
  ...ofOneScenario,
  work: (task, store) => {
    const ready = store.ensemble(task);
    if (!ready.ok) return ready;
    const partOf = (from: number, to: number) => driversRows(ready.value, task.of, from, to);
    return { ok: true, value: workInParts(ready.value, RUNS_OF_A_ROW, partOf, mergeDriversRows) };
  },
  merge: mergeDriversRows,
};

export const driversWhatIfsTask: TaskKind<"driversWhatIfs", DriversWhatIfsTask, DriversWhatIfs> = {
  name: "driversWhatIfs",
  fewest: FEWEST_RUN_OFTEN,
  ...ofOneScenario,
  work: (task, store) => {
    const ready = store.ensemble(task);
    if (!ready.ok) return ready;
    const withouts = withoutsOf(ready.value, store.own(makeWithouts));
    const partOf = (from: number, to: number) => driversWhatIfs(ready.value, task.of, task.ends, from, to, withouts);
    return { ok: true, value: workInParts(ready.value, RUNS_OF_A_ROW, partOf, mergeDriversWhatIfs) };
  },
  merge: mergeDriversWhatIfs,
};

type Withouts = WeakMap<PreparedEnsemble, readonly PreparedEnsemble[]>;
const makeWithouts = (): Withouts => new WeakMap();

/** The ensemble without each of its loads. */
function withoutsOf(ensemble: PreparedEnsemble, kept: Withouts): readonly PreparedEnsemble[] {
  const known = kept.get(ensemble) ?? withoutEachLoad(ensemble);
  kept.set(ensemble, known);
  return known;
}
