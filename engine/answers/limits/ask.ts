import * as z from "zod";
import type { LimitOptions } from "../../checks/limitContext.ts";
import type { LimitsReport } from "../../checks/limits.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { Id } from "../docShapes.ts";
import type { Found } from "../found.ts";

/** What limits are met at; what is left out is the run's own, and 3 % of its volts for a run of cable. */
export const LimitsDoc = z.strictObject({
  scenario: Id,
  dropIn100: z.number().min(0.1).max(50).optional(),
  chargeIn100: z.number().min(0).max(100).optional(),
  coldestC: z.number().min(-90).max(60).optional(),
});
export type LimitsDoc = z.infer<typeof LimitsDoc>;

/** What the entry's choices mean to the engine. */
export function limitOptions({ dropIn100, chargeIn100, coldestC }: LimitsDoc): LimitOptions {
  return {
    ...(dropIn100 === undefined ? {} : { targetDropShare: dropIn100 / 100 }),
    ...(chargeIn100 === undefined ? {} : { lowestShare: chargeIn100 / 100 }),
    ...(coldestC === undefined ? {} : { coldestC }),
  };
}

/** A plan's wiring held against its limits, with what was assumed about the weather of its run. */
export interface LimitsPicture extends LimitsReport {
  readonly remarks: readonly string[];
}

/** A plan's wiring held against its limits. */
export const askLimits = (doc: LimitsDoc): Asked<LimitsPicture> => ({ kind: "limits", doc });

/** What is known of a plan's wiring. */
export const limitsOf = (page: Pick<AnswersPage, "find">, doc: LimitsDoc): Found<LimitsPicture> =>
  page.find(askLimits(doc));
