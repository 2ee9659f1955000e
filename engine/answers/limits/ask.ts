import type { LimitOptions } from "../../checks/limitContext.ts";
import type { LimitsReport } from "../../checks/limits.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import type { Found } from "../found.ts";
import type { LimitsDoc } from "./doc.ts";

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
  /** What its wiring sheet is headed with: the plan, its place, "Thu 8 to Sun 11 October 2026". */
  readonly sheetOf: { readonly plan: string; readonly place: string; readonly when: string };
}

/** A plan's wiring held against its limits. */
export const askLimits = (doc: LimitsDoc): Asked<LimitsPicture> => ({ kind: "limits", doc });

/** What is known of a plan's wiring. */
export const limitsOf = (page: Pick<AnswersPage, "find">, doc: LimitsDoc): Found<LimitsPicture> =>
  page.find(askLimits(doc));
