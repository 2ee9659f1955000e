import * as z from "zod";
import { LONGEST_NOTE } from "../notebookLimits.ts";

export const NoteDoc = z.strictObject({
  text: z
    .string()
    .max(LONGEST_NOTE, `must be at most ${LONGEST_NOTE} characters long`)
    .meta({ label: "Text", description: "the note in Markdown, with live figures between braces" }),
});
export type NoteDoc = z.infer<typeof NoteDoc>;
