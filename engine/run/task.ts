import { EngineFault } from "../fault.ts";
import { makeMemberRoom } from "./makeMemberRoom.ts";
import { countingOf } from "./odds.ts";
import { makeOddsPart, type OddsPart } from "./oddsPart.ts";
import { prepareEnsemble } from "./prepareEnsemble.ts";
import { stepCount } from "./stepCount.ts";
import { stepMember } from "./stepMember.ts";
import type { OddsTask, TaskEnd, TaskOrder, TaskReply } from "./taskOrder.ts";

/** What goes on around a task. */
export interface TaskHooks {
  /** Called with how many members are done. */
  readonly progress: (done: number) => void;
  /** Comes back when whoever shares the thread has had its turn. */
  readonly pause: () => Promise<void>;
  readonly isCancelled: () => boolean;
}

/** Members between two pauses: a few hundredths of a second, short enough to cancel and long enough to cost nothing. */
const MEMBERS_BETWEEN_PAUSES = 40;

/** Runs a task to its end. Never throws: what goes wrong is an end too. */
export async function runTask(task: OddsTask, hooks: TaskHooks): Promise<TaskEnd> {
  const { scenario, surroundings, seed, from, to } = task;
  let member = from;
  try {
    const ready = prepareEnsemble(scenario, surroundings, seed);
    if (!ready.ok) return { kind: "problems", problems: ready.problems };
    const { ensemble } = ready;
    const counting = countingOf(ensemble);
    const room = makeMemberRoom(ensemble);
    const part = makeOddsPart(ensemble.prepared, seed, from, to);
    for (; member < to; member++) {
      if ((member - from) % MEMBERS_BETWEEN_PAUSES === 0) {
        if (member > from) hooks.progress(member - from);
        await hooks.pause();
        if (hooks.isCancelled()) return { kind: "cancelled" };
      }
      stepMember(ensemble, member, room);
      stepCount(ensemble.prepared, room.run, member, counting, part);
      const { endShare, demandWh } = part.outcomes;
      if (!Number.isFinite(endShare[member - from]! + demandWh[member - from]!)) {
        throw new EngineFault(`it ends with a charge of ${endShare[member - from]}`);
      }
    }
    hooks.progress(to - from);
    return { kind: "part", part };
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return { kind: "fault", sentence: `member ${member} of seed "${seed}": ${said}` };
  }
}

/** The buffers of a part, which may be handed over instead of copied. */
export function partBuffers(part: OddsPart): ArrayBuffer[] {
  const { outcomes, chargeCounts, solarCounts, loadCounts, belowCounts, darkCounts, unservedMilliWh } = part;
  const counts = [chargeCounts, solarCounts, loadCounts, belowCounts, darkCounts, unservedMilliWh];
  return [...Object.values(outcomes), ...counts].map(
    (array: Float64Array | Uint32Array) => array.buffer as ArrayBuffer,
  );
}

/**
 * The worker's end of the line to a pool: carries out what it is told, several tasks in turns if there are several.
 * @param reply sends a reply, with the buffers that may be handed over
 * @param pause comes back when waiting orders have been taken
 */
export function serveTasks(
  reply: (reply: TaskReply, transfer: ArrayBuffer[]) => void,
  pause: () => Promise<void>,
): (order: TaskOrder) => void {
  const cancelled = new Map<number, boolean>();
  return (order) => {
    const { number } = order;
    if (order.kind === "cancel") {
      if (cancelled.has(number)) cancelled.set(number, true);
      return;
    }
    cancelled.set(number, false);
    const progress = (done: number) => reply({ kind: "progress", number, done }, []);
    const isCancelled = () => cancelled.get(number) === true;
    void runTask(order.task, { progress, pause, isCancelled }).then((end) => {
      cancelled.delete(number);
      reply({ kind: "end", number, end }, end.kind === "part" ? partBuffers(end.part) : []);
    });
  };
}
