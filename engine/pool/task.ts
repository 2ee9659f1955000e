import { MemberFault } from "../fault.ts";
import { makeTaskStore, type TaskStore } from "../task/taskStore.ts";
import { kindOfTask, type Task } from "./taskKinds.ts";
import type { TaskEnd, TaskOrder, TaskReply } from "./taskOrder.ts";

/** What goes on around a task. */
export interface TaskHooks {
  /** Called with how many members are done. */
  readonly progress: (done: number) => void;
  /** Comes back when whoever shares the thread has had its turn. */
  readonly pause: () => Promise<void>;
  readonly isCancelled: () => boolean;
}

/** Runs a task to its end. Never throws: what goes wrong is an end too. */
export async function runTask(task: Task, hooks: TaskHooks, store: TaskStore = makeTaskStore()): Promise<TaskEnd> {
  const { seed, from, to } = task;
  let member = from;
  try {
    const kind = await kindOfTask(task);
    const ready = kind.work(task, store, (at) => {
      member = at;
    });
    if (!ready.ok) return { kind: "problems", problems: ready.problems };
    const { membersAtOnce, run, part } = ready.value;
    for (let next = from; next < to; next += membersAtOnce) {
      if (next > from) hooks.progress(next - from);
      await hooks.pause();
      if (hooks.isCancelled()) return { kind: "cancelled" };
      member = next;
      run(next, Math.min(to, next + membersAtOnce));
    }
    hooks.progress(to - from);
    return { kind: "part", part: part() };
  } catch (error) {
    if (error instanceof MemberFault) return { kind: "fault", sentence: error.message };
    const said = error instanceof Error ? error.message : String(error);
    return { kind: "fault", sentence: `member ${member} of seed "${seed}": ${said}` };
  }
}

/**
 * The worker's end of the line to a pool: carries out what it is told, several tasks in turns if there are several, and keeps
 * what it prepared for the next.
 * @param keptBytes what it may keep of members, see `makeTaskStore`
 * @param reply sends a copy of a reply: once a buffer has been handed over and not copied, the engine looks at every access to every array
 *   whether its buffer is still there, and members take a fifth longer
 * @param pause comes back when waiting orders have been taken
 */
export function serveTasks(
  reply: (reply: TaskReply) => void,
  pause: () => Promise<void>,
  keptBytes = 0,
): (order: TaskOrder) => void {
  const store = makeTaskStore(keptBytes);
  const cancelled = new Map<number, boolean>();
  return (order) => {
    const { number } = order;
    if (order.kind === "cancel") {
      if (cancelled.has(number)) cancelled.set(number, true);
      return;
    }
    cancelled.set(number, false);
    const progress = (done: number) => reply({ kind: "progress", number, done });
    const isCancelled = () => cancelled.get(number) === true;
    void runTask(order.task, { progress, pause, isCancelled }, store).then((end) => {
      cancelled.delete(number);
      reply({ kind: "end", number, end });
    });
  };
}
