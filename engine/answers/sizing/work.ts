import { type SizeWish, wishesOf } from "../../size/sizeAxis.ts";
import { prepareSizes, type SizeMap } from "../../size/sizeMap.ts";
import { type RunMap, type SizeReport, solvedSizes } from "../../size/sizeReport.ts";
import { sizesTask } from "../../size/sizesTask.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { SizeChoices } from "./ask.ts";
import { type SizePicture, sizePicture } from "./sizePicture.ts";

const STRETCH_MEMBERS = 25;

/** A map with the scenarios of its cells, and what the members came to in them. */
export interface FilledMap {
  readonly map: SizeMap;
  readonly report: SizeReport;
}

/** What a map looks at: as an entry's, and values may be steps from one to another; null down is a map over one number. */
export interface MapChoices extends Pick<SizeChoices, "aims"> {
  readonly x?: SizeWish;
  readonly y?: SizeWish | null;
}

export const workMap: Work<MapChoices, FilledMap> = async (want, shop) => {
  const [document] = want.documents;
  const { choices, seed, members } = want;
  const { scenario } = await shop.open(document!);
  const wishes = wishesOf(scenario, choices);
  const { x, y } = choices.y === null ? { x: wishes.x, y: null } : wishes;
  const { surroundings } = await shop.open(document!, [x, y]);
  const run: RunMap = async (across, down) => {
    const ready = prepareSizes(document!, across, down, surroundings, seed);
    if (!ready.ok) throw new Refused(ready.problems);
    const task = { document: document!, x: across, y: down, surroundings: shop.sent(surroundings), seed };
    const done = await shop.pool.run(
      sizesTask,
      { ...task, from: 0, to: members },
      {
        signal: shop.signal,
        fewest: STRETCH_MEMBERS,
        most: STRETCH_MEMBERS,
        onProgress: (count) => shop.tick(0, count),
      },
    );
    if (!done.ok) throw new Refused(done.problems);
    return { map: ready.map, part: done.part };
  };
  const early = (map: SizeMap, report: SizeReport) => shop.early(sizePicture(map, report));
  return solvedSizes(x, y, choices.aims, run, early);
};

export const workSizes: Work<SizeChoices, SizePicture> = async (want, shop) => {
  const { map, report } = await workMap(want, shop);
  return sizePicture(map, report);
};
