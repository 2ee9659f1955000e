import { driversRowsTask, driversWhatIfsTask } from "../drivers/driversTasks.ts";
import { EngineFault } from "../fault.ts";
import { oddsTask } from "../odds/oddsTask.ts";
import { sizesTask } from "../size/sizesTask.ts";
import type { TaskKind } from "../task/taskKind.ts";
import { pairsTask } from "../versus/pairsTask.ts";

/** The kinds of tasks that a worker can carry out: the only file of the pool that knows any of them. */
const TASK_KINDS = [oddsTask, pairsTask, sizesTask, driversRowsTask, driversWhatIfsTask] as const;

/** A stretch of one of them, as it is sent. */
export type Task = TaskOf<(typeof TASK_KINDS)[number]>;
type TaskOf<Kind> =
  Kind extends TaskKind<infer Name, infer Asked, infer _Part, infer _Whole, infer _Into>
    ? { readonly kind: Name } & Asked
    : never;

/** What a worker does with a task. @throws EngineFault if no kind has that name */
export function kindOfTask({ kind }: Pick<Task, "kind">): TaskKind<string, Task, unknown, unknown, unknown> {
  const found = TASK_KINDS.find(({ name }) => name === kind);
  if (found === undefined) throw new EngineFault(`no worker knows tasks of the kind "${kind}"`);
  return found as unknown as TaskKind<string, Task, unknown, unknown, unknown>;
}
