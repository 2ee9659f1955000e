import * as z from "zod";
import { text } from "./quantity.ts";

/**
 * One named change to a scenario: put a value at a place, add something to a list, or take something out. A place is
 * written with dots and, inside lists, with the id of what is meant: `panels.roof.count`, `bank.blockAh`.
 */
export const Change = z
  .strictObject({
    at: text("place in the document, such as panels.roof.count").meta({ label: "Place" }),
    to: z.json().optional().meta({ label: "To", description: "the new value" }),
    add: z.json().optional().meta({ label: "Adds", description: "something to add to the list at this place" }),
    remove: z
      .literal(true, { error: "true, which takes out what stands at this place" })
      .optional()
      .meta({ label: "Takes it out", description: "true takes out what stands at this place" }),
  })
  .meta({
    title: "Change",
    description:
      "A value at a place, something added to a list, or something taken out. A place is written with dots and, inside lists, with ids: panels.roof.count.",
  })
  .check(({ value, issues }) => {
    const given = [value.to, value.add, value.remove].filter((part) => part !== undefined).length;
    if (given !== 1) {
      const message = "give exactly one of to (a new value), add (something for a list) or remove (true)";
      issues.push({ code: "custom", path: [], input: value, message });
    }
  });
/** One named change to a scenario, as `applyChanges` takes it: `at` a place, and `to`, `add` or `remove`. */
export type Change = z.infer<typeof Change>;
