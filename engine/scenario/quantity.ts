import * as z from "zod";

/** What a number field is for, with its unit, its allowed range and what is usual: shown beside the field and in errors. */
export interface QuantityFacts {
  /** Unit as written after the number; empty for a share or a count. */
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  /** What the number is, in plain trade words. */
  readonly what: string;
  /** What is usual, when that can be said. */
  readonly typical?: readonly [number, number];
  /** Why that is usual. */
  readonly why?: string;
}

function rangeInWords({ unit, low, high }: QuantityFacts): string {
  return `from ${low} to ${high}${unit === "" ? "" : ` ${unit}`}`;
}

/**
 * A number with a unit and a closed range. Its error message is the second half of a sentence ("a number from 1 to
 * 5000 Ah (rated capacity of one block)"), which `problemsFrom` completes with the field and what was found there.
 */
export function quantity(facts: QuantityFacts) {
  const expectation = `a number ${rangeInWords(facts)} (${facts.what})`;
  return z
    .number({ error: expectation })
    .min(facts.low, { error: expectation })
    .max(facts.high, { error: expectation })
    .meta({ description: `${facts.what}, ${rangeInWords(facts)}`, quantity: facts });
}

/** A whole number with a closed range. */
export function count(facts: Omit<QuantityFacts, "unit">) {
  const full = { unit: "", ...facts };
  const expectation = `a whole number ${rangeInWords(full)} (${facts.what})`;
  return z
    .number({ error: expectation })
    .int({ error: expectation })
    .min(facts.low, { error: expectation })
    .max(facts.high, { error: expectation })
    .meta({ description: `${facts.what}, ${rangeInWords(full)}`, quantity: full });
}

/** A share of a whole, 0…1; percent exists on screens only. */
export function share(what: string, low = 0, high = 1, usual: Pick<QuantityFacts, "typical" | "why"> = {}) {
  return quantity({ unit: "", low, high, what: `${what}, as a share of 1`, ...usual });
}

/** A short piece of text, trimmed of nothing: what the user wrote stays. */
export function text(what: string, longest = 200) {
  const expectation = `text of 1 to ${longest} characters (${what})`;
  return z
    .string({ error: expectation })
    .min(1, { error: expectation })
    .max(longest, { error: expectation })
    .meta({ description: what });
}

/** A name that other parts of the document refer to. */
export function id(what: string) {
  const expectation = `a short name of letters, digits and dashes (${what})`;
  return z
    .string({ error: expectation })
    .regex(/^[A-Za-z0-9][A-Za-z0-9-]{0,39}$/, { error: expectation })
    .meta({ description: what });
}

/** One of a few words. */
export function word<const Words extends readonly [string, ...string[]]>(words: Words, what: string) {
  return z.enum(words, { error: `one of ${words.join(", ")} (${what})` }).meta({ description: what });
}

/** The word by which one kind of a thing is told from the others. */
export function kind<const Word extends string>(is: Word, of: string) {
  return z.literal(is).meta({ label: "Kind", description: `which kind of ${of}`, isPlain: true });
}
