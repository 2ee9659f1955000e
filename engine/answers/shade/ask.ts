import * as z from "zod";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { OfOne } from "../docShapes.ts";
import type { Found } from "../found.ts";
import type { SpotsPicture } from "./spotsPicture.ts";

/** Who gets the sun on a scenario's site, and for one panel group where it would get most. */
export const ShadeDoc = OfOne.extend({
  spots: z
    .string()
    .min(1)
    .max(100)
    .optional()
    .meta({ label: "Where to put", description: "panel group that a place is looked for, by its short name" }),
});
export type ShadeDoc = z.infer<typeof ShadeDoc>;

/** Which panel group a place is looked for. */
export interface SpotsChoices {
  readonly group: string;
}

/** What a panel group brings at every spot of its site. */
export const askSpots = (doc: ShadeDoc): Asked<SpotsPicture> => ({ kind: "shade", doc });

/** What is known of that. */
export const spotsOf = (page: Pick<AnswersPage, "find">, doc: ShadeDoc): Found<SpotsPicture> =>
  page.find(askSpots(doc));
