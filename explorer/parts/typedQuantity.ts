import { fromTyped } from "../../engine/words/displayUnits.ts";

/**
 * A number as somebody types it: "280", "27,5", "100 W", "1.5 kW", "−3"; what cannot be read stays text.
 * @param unit the field's unit; it may be typed behind the number, with a k before it for thousands
 */
export function typedQuantity(text: string, unit: string): number | string {
  const found = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?)\s*(\S[\s\S]*)?$/i.exec(
    text
      .trim()
      .replaceAll("\u2212", "-")
      .replaceAll(/[\u202f\u00a0]/g, "")
      .replace(",", "."),
  );
  if (found === null) return text;
  const value = Number(found[1]);
  const behind = found[2]?.trim().toLowerCase();
  if (behind === undefined || behind === unit.toLowerCase()) return value;
  if (unit.length <= 2 && behind === `k${unit.toLowerCase()}`) return Number((value * 1000).toPrecision(12));
  return text;
}

/** A number with another unit of the same kind behind it ("12 ft", "50 °F"), in the document's unit; null where there is none. */
export function typedWithUnit(text: string, unit: string): number | null {
  const whole = text.trim();
  // From the last figure on: what stands behind it is the unit.
  let end = whole.length;
  while (end > 0 && !/\d/.test(whole[end - 1]!)) end--;
  if (end === 0) return null;
  if (whole[end] === ".") end++;
  const behind = whole.slice(end).trim();
  const value = behind === "" ? null : typedQuantity(whole.slice(0, end), "");
  return typeof value === "number" ? fromTyped(value, behind, unit) : null;
}

/** The amount by which an arrow key moves a number: a tenth of its size, in whole steps of 1, 2 or 5. */
export function arrowStep(value: number, facts: { unit: string; low: number; high: number }, isWhole: boolean): number {
  if (isWhole) return 1;
  if (facts.unit === "%") return 1;
  if (facts.unit === "°") return facts.low < 0 ? 0.1 : 5;
  const size = Math.max(Math.abs(value), (facts.high - facts.low) / 1000);
  return 10 ** (Math.floor(Math.log10(size)) - 1) * (size / 10 ** Math.floor(Math.log10(size)) >= 5 ? 5 : 1);
}
