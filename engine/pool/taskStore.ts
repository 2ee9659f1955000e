import { withoutEachLoad } from "../drivers/driversShedding.ts";
import { makeKeptMembers } from "../ensemble/keptMembers.ts";
import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { lanesFor, type MemberRoom, type StepMembers, stepMembers } from "../ensemble/stepMember.ts";
import { emptyCounts, type LongCounts } from "../odds/oddsPart.ts";
import { type Prepared, prepare } from "../run/prepare.ts";
import { identityOf, makeReuse } from "../run/reuse.ts";
import type { Problem } from "../scenario/problem.ts";
import { prepareSizes, type SizeMap } from "../size/sizeMap.ts";
import type { OddsTask, SizesTask } from "./taskOrder.ts";

type Ready<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Room for the members of one task. */
export interface TakenRoom {
  /** What its arrays' lengths depend on. */
  readonly shape: string;
  readonly members: MemberRoom;
  readonly counts: LongCounts;
}

/** Parts of scenarios, whole ensembles and maps that one worker keeps from one task to the next. */
export interface TaskStore {
  readonly ensemble: (of: Pick<OddsTask, "scenario" | "surroundings" | "seed">) => Ready<PreparedEnsemble>;
  /** The scenario ready for one run. */
  readonly prepared: (of: Pick<OddsTask, "scenario" | "surroundings">) => Ready<Prepared>;
  readonly map: (of: SizesTask) => Ready<SizeMap>;
  /** Runs members side by side, with what is kept of them from other scenarios and earlier times. */
  readonly stepMembers: StepMembers;
  /** Room for members and to count in, with nothing in it: the memory of what was taken before, if it is back and fits. */
  readonly takeRoom: (ensemble: PreparedEnsemble) => TakenRoom;
  readonly giveBack: (taken: TakenRoom) => void;
  /** The ensemble without each of its loads. */
  readonly withouts: (ensemble: PreparedEnsemble) => readonly PreparedEnsemble[];
}

/** Some hundred kilobytes each at most; a notebook's scenarios and their last edits. */
const KEPT_PARTS = 160;
const KEPT_ENSEMBLES = 16;
const KEPT_MAPS = 3;
/** A megabyte each; scenarios of one notebook are of few shapes. */
const KEPT_ROOMS = 4;

/** @param keptBytes what may be kept of members, in all; 0 keeps nothing */
export function makeTaskStore(keptBytes = 0): TaskStore {
  const parts = makeReuse(KEPT_PARTS);
  const ensembles = makeReuse(KEPT_ENSEMBLES);
  const maps = makeReuse(KEPT_MAPS);
  const back = new Map<string, TakenRoom>();
  const withouts = new WeakMap<PreparedEnsemble, readonly PreparedEnsemble[]>();
  return {
    ensemble: ({ scenario, surroundings, seed }) =>
      ensembles("ensemble", [scenario, seed, ...identities(surroundings)], () => {
        const ready = prepareEnsemble(scenario, surroundings, seed, parts);
        return ready.ok ? { ok: true, value: ready.ensemble } : ready;
      }),
    prepared: ({ scenario, surroundings }) => {
      const ready = prepare(scenario, surroundings, parts);
      return ready.ok ? { ok: true, value: ready.prepared } : ready;
    },
    map: ({ document, x, y, surroundings, seed }) =>
      maps("map", [document, x, y, seed, ...identities(surroundings)], () => {
        const ready = prepareSizes(document, x, y, surroundings, seed);
        return ready.ok ? { ok: true, value: ready.map } : ready;
      }),
    stepMembers: keptBytes > 0 ? makeKeptMembers(keptBytes) : stepMembers,
    takeRoom: (ensemble) => {
      const shape = shapeOf(ensemble.prepared);
      const spare = back.get(shape);
      back.delete(shape);
      const members = makeMemberRoom(ensemble, lanesFor(ensemble.prepared.grid.steps), spare?.members);
      return { shape, members, counts: emptyCounts(ensemble.prepared.grid.steps, spare?.counts) };
    },
    giveBack: (taken) => {
      back.set(taken.shape, taken);
      const [oldest] = back.keys();
      if (back.size > KEPT_ROOMS) back.delete(oldest!);
    },
    withouts: (ensemble) => {
      const known = withouts.get(ensemble) ?? withoutEachLoad(ensemble);
      withouts.set(ensemble, known);
      return known;
    },
  };
}

/** What the lengths of a member's arrays depend on. */
function shapeOf({ grid, groups, sources, loads }: Prepared): string {
  return [grid.steps, groups.length, sources.length, loads.stations.length].join(" ");
}

const identities = ({ climate, weatherFile }: OddsTask["surroundings"]) => [
  identityOf(climate),
  identityOf(weatherFile),
];
