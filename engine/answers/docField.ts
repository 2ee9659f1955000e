import * as z from "zod";
import type { QuantityFacts } from "../scenario/quantity.ts";

/** A number that an entry's document holds, as it stands in the schema's meta: views, sentences and tests read it there. */
export interface DocNumber extends QuantityFacts {
  readonly label: string;
  /** What stands for it where it is left out. */
  readonly leftOut?: string;
}

/** A number of an entry's document, within its range. */
export function docNumber({ label, leftOut, ...facts }: DocNumber) {
  const { low, high, unit, what } = facts;
  const expectation = `a number from ${low} to ${high}${unit === "" ? "" : ` ${unit}`} (${what})`;
  return z
    .number({ error: expectation })
    .min(low, { error: expectation })
    .max(high, { error: expectation })
    .meta({ label, description: what, quantity: facts, ...(leftOut === undefined ? {} : { leftOut }) });
}

/** The numbers of an entry's document, by their field's name, in their order. */
export function numbersOf<Shape extends z.ZodRawShape>(doc: z.ZodObject<Shape>) {
  return Object.entries(doc.shape).flatMap(([field, schema]) => {
    const { label, leftOut, quantity } = metaOf(schema as z.ZodType);
    if (label === undefined || quantity === undefined) return [];
    return [
      { field: field as keyof Shape & string, label, ...(leftOut === undefined ? {} : { leftOut }), ...quantity },
    ];
  });
}

/** What a field's schema says of it, whether the field may be left out or not. */
function metaOf(schema: z.ZodType): Partial<DocNumber> & { readonly quantity?: QuantityFacts } {
  const inner = schema instanceof z.ZodOptional || schema instanceof z.ZodDefault ? schema.unwrap() : schema;
  return { ...((inner as z.ZodType).meta() ?? {}), ...(schema.meta() ?? {}) };
}
