import { wishesOf } from "../../size/sizeAxis.ts";
import { prepareSizes } from "../../size/sizeMap.ts";
import { sizeReport } from "../../size/sizeReport.ts";
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
  const ready = prepareSizes(document!, x, y, surroundings, seed);
  if (!ready.ok) throw new Refused(ready.problems);
  const run = await shop.pool.run(
    sizesTask,
    { document: document!, x, y, surroundings: shop.sent(surroundings), seed, from: 0, to: members },
    {
      signal: shop.signal,
      fewest: STRETCH_MEMBERS,
      most: STRETCH_MEMBERS,
      onProgress: (done) => shop.tick(0, done),
    },
  );
  if (!run.ok) throw new Refused(run.problems);
  return sizePicture(ready.map, sizeReport(ready.map, run.part, choices.aims));
};
