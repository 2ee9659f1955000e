import type { ExplainedPart } from "../../run/explain.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import type { Found } from "../found.ts";
import type { RunPicture } from "./runPicture.ts";

/** What of a run is asked: its picture, or every number on the way at one instant. */
export interface RunAsks {
  readonly whyMs?: number;
}

/** One run under the sky as written. */
export const askRun = (scenario: string): Asked<RunPicture> => ({ kind: "run", doc: { scenario } });

/** Every number on the way at one instant of that run. */
export interface Why {
  readonly parts: readonly ExplainedPart[];
}

export const askWhy = (scenario: string, whyMs: number): Asked<Why> => ({ kind: "run", doc: { scenario, whyMs } });

/** What is known of a scenario's run. */
export const runOf = (page: Pick<AnswersPage, "find">, scenario: string): Found<RunPicture> =>
  page.find(askRun(scenario));
