import * as z from "zod";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { Id } from "../docShapes.ts";
import type { Found } from "../found.ts";
import type { OddsPicture } from "./oddsPicture.ts";

export const ForecastDoc = z.strictObject({
  scenarios: z
    .array(Id)
    .min(1)
    .max(4)
    .meta({ label: "Scenarios", description: "scenarios whose odds are laid over one another" }),
});
export type ForecastDoc = z.infer<typeof ForecastDoc>;

/** Bands and odds over the notebook's members. */
export const askOdds = (scenario: string): Asked<OddsPicture> => ({ kind: "forecast", doc: { scenarios: [scenario] } });

/** What is known of a scenario's odds. */
export const oddsOf = (page: Pick<AnswersPage, "find">, scenario: string): Found<OddsPicture> =>
  page.find(askOdds(scenario));
