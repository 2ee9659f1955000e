import * as z from "zod";
import type { SizeAims } from "../../size/sizeTally.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { Id } from "../docShapes.ts";
import type { Found } from "../found.ts";
import type { SizePicture } from "./sizePicture.ts";

/** A number of a scenario and the values that a map looks at. */
const SizeDirection = z.strictObject({
  at: z.string().min(1).max(200),
  values: z.array(z.number()).min(1, "must name at least one value").max(50, "must name at most 50 values"),
});

/** Directions left out are the bank's block and the first group of panels. */
export const SizingDoc = z.strictObject({
  scenario: Id,
  across: SizeDirection.optional(),
  up: SizeDirection.optional(),
  targetIn100: z.number().min(1).max(100),
  autonomyDays: z.number().min(0.1).max(60),
});
export type SizingDoc = z.infer<typeof SizingDoc>;

/** Directions left out are what `usualWishes` looks at. */
export interface SizeChoices {
  readonly x?: z.infer<typeof SizeDirection>;
  readonly y?: z.infer<typeof SizeDirection>;
  readonly aims: SizeAims;
}

/** A map of the odds over two numbers of a scenario. */
export const askSizes = (doc: SizingDoc): Asked<SizePicture> => ({ kind: "sizing", doc });

/** What is known of a map. */
export const sizesOf = (page: Pick<AnswersPage, "find">, doc: SizingDoc): Found<SizePicture> =>
  page.find(askSizes(doc));
