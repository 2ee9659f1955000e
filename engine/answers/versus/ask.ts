import * as z from "zod";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { Id } from "../docShapes.ts";
import type { Found } from "../found.ts";
import type { VersusPicture } from "./versusPicture.ts";

export const VersusDoc = z.strictObject({
  first: Id.meta({ label: "Against", description: "scenario that the other is held against" }),
  second: Id.meta({ label: "Judged", description: "scenario that is judged" }),
});
export type VersusDoc = z.infer<typeof VersusDoc>;

/** How two scenarios are held against one another. */
export interface VersusChoices {
  /** Leaves out the pairs that only the drawing of the difference over time shows. */
  readonly isUndrawn?: true;
}

/** Two scenarios under the same skies and operators. */
export const askVersus = (first: string, second: string): Asked<VersusPicture> => ({
  kind: "versus",
  doc: { first, second },
});

/** What is known of the second held against the first. */
export const versusOf = (page: Pick<AnswersPage, "find">, first: string, second: string): Found<VersusPicture> =>
  page.find(askVersus(first, second));
