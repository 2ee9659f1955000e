import type * as z from "zod";
import { DEEPEST, LONGEST_NAME, MOST_VALUES } from "../../../engine/answers/notebookLimits.ts";
import { measured } from "../../../engine/notebook/measured.ts";
import { problemSentences } from "../../../engine/notebook/readNotebook.ts";

export type Fields = Readonly<Record<string, unknown>>;

/** What is told while a notebook is salvaged, and the room that is left in it. */
export interface Salvage {
  /** A sentence for everything that is missing, or is not as it was. */
  readonly missing: string[];
  /** Values that were read so far. */
  values: number;
}

/** A text cut to the length of a name; null where it is none. */
export const cut = (text: unknown) => (typeof text === "string" && text !== "" ? text.slice(0, LONGEST_NAME) : null);

/** What a damaged part is called when it is told about: by its own words where it has any. */
export function nameOf(part: unknown, what: string, number: number): string {
  const { title, name } = (typeof part === "object" && part !== null ? part : {}) as Fields;
  const said = cut(title) ?? cut(name);
  return said === null ? `${what} ${number + 1}` : `${what} “${said}”`;
}

/** Why a part is not even looked at: it is no object, is meant to do harm, or there is no room for it. */
export function whyLeftOut(part: unknown, salvage: Salvage): string | null {
  if (typeof part !== "object" || part === null) return "it is damaged";
  const { values, levels, badField } = measured(part, MOST_VALUES, DEEPEST);
  if (badField !== null) return `it has a field named ${badField}`;
  if (levels + 2 > DEEPEST) return `it nests more than ${DEEPEST} levels deep`;
  if (salvage.values + values > MOST_VALUES - 100) return "the notebook holds more than there is room for";
  salvage.values += values;
  return null;
}

/** The first thing that is wrong, without its full stop. */
export const reason = (error: z.ZodError) => (problemSentences(error)[0] ?? "it is damaged").replace(/\.$/, "");
