import * as z from "zod";
import { LONGEST_NAME } from "./notebookLimits.ts";

/** What stands where in a notebook is found by its id: short, and safe in an address. */
export const Id = z.string().regex(/^[a-z0-9-]{1,40}$/, "must be 1 to 40 small letters, digits or hyphens");
export const Name = z
  .string()
  .min(1, "must not be empty")
  .max(LONGEST_NAME, `must be at most ${LONGEST_NAME} characters long`);

/** What is asked about one scenario and has no choices of its own. */
export const OfOne = z.strictObject({
  scenario: Id.meta({ label: "Scenario", description: "scenario that the entry is about" }),
});
export type OfOne = z.infer<typeof OfOne>;
