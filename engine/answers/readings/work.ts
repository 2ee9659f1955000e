import { LearnCancelled } from "../../learn/learnHooks.ts";
import { TaskCancelled } from "../../task/taskRun.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { ReadingsDoc } from "./doc.ts";
import { type LearnedPicture, learnedPicture } from "./learnedPicture.ts";

/** Learns in this thread, a few particles at a time; what can still be done follows the picture. */
export const workLearned: Work<ReadingsDoc["readings"], LearnedPicture> = async (want, shop) => {
  const { documents, choices, seed, members } = want;
  const ensemble = shop.ensemble(await shop.start(documents[0]!, seed, members));
  const hooks = {
    progress: (done: number) => shop.tick(0, done),
    pause: shop.turn,
    isCancelled: () => shop.signal.aborted,
  };
  try {
    const found = await learnedPicture(ensemble, choices, members, hooks, shop.early);
    if (!found.ok) throw new Refused(found.problems);
    return found.picture;
  } catch (error) {
    throw error instanceof LearnCancelled ? new TaskCancelled() : error;
  }
};
