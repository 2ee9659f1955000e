import { makeReuse, type Reuse } from "../run/reuse.ts";
import { checkedScenario } from "../scenario/checkedScenario.ts";
import { FEWEST_RUN_OFTEN, type Stretch, type TaskKind, workInParts } from "../task/taskKind.ts";
import { identities, type Ready, type TaskStore } from "../task/taskStore.ts";
import type { SizeWish } from "./sizeAxis.ts";
import { prepareSizes, type SizeMap } from "./sizeMap.ts";
import { mergeSizes, type SizePart, sizeMembers } from "./sizeMembers.ts";

/** Members of a map. */
export interface SizesTask extends Stretch {
  /** A scenario as written, its zone included. */
  readonly document: unknown;
  readonly x: SizeWish;
  /** Null for a map over one number. */
  readonly y: SizeWish | null;
}

const KEPT_MAPS = 3;
const makeMaps = (): Reuse => makeReuse(KEPT_MAPS);

function mapOf({ document, x, y, surroundings, seed }: SizesTask, store: TaskStore): Ready<SizeMap> {
  return store.own(makeMaps)("map", [document, x, y, seed, ...identities(surroundings)], () => {
    const ready = prepareSizes(document, x, y, surroundings, seed);
    return ready.ok ? { ok: true, value: ready.map } : ready;
  });
}

/** Members run through all cells of a map. */
export const sizesTask: TaskKind<"sizes", SizesTask, SizePart> = {
  name: "sizes",
  fewest: FEWEST_RUN_OFTEN,
  scenarios: ({ document }) => {
    const read = checkedScenario(document);
    return read.ok ? [read.scenario] : [];
  },
  varies: ({ x, y }) => (y === null ? [x.at] : [x.at, y.at]),
  work: (task, store) => {
    const map = mapOf(task, store);
    if (!map.ok) return map;
    const { base, cells, stretch } = map.value;
    const partOf = (from: number, to: number) => sizeMembers(map.value, from, to);
    const parts = workInParts({ prepared: base }, cells.length, partOf, mergeSizes);
    return { ok: true, value: { ...parts, membersAtOnce: stretch.most } };
  },
  merge: mergeSizes,
};
