import { EngineFault } from "../fault.ts";
import type { TaskKind } from "../task/taskKind.ts";

/**
 * The kinds of tasks that a worker can carry out, each fetched when it is first asked for: the only file of the pool that knows any of them.
 */
const TASK_KINDS = {
  odds: async () => (await import("../odds/oddsTask.ts")).oddsTask,
  pairs: async () => (await import("../versus/pairsTask.ts")).pairsTask,
  sizes: async () => (await import("../size/sizesTask.ts")).sizesTask,
  driversRows: async () => (await import("../drivers/driversTasks.ts")).driversRowsTask,
  driversWhatIfs: async () => (await import("../drivers/driversTasks.ts")).driversWhatIfsTask,
  spots: async () => (await import("../spots/spotsTask.ts")).spotsTask,
  reach: async () => (await import("../reach/reachTask.ts")).reachTask,
  packing: async () => (await import("../packing/packingTask.ts")).packingTask,
};

/** A stretch of one of them, as it is sent. */
export type Task = TaskOf<Awaited<ReturnType<(typeof TASK_KINDS)[keyof typeof TASK_KINDS]>>>;
type TaskOf<Kind> =
  Kind extends TaskKind<infer Name, infer Asked, infer _Part, infer _Whole, infer _Into>
    ? { readonly kind: Name } & Asked
    : never;

/** What a worker does with a task. @throws EngineFault if no kind has that name */
export async function kindOfTask({
  kind,
}: Pick<Task, "kind">): Promise<TaskKind<string, Task, unknown, unknown, unknown>> {
  if (!Object.hasOwn(TASK_KINDS, kind)) throw new EngineFault(`no worker knows tasks of the kind "${kind}"`);
  return (await TASK_KINDS[kind]()) as unknown as TaskKind<string, Task, unknown, unknown, unknown>;
}
