import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import type { Found } from "../found.ts";
import type { ActualPicture } from "./actualPicture.ts";
import type { ActualDoc } from "./doc.ts";

/** A scenario held against the log that an entry keeps. */
export const askActual = (doc: ActualDoc): Asked<ActualPicture> => ({ kind: "actual", doc });

/** What is known of a plan and its log. */
export const actualOf = (page: Pick<AnswersPage, "find">, doc: ActualDoc): Found<ActualPicture> =>
  page.find(askActual(doc));
