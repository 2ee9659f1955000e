import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { lanesFor, type MemberRoom, type StepMembers, stepMembers } from "../ensemble/stepMember.ts";
import { ROW_SLOTS, ROW_STORED_AH } from "../run/runRows.ts";
import { STATE_SLOTS, STORED_AH } from "../run/stepState.ts";

/** How much more charge the second of two scenarios has than the first, under one and the same sky. Plain data. */
export interface PairedCharge {
  readonly from: number;
  readonly to: number;
  /** Values per member: one for each step's start, and one for the end. */
  readonly moments: number;
  /** Ah, member by member. */
  readonly moreAh: Float64Array;
}

/**
 * Runs members `from` to `to` (not included) of two ensembles and keeps the difference at every step.
 * @returns null where the two do not last equally long
 */
export function pairedCharge(
  first: PreparedEnsemble,
  second: PreparedEnsemble,
  from: number,
  to: number,
  step: StepMembers = stepMembers,
): PairedCharge | null {
  const { steps, startMs, stepMs } = first.prepared.grid;
  const other = second.prepared.grid;
  if (steps !== other.steps || startMs !== other.startMs || stepMs !== other.stepMs) return null;
  const moments = steps + 1;
  const moreAh = new Float64Array((to - from) * moments);
  const lanes = lanesFor(steps);
  const [roomA, roomB] = [makeMemberRoom(first, lanes), makeMemberRoom(second, lanes)];
  for (let next = from; next < to; next += lanes) {
    const count = Math.min(lanes, to - next);
    step(first, next, count, roomA);
    step(second, next, count, roomB);
    for (let lane = 0; lane < count; lane++) {
      const row = (next + lane - from) * moments;
      for (let i = 0; i < steps; i++) {
        moreAh[row + i] = storedAh(roomB, lane * steps + i) - storedAh(roomA, lane * steps + i);
      }
      moreAh[row + steps] = endAh(roomB, lane) - endAh(roomA, lane);
    }
  }
  return { from, to, moments, moreAh };
}

/** Charge at the start of a step of a lane. */
function storedAh({ run }: MemberRoom, cell: number): number {
  return run.rows[cell * ROW_SLOTS + ROW_STORED_AH]!;
}

function endAh({ run }: MemberRoom, lane: number): number {
  return run.state[lane * STATE_SLOTS + STORED_AH]!;
}

/**
 * Puts parts together, exactly.
 * @throws RangeError if the parts do not follow one another or are not of one pair
 */
export function mergePairedCharge(parts: readonly PairedCharge[]): PairedCharge {
  const sorted = [...parts].sort((a, b) => a.from - b.from);
  const first = sorted[0];
  if (first === undefined) throw new RangeError("parts must hold at least one part, got none");
  sorted.slice(1).forEach((part, p) => {
    const before = sorted[p]!;
    if (before.to !== part.from || before.moments !== part.moments) {
      throw new RangeError(`parts must follow one another, got members up to ${before.to} and then from ${part.from}`);
    }
  });
  const moreAh = new Float64Array(sorted.reduce((sum, part) => sum + part.moreAh.length, 0));
  let at = 0;
  for (const part of sorted) {
    moreAh.set(part.moreAh, at);
    at += part.moreAh.length;
  }
  return { from: first.from, to: sorted.at(-1)!.to, moments: first.moments, moreAh };
}
