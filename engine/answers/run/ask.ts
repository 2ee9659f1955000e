import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import type { Found } from "../found.ts";
import type { RunPicture } from "./runPicture.ts";

/** One run under the sky as written. */
export const askRun = (scenario: string): Asked<RunPicture> => ({ kind: "run", doc: { scenario } });

/** What is known of a scenario's run. */
export const runOf = (page: Pick<AnswersPage, "find">, scenario: string): Found<RunPicture> =>
  page.find(askRun(scenario));
