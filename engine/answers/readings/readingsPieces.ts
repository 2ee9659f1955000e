import { MOST_READINGS } from "../notebookLimits.ts";

/** A document of readings as several, where there are more than one entry may hold. */
export function readingsPieces(doc: unknown): readonly object[] {
  const fields = { ...(doc as { readonly readings?: unknown } | null) };
  const { readings } = fields;
  if (!Array.isArray(readings)) return [];
  const count = Math.ceil(readings.length / MOST_READINGS);
  const from = (k: number) => readings.slice(k * MOST_READINGS, (k + 1) * MOST_READINGS);
  return Array.from({ length: count }, (_, k) => ({ ...fields, readings: from(k) }));
}
