import * as z from "zod";
import { ReadingFields } from "../../learn/reading.ts";
import { Id } from "../docShapes.ts";
import { MOST_READINGS } from "../notebookLimits.ts";

/** Readings by the engine's own schema; whether the fields of one go together is said beside it, and shuts no notebook. */
export const ReadingsDoc = z.strictObject({
  scenario: Id.meta({ label: "Scenario", description: "scenario that the readings belong to" }),
  readings: z
    .array(ReadingFields)
    .max(MOST_READINGS, `must be at most ${MOST_READINGS} readings`)
    .meta({ label: "Readings", description: "what was read off the station, in any order" }),
});
export type ReadingsDoc = z.infer<typeof ReadingsDoc>;
