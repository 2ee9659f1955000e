import { wishesOf } from "../../size/sizeAxis.ts";
import { prepareSizes, type SizeMap } from "../../size/sizeMap.ts";
import { type RunMap, type SizeReport, solvedSizes } from "../../size/sizeReport.ts";
import { sizesTask } from "../../size/sizesTask.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { SizeChoices } from "./ask.ts";
import { type SizePicture, sizePicture } from "./sizePicture.ts";

const STRETCH_MEMBERS = 25;

export const workSizes: Work<SizeChoices, SizePicture> = async (want, shop) => {
  const [document] = want.documents;
  const { choices, seed, members } = want;
  const { scenario } = await shop.open(document!);
  const { x, y } = wishesOf(scenario, choices);
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
  const { map, report } = await solvedSizes(x, y, choices.aims, run, early);
  return sizePicture(map, report);
};
