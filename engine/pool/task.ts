import { type DriversRows, driversRows, mergeDriversRows } from "../drivers/driversRows.ts";
import { type DriversWhatIfs, driversWhatIfs, mergeDriversWhatIfs } from "../drivers/driversWhatIfs.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { StepMembers } from "../ensemble/stepMember.ts";
import { EngineFault, MemberFault } from "../fault.ts";
import { countingOf } from "../odds/odds.ts";
import { makeOddsPart } from "../odds/oddsPart.ts";
import { packOdds } from "../odds/packedOdds.ts";
import { stepCount } from "../odds/stepCount.ts";
import type { SizeMap } from "../size/sizeMap.ts";
import { mergeSizes, type SizePart, sizeMembers } from "../size/sizeMembers.ts";
import { mergePairedCharge, type PairedCharge, pairedCharge } from "../versus/pairedCharge.ts";
import type { Task, TaskEnd, TaskOrder, TaskPart, TaskReply } from "./taskOrder.ts";
import { makeTaskStore, type TaskStore } from "./taskStore.ts";

/** What goes on around a task. */
export interface TaskHooks {
  /** Called with how many members are done. */
  readonly progress: (done: number) => void;
  /** Comes back when whoever shares the thread has had its turn. */
  readonly pause: () => Promise<void>;
  readonly isCancelled: () => boolean;
}

/** Steps of members between two pauses: a hundredth of a second or two, short enough to cancel and long enough to cost nothing. */
const STEPS_BETWEEN_PAUSES = 60_000;
/** Runs that a row of drivers takes, roughly. */
const RUNS_OF_A_ROW = 20;

/** Work that is done a few members at a time. */
interface Work {
  readonly membersAtOnce: number;
  readonly run: (from: number, to: number) => void;
  readonly part: () => TaskPart;
}

/** Runs a task to its end. Never throws: what goes wrong is an end too. */
export async function runTask(task: Task, hooks: TaskHooks, store: TaskStore = makeTaskStore()): Promise<TaskEnd> {
  const { seed, from, to } = task;
  let member = from;
  try {
    const ready = workOf(task, store, (at) => {
      member = at;
    });
    if ("problems" in ready) return { kind: "problems", problems: ready.problems };
    const { membersAtOnce, run, part } = ready;
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

type Refused = Extract<TaskEnd, { kind: "problems" }>;

function workOf(task: Task, store: TaskStore, at: (member: number) => void): Work | Pick<Refused, "problems"> {
  if (task.kind === "sizes") {
    const map = store.map(task);
    return map.ok ? mapWork(map.value) : map;
  }
  const ready = store.ensemble(task);
  if (!ready.ok) return ready;
  const ensemble = ready.value;
  switch (task.kind) {
    case "odds":
      return oddsWork(ensemble, task.from, task.to, store, at);
    case "pairs": {
      const other = store.ensemble({ ...task, scenario: task.other });
      return other.ok ? pairsWork(ensemble, other.value, store.stepMembers) : other;
    }
    case "driversRows": {
      const { of } = task;
      const parts: DriversRows[] = [];
      const run = (from: number, to: number) => parts.push(driversRows(ensemble, of, from, to));
      return { membersAtOnce: atOnce(ensemble, RUNS_OF_A_ROW), run, part: () => mergeDriversRows(parts) };
    }
    case "driversWhatIfs": {
      const { of, ends } = task;
      const withouts = store.withouts(ensemble);
      const parts: DriversWhatIfs[] = [];
      const run = (from: number, to: number) => parts.push(driversWhatIfs(ensemble, of, ends, from, to, withouts));
      return { membersAtOnce: atOnce(ensemble, RUNS_OF_A_ROW), run, part: () => mergeDriversWhatIfs(parts) };
    }
  }
}

function oddsWork(
  ensemble: PreparedEnsemble,
  first: number,
  end: number,
  store: TaskStore,
  at: (member: number) => void,
): Work {
  const { stepMembers } = store;
  const counting = countingOf(ensemble);
  const taken = store.takeRoom(ensemble);
  const room = taken.members;
  const part = makeOddsPart(ensemble.prepared, ensemble.seed, first, end, taken.counts);
  const { endShare, demandWh } = part.outcomes;
  const run = (from: number, to: number) => {
    const { lanes } = room.run;
    for (let next = from; next < to; next += lanes) {
      const count = Math.min(lanes, to - next);
      at(next);
      stepMembers(ensemble, next, count, room);
      for (let lane = 0; lane < count; lane++) {
        const member = next + lane;
        at(member);
        stepCount(ensemble.prepared, room.run, lane, member, counting, part);
        if (!Number.isFinite(endShare[member - first]! + demandWh[member - first]!)) {
          throw new MemberFault(ensemble.seed, member, `it ends with a charge of ${endShare[member - first]}`);
        }
      }
    }
  };
  const packed = () => {
    const sent = packOdds(part);
    store.giveBack(taken);
    return sent;
  };
  return { membersAtOnce: atOnce(ensemble, 1), run, part: packed };
}

function pairsWork(first: PreparedEnsemble, second: PreparedEnsemble, stepMembers: StepMembers): Work {
  const parts: PairedCharge[] = [];
  const run = (from: number, to: number) => {
    const part = pairedCharge(first, second, from, to, stepMembers);
    if (part === null) throw new EngineFault("a pair of scenarios does not last equally long");
    parts.push(part);
  };
  return { membersAtOnce: atOnce(first, 2), run, part: () => mergePairedCharge(parts) };
}

/** How many members are run between two pauses, where each of them is run `runs` times. */
function membersAtOnce(steps: number, runs: number): number {
  return Math.max(1, Math.round(STEPS_BETWEEN_PAUSES / (steps * runs)));
}

const atOnce = ({ prepared }: PreparedEnsemble, runs: number) => membersAtOnce(prepared.grid.steps, runs);

function mapWork(map: SizeMap): Work {
  const parts: SizePart[] = [];
  return {
    membersAtOnce: membersAtOnce(map.base.grid.steps, map.cells.length),
    run: (from, to) => parts.push(sizeMembers(map, from, to)),
    part: () => mergeSizes(parts),
  };
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
