import * as z from "zod";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { docNumber } from "../docField.ts";
import { Id } from "../docShapes.ts";
import type { Found } from "../found.ts";
import type { ReachPicture } from "./reachPicture.ts";

/** What counts most, as `reachOrder.ts` in the engine has it: said again here, so that asking fetches none of that. */
const ORDERS = ["money", "mass", "minutes", "hours"] as const;

/** What it would take for a scenario to hold as often as it should. */
export const ReachDoc = z.strictObject({
  scenario: Id.meta({ label: "Scenario", description: "scenario that is to hold as often as it should" }),
  targetIn100: docNumber({
    label: "Target",
    what: "skies of a hundred in which the plan is to hold",
    unit: "of 100",
    low: 1,
    high: 100,
  }).default(95),
  most: z.enum(ORDERS).meta({ label: "What counts most", description: "what of a way there is to be least" }),
  locked: z
    .array(z.string().min(1).max(100))
    .max(200)
    .meta({ label: "Not up for debate", description: "levers that stay as they are, by their ids" }),
  lent: z
    .array(Id)
    .max(4)
    .meta({ label: "Panels at hand from", description: "scenarios whose panels could be set up here too" }),
});
export type ReachDoc = z.infer<typeof ReachDoc>;

/** What of it is asked besides the scenarios. */
export interface ReachChoices {
  readonly targetShare: number;
  readonly order: ReachDoc["most"];
  readonly locked: readonly string[];
}

export const askReach = (doc: ReachDoc): Asked<ReachPicture> => ({ kind: "reach", doc });

/** What is known of what it would take. */
export const reachOf = (page: Pick<AnswersPage, "find">, doc: ReachDoc): Found<ReachPicture> =>
  page.find(askReach(doc));
