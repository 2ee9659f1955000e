import * as z from "zod";
import type { OwnedThing } from "../../packing/ownedThing.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import { docNumber } from "../docField.ts";
import { Id } from "../docShapes.ts";
import type { Found } from "../found.ts";
import type { PackingPicture } from "./packingPicture.ts";

/** What counts most, as `thingPrice.ts` in the engine has it: said again here, so that asking fetches none of that. */
const ORDERS = ["mass", "minutes", "money"] as const;

const MOST_OWNED = 100;
const LONGEST_TEXT = 80;
/** A list of what a club owns by its outer shape: what each thing may say is read where it is worked out, with the schema that is fetched then. */
const OwnedShape = z
  .array(z.record(z.string().max(LONGEST_TEXT), z.union([z.string().max(LONGEST_TEXT), z.number()])))
  .max(MOST_OWNED, `must be at most ${MOST_OWNED} things`) as unknown as z.ZodType<OwnedThing[]>;

const most = (label: string, unit: string, high: number, what: string) =>
  docNumber({ label, what, unit, low: 0, high, leftOut: "no limit" }).optional();

/** What to take along for a scenario. */
export const PackingDoc = z.strictObject({
  scenario: Id.meta({ label: "Scenario", description: "scenario that is packed for" }),
  targetIn100: docNumber({
    label: "Target",
    what: "skies of a hundred in which the plan is to hold",
    unit: "of 100",
    low: 1,
    high: 100,
  }).default(90),
  mostMassKg: most("At most", "kg", 100_000, "most that may be carried"),
  mostMinutes: most("At most", "min", 100_000, "most work to set up and take down"),
  mostMoney: most("At most", "money", 100_000_000, "most money for what has to be bought or borrowed"),
  most: z.enum(ORDERS).meta({ label: "What counts most", description: "what of a set is to be least" }),
  owned: OwnedShape.optional().meta({
    label: "What the club has",
    description: "what can be packed; what the scenarios hold when left out",
  }),
  lent: z
    .array(Id)
    .max(4)
    .meta({ label: "Panels stand as in", description: "scenarios whose places for panels count too" }),
  stopped: z
    .literal(true)
    .optional()
    .meta({ label: "Stopped", description: "the sets are not run until somebody says so" }),
});
export type PackingDoc = z.infer<typeof PackingDoc>;

/** What of it is asked besides the scenarios. */
export interface PackingChoices {
  readonly targetShare: number;
  readonly order: PackingDoc["most"];
  readonly limits: { readonly mass: number | null; readonly minutes: number | null; readonly money: number | null };
  /** Null: what the scenarios hold. */
  readonly owned: readonly OwnedThing[] | null;
}

export const askPacking = (doc: PackingDoc): Asked<PackingPicture> => ({ kind: "packing", doc });

/** What is known of what to take along. */
export const packingOf = (page: Pick<AnswersPage, "find">, doc: PackingDoc): Found<PackingPicture> =>
  page.find(askPacking(doc));
