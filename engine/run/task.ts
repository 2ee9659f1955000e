import { EngineFault } from "../fault.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { makeMemberRoom } from "./makeMemberRoom.ts";
import { countingOf } from "./odds.ts";
import { makeOddsPart, type OddsPart } from "./oddsPart.ts";
import { prepareEnsemble } from "./prepareEnsemble.ts";
import { stepCount } from "./stepCount.ts";
import { stepMember } from "./stepMember.ts";
import type { Surroundings } from "./surroundings.ts";

/** Members `from` to `to` (not included) of a scenario's ensemble: one worker's share of the work. Plain data, so that it can be sent. */
export interface OddsTask {
  readonly scenario: Scenario;
  readonly surroundings: Surroundings;
  /** Any text: the same seed gives the same members. */
  readonly seed: string;
  readonly from: number;
  readonly to: number;
}

/** How a task ended. A fault is ours: it names the member, so that it can be met again. */
export type TaskEnd =
  | { readonly kind: "part"; readonly part: OddsPart }
  | { readonly kind: "problems"; readonly problems: readonly Problem[] }
  | { readonly kind: "cancelled" }
  | { readonly kind: "fault"; readonly sentence: string };

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

/**
 * Cuts members into as many stretches as there are workers, of equal length within one member.
 * @param fewest members that are worth a worker of their own
 */
export function splitMembers(
  from: number,
  to: number,
  workers: number,
  fewest: number,
): { readonly from: number; readonly to: number }[] {
  const pieces = Math.max(1, Math.min(workers, Math.floor((to - from) / fewest)));
  const edge = (piece: number) => from + Math.round(((to - from) * piece) / pieces);
  return Array.from({ length: pieces }, (_, piece) => ({ from: edge(piece), to: edge(piece + 1) }));
}

/** The buffers of a part, which may be handed over instead of copied. */
export function partBuffers(part: OddsPart): ArrayBuffer[] {
  const { outcomes, chargeCounts, solarCounts, loadCounts, belowCounts, darkCounts, unservedMilliWh } = part;
  const counts = [chargeCounts, solarCounts, loadCounts, belowCounts, darkCounts, unservedMilliWh];
  return [...Object.values(outcomes), ...counts].map(
    (array: Float64Array | Uint32Array) => array.buffer as ArrayBuffer,
  );
}
