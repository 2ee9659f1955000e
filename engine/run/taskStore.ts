import type { Problem } from "../scenario/problem.ts";
import { withoutEachLoad } from "./driversShedding.ts";
import { makeKeptMembers, type RunMember } from "./keptMembers.ts";
import { emptyCounts, type LongCounts } from "./oddsPart.ts";
import { type Prepared, prepare } from "./prepare.ts";
import { type PreparedEnsemble, prepareEnsemble } from "./prepareEnsemble.ts";
import { identityOf, makeReuse } from "./reuse.ts";
import { prepareSizes, type SizeMap } from "./sizeMap.ts";
import { stepMember } from "./stepMember.ts";
import type { OddsTask, SizesTask } from "./taskOrder.ts";

type Ready<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Parts of scenarios, whole ensembles and maps that one worker keeps from one task to the next. */
export interface TaskStore {
  readonly ensemble: (of: Pick<OddsTask, "scenario" | "surroundings" | "seed">) => Ready<PreparedEnsemble>;
  /** The scenario ready for one run. */
  readonly prepared: (of: Pick<OddsTask, "scenario" | "surroundings">) => Ready<Prepared>;
  readonly map: (of: SizesTask) => Ready<SizeMap>;
  /** Runs a member, with what is kept of it from other scenarios and earlier times. */
  readonly runMember: RunMember;
  /** Room to count in, with nothing counted: what was taken before, if it is back. */
  readonly takeCounts: (steps: number) => LongCounts;
  readonly giveBack: (counts: LongCounts) => void;
  /** The ensemble without each of its loads. */
  readonly withouts: (ensemble: PreparedEnsemble) => readonly PreparedEnsemble[];
}

/** Some hundred kilobytes each at most; a notebook's scenarios and their last edits. */
const KEPT_PARTS = 160;
const KEPT_ENSEMBLES = 16;
const KEPT_MAPS = 3;

/** @param keptBytes what may be kept of members, in all; 0 keeps nothing */
export function makeTaskStore(keptBytes = 0): TaskStore {
  const parts = makeReuse(KEPT_PARTS);
  const ensembles = makeReuse(KEPT_ENSEMBLES);
  const maps = makeReuse(KEPT_MAPS);
  let back: LongCounts | null = null;
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
    runMember: keptBytes > 0 ? makeKeptMembers(keptBytes) : stepMember,
    takeCounts: (steps) => {
      const counts = emptyCounts(steps, back);
      back = null;
      return counts;
    },
    giveBack: (counts) => {
      back = counts;
    },
    withouts: (ensemble) => {
      const known = withouts.get(ensemble) ?? withoutEachLoad(ensemble);
      withouts.set(ensemble, known);
      return known;
    },
  };
}

const identities = ({ climate, weatherFile }: OddsTask["surroundings"]) => [
  identityOf(climate),
  identityOf(weatherFile),
];
