import * as z from "zod";
import { docNumber } from "../docField.ts";
import { Id } from "../docShapes.ts";

/** A number of a scenario and the values that a map looks at. */
const SizeDirection = z.strictObject({
  at: z
    .string()
    .min(1)
    .max(200)
    .meta({ label: "Number", description: "place in the scenario of what is looked along" }),
  values: z
    .array(z.number())
    .min(1, "must name at least one value")
    .max(50, "must name at most 50 values")
    .meta({ label: "Values", description: "values that are looked at, in the number's own unit" }),
});
export type SizeDirection = z.infer<typeof SizeDirection>;

/** Directions left out are the bank's block and the first group of panels. */
export const SizingDoc = z.strictObject({
  scenario: Id.meta({ label: "Scenario", description: "scenario that is sized" }),
  across: SizeDirection.optional().meta({
    label: "Across",
    description: "what is looked along from left to right",
    leftOut: "the bank's block",
  }),
  up: SizeDirection.optional().meta({
    label: "Up",
    description: "what is looked along from bottom to top",
    leftOut: "the first group of panels",
  }),
  targetIn100: docNumber({
    label: "Is to hold in",
    what: "skies of a hundred in which the plan is to hold: neither below its reserve nor dark",
    unit: "of 100 skies",
    low: 1,
    high: 100,
  }).default(95),
  autonomyDays: docNumber({
    label: "The handbook bridges",
    what: "days without sun that the handbook's bank is to bridge",
    unit: "days without sun",
    low: 0.1,
    high: 60,
  }).default(2),
});
export type SizingDoc = z.infer<typeof SizingDoc>;
