/** A number as somebody types it: "280", "27,5"; what cannot be read stays text. */
export function typedNumber(text: string): number | string {
  const trimmed = text.trim().replace(",", ".");
  return trimmed !== "" && Number.isFinite(Number(trimmed)) ? Number(trimmed) : text;
}
