import { figure } from "../../words/numbers.ts";
import { LONGEST_NOTE } from "../notebookLimits.ts";

/** A note's document as several, where its text is longer than one note may be; a character of two halves stays whole. */
export function notePieces(doc: unknown): readonly object[] {
  const { text } = { ...(doc as { readonly text?: unknown } | null) };
  return typeof text === "string" ? pieces(text, LONGEST_NOTE).map((piece) => ({ text: piece })) : [];
}

/** A text in pieces of at most `most` characters; a character of two halves stays whole. */
function pieces(text: string, most: number): string[] {
  const all: string[] = [];
  for (let from = 0; from < text.length; ) {
    const isSplit = /[\uD800-\uDBFF]/.test(text.charAt(from + most - 1)) && from + most < text.length;
    const to = from + most - (isSplit ? 1 : 0);
    all.push(text.slice(from, to));
    from = to;
  }
  return all;
}

/** What is said of a note of so many characters; null where that is not too long. */
export function whyNoteTooLong(characters: number): string | null {
  if (characters <= LONGEST_NOTE) return null;
  return `A note holds ${figure(LONGEST_NOTE)} characters at most, and this one has ${figure(characters)}: shorten it, or go on in a second note.`;
}
