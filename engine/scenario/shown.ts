/** Longest piece of what a user wrote that a sentence repeats. */
const LONGEST = 60;

/** A text as a sentence repeats it: whole where it is short, else its beginning. */
export function clipped(text: string): string {
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 3)}…` : text;
}

/** A value of a document as a sentence names it: numbers and short texts as they are, the rest by its kind. */
export function shown(value: unknown): string {
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value);
  if (typeof value === "string") return `"${clipped(value)}"`;
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  return typeof value === "object" ? "a group of fields" : `a ${typeof value}`;
}
