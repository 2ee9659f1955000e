import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import type { Found } from "../found.ts";
import type { ReadingsDoc } from "./doc.ts";
import type { LearnedPicture } from "./learnedPicture.ts";

/** What an entry's readings make of its scenario's forecast. */
export const askLearned = (doc: ReadingsDoc): Asked<LearnedPicture> => ({ kind: "readings", doc });

/** What is known of what was learned. */
export const learnedOf = (page: Pick<AnswersPage, "find">, doc: ReadingsDoc): Found<LearnedPicture> =>
  page.find(askLearned(doc));
