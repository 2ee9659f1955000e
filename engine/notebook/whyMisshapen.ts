import { DOCUMENT_SHAPE, type Kinds, type Shape } from "./documentShape.ts";

/** Documents are never changed but replaced: what was found of one holds for as long as it lives. */
const known = new WeakMap<object, string | null>();

/**
 * Why a value is no scenario's document in the first place: something in it is a list that should be a text, or is not there at all. What
 * its numbers and words may be is the engine's to say; a number that somebody typed as a text is let through to it.
 * @returns a sentence that names the place, or null
 */
export function whyMisshapen(document: unknown): string | null {
  if (typeof document !== "object" || document === null)
    return `Its document should be a thing with fields and is ${said(document)}.`;
  const before = known.get(document);
  if (before !== undefined) return before;
  const why = wrongAt(document, DOCUMENT_SHAPE, "");
  known.set(document, why);
  return why;
}

function wrongAt(value: unknown, shape: Shape, at: string): string | null {
  if (typeof shape === "string")
    return fits(value, shape) ? null : `${at} should be ${WORDS[shape]} and is ${said(value)}.`;
  if (Array.isArray(shape)) {
    if (!Array.isArray(value)) return `${at} should be a list and is ${said(value)}.`;
    for (const [number, each] of value.entries()) {
      const why = wrongAt(each, shape[0], `${at}.${number}`);
      if (why !== null) return why;
    }
    return null;
  }
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return `${at || "It"} should be a thing with fields and is ${said(value)}.`;
  }
  const thing = value as Readonly<Record<string, unknown>>;
  const fields = fieldsOf(shape as Exclude<Shape, string | readonly [Shape]>, thing);
  if (fields === null) return `${at}.kind is ${said(thing.kind)}, which is no kind of it.`;
  const below = (field: string) => (at === "" ? field : `${at}.${field}`);
  for (const [name, part] of Object.entries(fields)) {
    const field = name.replace(/\?$/, "");
    if (thing[field] === undefined) {
      if (field === name) return `${below(field)} is missing.`;
    } else {
      const why = wrongAt(thing[field], part, below(field));
      if (why !== null) return why;
    }
  }
  return null;
}

function fieldsOf(shape: Kinds | { readonly [field: string]: Shape }, thing: Readonly<Record<string, unknown>>) {
  if (!isKinds(shape)) return shape;
  const { kind } = thing;
  return typeof kind === "string" && Object.hasOwn(shape.kinds, kind) ? shape.kinds[kind]! : null;
}

const isKinds = (shape: Kinds | { readonly [field: string]: Shape }): shape is Kinds => Object.hasOwn(shape, "kinds");

const WORDS = {
  text: "a text",
  number: "a number",
  "number or nothing": "a number",
  "yes or no": "true or false",
  anything: "something",
} as const;

function fits(value: unknown, shape: keyof typeof WORDS): boolean {
  if (shape === "anything") return true;
  if (shape === "text") return typeof value === "string";
  if (shape === "yes or no") return typeof value === "boolean" || typeof value === "string";
  return typeof value === "number" || typeof value === "string" || (shape === "number or nothing" && value === null);
}

function said(value: unknown): string {
  if (value === undefined) return "missing";
  if (value === null) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a thing with fields";
  return typeof value === "string" ? `the text “${value.slice(0, 40)}”` : String(value);
}
