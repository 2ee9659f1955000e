import { makeKeptMembers } from "../ensemble/keptMembers.ts";
import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { lanesFor, type MemberRoom, type StepMembers } from "../ensemble/stepMember.ts";
import { countingOf } from "../odds/odds.ts";
import { makeReuse, type Reuse } from "../run/reuse.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { FEWEST_RUN_OFTEN, membersAtOnce, type Stretch, type TaskKind, type TaskWork } from "../task/taskKind.ts";
import { identities, type Ready, type TaskStore } from "../task/taskStore.ts";
import { stepReachHolds } from "./stepReach.ts";

/** Members of a plan with levers pulled in one way. */
export interface ReachTask extends Stretch {
  /** The plan as it stands: what is prepared of it serves the others. */
  readonly base: Scenario;
  /** At one place and time with it. */
  readonly scenario: Scenario;
  /** Once more members than these miss, no more are run: the part then ends before `to`. For a task of one stretch. */
  readonly mayMiss: number;
  /**
   * Stands for surroundings that are too large to be sent with each of hundreds of small tasks: those that came with it before are meant where
   * the task brings none. Null: what the task brings is meant.
   */
  readonly surroundingsKey: string | null;
}

/** Members `from` to `to` (not included), counted in whole numbers so that parts merge exactly. Plain data. */
export interface ReachPart {
  readonly seed: string;
  readonly from: number;
  readonly to: number;
  readonly held: number;
  /** Whether nothing could be run, since this worker has not seen the surroundings yet. */
  readonly lacksSurroundings: boolean;
}

/** Members counted that never fall under the reserve and leave nothing planned without. */
export const reachTask: TaskKind<"reach", ReachTask, ReachPart> = {
  name: "reach",
  fewest: FEWEST_RUN_OFTEN,
  scenarios: ({ base }) => [base],
  varies: () => [],
  work: (task, store, at) => {
    const kept = store.own(makeReachKept);
    const surroundings = surroundingsOf(task, kept);
    if (surroundings === null) return { ok: true, value: lacking(task) };
    const ready = ensembleOf({ ...task, surroundings }, store);
    return ready.ok ? { ok: true, value: counted(ready.value, task, kept, at) } : ready;
  },
  merge: mergeReach,
};

/** What one worker keeps from one task to the next: parts of scenarios, whole ensembles, and what skies made of panels. */
interface ReachKept {
  readonly parts: Reuse;
  readonly ensembles: Reuse;
  readonly stepMembers: StepMembers;
  readonly surroundings: Map<string, Surroundings>;
  /** Room for members that nobody uses now: its memory serves the next. */
  spare: MemberRoom | null;
}

/** Levers of a plan, with their loads and banks: some kilobytes each. */
const KEPT_PARTS = 600;
const KEPT_ENSEMBLES = 24;
/** What a worker may keep of members: skies and panels of a thousand take some 40 MB where a dozen groups are tried. */
const KEPT_BYTES = 48_000_000;

function makeReachKept(): ReachKept {
  return {
    parts: makeReuse(KEPT_PARTS),
    ensembles: makeReuse(KEPT_ENSEMBLES),
    stepMembers: makeKeptMembers(KEPT_BYTES),
    surroundings: new Map(),
    spare: null,
  };
}

const KEPT_SURROUNDINGS = 4;

/** Null where they have not been seen yet. */
function surroundingsOf({ surroundings, surroundingsKey }: ReachTask, kept: ReachKept): Surroundings | null {
  if (surroundingsKey === null) return surroundings;
  const known = kept.surroundings.get(surroundingsKey);
  if (known !== undefined) return known;
  if (surroundings.climate === undefined && surroundings.weatherFile === undefined) return null;
  kept.surroundings.set(surroundingsKey, surroundings);
  const [oldest] = kept.surroundings.keys();
  if (kept.surroundings.size > KEPT_SURROUNDINGS) kept.surroundings.delete(oldest!);
  return surroundings;
}

function lacking({ seed, from }: ReachTask): TaskWork<ReachPart> {
  const part = { seed, from, to: from, held: 0, lacksSurroundings: true };
  return { membersAtOnce: 1_000_000, run: () => {}, part: () => part };
}

function ensembleOf({ base, scenario, surroundings, seed }: ReachTask, store: TaskStore): Ready<PreparedEnsemble> {
  const { parts, ensembles } = store.own(makeReachKept);
  const prepared = (of: Scenario, reuse: Reuse) =>
    ensembles("ensemble", [of, seed, ...identities(surroundings)], (): Ready<PreparedEnsemble> => {
      const ready = prepareEnsemble(of, surroundings, seed, reuse);
      return ready.ok ? { ok: true, value: ready.ensemble } : ready;
    });
  // The plan itself is prepared as for all other questions, and what that takes (shade above all) is shared both ways.
  const first = prepared(base, (what, of, prepare) => parts(what, of, () => store.parts(what, of, prepare)));
  return first.ok ? prepared(scenario, parts) : first;
}

function counted(
  ensemble: PreparedEnsemble,
  { from: first, mayMiss }: ReachTask,
  kept: ReachKept,
  at: (member: number) => void,
): TaskWork<ReachPart> {
  const { steps } = ensemble.prepared.grid;
  const lanes = lanesFor(steps);
  const room = makeMemberRoom(ensemble, lanes, kept.spare ?? undefined);
  kept.spare = null;
  const { reserveAh } = countingOf(ensemble);
  let done = first;
  let held = 0;
  const run = (from: number, to: number) => {
    for (let next = from; next < to && done - first - held <= mayMiss; next += lanes) {
      const count = Math.min(lanes, to - next);
      at(next);
      kept.stepMembers(ensemble, next, count, room);
      for (let lane = 0; lane < count; lane++) if (stepReachHolds(ensemble, room.run, lane, reserveAh)) held++;
      done += count;
    }
  };
  const part = () => {
    kept.spare = room;
    return { seed: ensemble.seed, from: first, to: done, held, lacksSurroundings: false };
  };
  return { membersAtOnce: lanes * Math.max(1, Math.round(membersAtOnce(steps, 1) / lanes)), run, part };
}

/**
 * Puts parts together, exactly.
 * @throws RangeError if the parts do not follow one another or are not of one question
 */
export function mergeReach(parts: readonly ReachPart[]): ReachPart {
  const sorted = [...parts].sort((a, b) => a.from - b.from);
  const first = sorted[0];
  if (first === undefined) throw new RangeError("parts must hold at least one part, got none");
  let { held } = first;
  sorted.slice(1).forEach((part, p) => {
    const before = sorted[p]!;
    if (before.to !== part.from) {
      throw new RangeError(`parts must follow one another, got members up to ${before.to} and then from ${part.from}`);
    }
    if (part.seed !== first.seed) throw new RangeError("parts must be of one seed, got different ones");
    held += part.held;
  });
  return {
    seed: first.seed,
    from: first.from,
    to: sorted.at(-1)!.to,
    held,
    lacksSurroundings: sorted.some((part) => part.lacksSurroundings),
  };
}
