import { LearnCancelled } from "../../learn/learnHooks.ts";
import type { Problem } from "../../scenario/problem.ts";
import { TaskCancelled } from "../../task/taskRun.ts";
import type { Want } from "../asked.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { Shop } from "../shop.ts";
import type { ReadingsDoc } from "./doc.ts";
import {
  type Doubted,
  type LearnedPicture,
  type Lesson,
  type LessonHooks,
  learnedPicture,
  lessonOf,
} from "./learnedPicture.ts";

/** A document of readings, as text or parsed. */
export interface LessonChoices {
  readonly document: unknown;
  /** Whether all readings are really so, however odd they look. */
  readonly isConfirmed: boolean;
}

/** Learns in this thread, a few particles at a time. */
async function lesson(
  { documents, choices, seed, members }: Want<LessonChoices>,
  shop: Shop,
  also: Pick<LessonHooks, "asked" | "early">,
): Promise<Lesson> {
  const ensemble = shop.ensemble(await shop.start(documents[0]!, seed, members));
  const hooks = {
    ...also,
    progress: (done: number) => shop.tick(0, done),
    pause: shop.turn,
    isCancelled: () => shop.signal.aborted,
  };
  try {
    const found = await lessonOf(ensemble, choices.document, members, hooks, choices.isConfirmed);
    if (!found.ok) throw new Refused(found.problems);
    return found.lesson;
  } catch (error) {
    throw error instanceof LearnCancelled ? new TaskCancelled() : error;
  }
}

/** Readings that are asked about are set aside; what can still be done follows the picture. */
export const workLearned: Work<ReadingsDoc["readings"], LearnedPicture> = async (want, shop) => {
  const document = { format: "duskline-readings", version: 1, readings: want.choices };
  const choices = { document, isConfirmed: false };
  const found = await lesson({ ...want, choices }, shop, { early: (first) => shop.early(learnedPicture(first, null)) });
  return learnedPicture(found, found.helps);
};

/** The same with all that was worked out on the way, where nobody can be asked: a reading in doubt is a problem. */
export const workLesson: Work<LessonChoices, Lesson> = (want, shop) =>
  lesson(want, shop, {
    asked: (asked) => {
      if (asked.length > 0) throw new Refused(asked.flatMap(doubtProblems));
    },
  });

const doubtProblems = ({ number, at, doubts }: Doubted): Problem[] =>
  doubts.map((sentence) => ({
    code: "doubtful",
    path: ["readings", number],
    message: `readings.${number + 1} (${at.replace("T", " ")}): ${sentence}`,
  }));
