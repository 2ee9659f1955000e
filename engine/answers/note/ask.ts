import * as z from "zod";
import { LONGEST_NOTE } from "../notebookLimits.ts";

export const NoteDoc = z.strictObject({
  text: z.string().max(LONGEST_NOTE, `must be at most ${LONGEST_NOTE} characters long`),
});
export type NoteDoc = z.infer<typeof NoteDoc>;
