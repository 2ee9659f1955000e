import type { SizeAims } from "../../size/sizeTally.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import type { Found } from "../found.ts";
import type { SizeDirection, SizingDoc } from "./doc.ts";
import type { SizePicture } from "./sizePicture.ts";

/** Directions left out are what `usualWishes` looks at. */
export interface SizeChoices {
  readonly x?: SizeDirection;
  readonly y?: SizeDirection;
  readonly aims: SizeAims;
}

/** A map of the odds over two numbers of a scenario. */
export const askSizes = (doc: SizingDoc): Asked<SizePicture> => ({ kind: "sizing", doc });

/** What is known of a map. */
export const sizesOf = (page: Pick<AnswersPage, "find">, doc: SizingDoc): Found<SizePicture> =>
  page.find(askSizes(doc));
