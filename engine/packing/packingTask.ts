import { makeKeptMembers } from "../ensemble/keptMembers.ts";
import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { lanesFor, type MemberRoom, type StepMembers } from "../ensemble/stepMember.ts";
import { countingOf } from "../odds/odds.ts";
import { stepReachHolds } from "../reach/stepReach.ts";
import { makeReuse, type Reuse } from "../run/reuse.ts";
import type { Surroundings } from "../run/surroundings.ts";
import { membersAtOnce, type Stretch, type TaskKind, type TaskWork } from "../task/taskKind.ts";
import { choicesIn, choicesOf, type PackingSpace, scenarioOf } from "./packingSpace.ts";

/** Members of many sets: the stretch goes over the sets, and each of them runs the same members. */
export interface PackingTask extends Stretch {
  readonly space: PackingSpace;
  /** Numbers of the sets; those of one bank stand beside one another. */
  readonly keys: readonly number[];
  readonly firstMember: number;
  /** Not included. */
  readonly lastMember: number;
  /** Once more members of a set than these miss, no more of it are run. */
  readonly mayMiss: number;
  /** Stands for surroundings that come as another copy with each stretch: the first copy is taken for all. Null: what the task brings is meant. */
  readonly surroundingsKey: string | null;
}

/** Sets `from` to `to` (not included): members that held and members that were run of each. Plain data. */
export interface PackingPart {
  readonly from: number;
  readonly to: number;
  readonly held: readonly number[];
  readonly run: readonly number[];
}

/** Sets are worth a worker of their own as soon as there are so many. */
const FEWEST_SETS = 2;

/** Counts members of sets that hold: never under the reserve, and nothing planned goes without. */
export const packingTask: TaskKind<"packing", PackingTask, PackingPart> = {
  name: "packing",
  fewest: FEWEST_SETS,
  scenarios: ({ space }) => [space.base],
  varies: () => [],
  work: (task, store, at) => {
    const kept = store.own(makePackingKept);
    const surroundings = surroundingsOf(task, kept);
    // The plan itself is prepared as for all other questions, and what that takes (shade above all) is shared both ways.
    const reuse: Reuse = (what, of, prepare) => kept.parts(what, of, () => store.parts(what, of, prepare));
    const base = prepareEnsemble(task.space.base, surroundings, task.seed, reuse);
    return base.ok ? { ok: true, value: counted(task, surroundings, kept, at) } : base;
  },
  merge: mergePacking,
};

/** What one worker keeps from one task to the next. */
interface PackingKept {
  readonly parts: Reuse;
  readonly stepMembers: StepMembers;
  readonly surroundings: Map<string, Surroundings>;
  spare: MemberRoom | null;
}

const KEPT_PARTS = 600;
/** What a worker may keep of members: skies, and what each way to set panels up makes of them. */
const KEPT_BYTES = 96_000_000;
const KEPT_SURROUNDINGS = 4;

function makePackingKept(): PackingKept {
  return {
    parts: makeReuse(KEPT_PARTS),
    stepMembers: makeKeptMembers(KEPT_BYTES),
    surroundings: new Map(),
    spare: null,
  };
}

function surroundingsOf({ surroundings, surroundingsKey }: PackingTask, kept: PackingKept): Surroundings {
  if (surroundingsKey === null) return surroundings;
  const known = kept.surroundings.get(surroundingsKey) ?? surroundings;
  kept.surroundings.set(surroundingsKey, known);
  const [oldest] = kept.surroundings.keys();
  if (kept.surroundings.size > KEPT_SURROUNDINGS) kept.surroundings.delete(oldest!);
  return known;
}

function counted(
  task: PackingTask,
  surroundings: Surroundings,
  kept: PackingKept,
  at: (member: number) => void,
): TaskWork<PackingPart> {
  const { space, keys, seed, firstMember, lastMember } = task;
  const sizes = choicesIn(space);
  const held: number[] = [];
  const ran: number[] = [];
  const run = (from: number, to: number) => {
    for (let k = from; k < to; k++) {
      const scenario = scenarioOf(space, choicesOf(keys[k]!, sizes));
      const ready = prepareEnsemble(scenario, surroundings, seed, kept.parts);
      // What would be refused holds nobody.
      const found = ready.ok ? countSet(ready.ensemble, task, kept, at) : { held: 0, run: lastMember - firstMember };
      held.push(found.held);
      ran.push(found.run);
    }
  };
  const part = () => ({ from: task.from, to: task.from + held.length, held, run: ran });
  const atOnce = membersAtOnce(
    Math.ceil(
      (Date.parse(space.base.time.end) - Date.parse(space.base.time.start)) / (60_000 * space.base.time.stepMinutes),
    ),
    Math.max(1, lastMember - firstMember),
  );
  return { membersAtOnce: atOnce, run, part };
}

/** Runs members of one set, as many side by side as go, until they are done or too many have missed. */
function countSet(
  ensemble: PreparedEnsemble,
  { firstMember, lastMember, mayMiss }: PackingTask,
  kept: PackingKept,
  at: (member: number) => void,
): { readonly held: number; readonly run: number } {
  const lanes = lanesFor(ensemble.prepared.grid.steps);
  const room = makeMemberRoom(ensemble, lanes, kept.spare ?? undefined);
  const { reserveAh } = countingOf(ensemble);
  let held = 0;
  let next = firstMember;
  while (next < lastMember && next - firstMember - held <= mayMiss) {
    const count = Math.min(lanes, lastMember - next);
    at(next);
    kept.stepMembers(ensemble, next, count, room);
    for (let lane = 0; lane < count; lane++) if (stepReachHolds(ensemble, room.run, lane, reserveAh)) held++;
    next += count;
  }
  kept.spare = room;
  return { held, run: next - firstMember };
}

/**
 * Puts parts together, exactly.
 * @throws RangeError if the parts do not follow one another
 */
export function mergePacking(parts: readonly PackingPart[]): PackingPart {
  const sorted = [...parts].sort((a, b) => a.from - b.from);
  const first = sorted[0];
  if (first === undefined) throw new RangeError("parts must hold at least one part, got none");
  sorted.slice(1).forEach((part, p) => {
    const before = sorted[p]!;
    if (before.to !== part.from)
      throw new RangeError(`parts must follow one another, got sets up to ${before.to} and then from ${part.from}`);
  });
  return {
    from: first.from,
    to: sorted.at(-1)!.to,
    held: sorted.flatMap((part) => part.held),
    run: sorted.flatMap((part) => part.run),
  };
}
