import * as z from "zod";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { Id } from "../docShapes.ts";
import type { Found } from "../found.ts";
import type { VersusPicture } from "./versusPicture.ts";

export const FEWEST_COLUMNS = 2;
export const MOST_COLUMNS = 4;

/** As it was written while two scenarios were all that could be compared. */
interface OfTwo {
  readonly first: unknown;
  readonly second: unknown;
}
const isOfTwo = (value: unknown): value is OfTwo =>
  typeof value === "object" && value !== null && Object.keys(value).sort().join() === "first,second";

export const VersusDoc = z.preprocess(
  (value) => (isOfTwo(value) ? { scenarios: [value.first, value.second] } : value),
  z.strictObject({
    scenarios: z
      .array(Id)
      .min(FEWEST_COLUMNS, `must be at least ${FEWEST_COLUMNS} scenarios`)
      .max(MOST_COLUMNS, `must be at most ${MOST_COLUMNS} scenarios`)
      .meta({
        label: "Scenarios",
        description: "two to four scenarios; the first is what the others are held against",
      }),
  }),
);
export type VersusDoc = z.infer<typeof VersusDoc>;

/** How two scenarios are held against one another. */
export interface VersusChoices {
  /** Leaves out the pairs that only the drawing of the difference over time shows. */
  readonly isUndrawn?: true;
}

/** Two scenarios under the same skies and operators: the second is held against the first. */
export const askVersus = (first: string, second: string): Asked<VersusPicture> => ({
  kind: "versus",
  doc: { scenarios: [first, second] },
});

/** What is known of the second held against the first. */
export const versusOf = (page: Pick<AnswersPage, "find">, first: string, second: string): Found<VersusPicture> =>
  page.find(askVersus(first, second));

/** What is known of every pair of a table. */
export const pairsOf = (page: Pick<AnswersPage, "find">, { scenarios }: VersusDoc): Found<VersusPicture>[] =>
  scenarios.slice(1).map((other) => versusOf(page, scenarios[0]!, other));
