import type { MeterQuantity } from "./meterMapping.ts";

/** What each quantity is kept in. */
const KEPT_IN: Readonly<Record<MeterQuantity, string>> = {
  charge: "%",
  bankV: "V",
  bankA: "A",
  bankW: "W",
  pvW: "W",
  loadW: "W",
  loadA: "A",
  usedAh: "Ah",
};
const PREFIXES: Readonly<Record<string, number>> = { "": 1, m: 0.001, k: 1000, M: 1e6, µ: 1e-6, u: 1e-6 };
/** Case tells milli from mega, so it counts; only a lower-case unit that can mean nothing else is taken as written. */
const UNIT = /^([mkMµu]?)(Ah|Wh|[AVW]|ah|wh|[avw])$/;
/** Where a title says its unit: in brackets, or after a space, a comma, a slash or an underscore at its end. */
const IN_BRACKETS = /[([]\s{0,3}([^\s()[\]]{1,5})\s{0,3}[)\]]/g;
const AT_END = /(?:^|[\s,/_])([A-Za-zµ%]{1,3})$/;

/** A unit as written, and what its numbers are times to be in the quantity's own; null where the two have nothing to do with one another. */
export function unitFactor(unit: string, quantity: MeterQuantity): number | null {
  if (unit === "%") return quantity === "charge" ? 1 : null;
  const [, prefix, base] = UNIT.exec(unit) ?? [];
  if (prefix === undefined || base === undefined) return null;
  const written = base.length === 2 ? `${base[0]!.toUpperCase()}h` : base.toUpperCase();
  return written === KEPT_IN[quantity] ? PREFIXES[prefix]! : null;
}

/** Whether a text is a unit that a meter writes, such as mA, kWh, % or °C. */
export const isUnit = (text: string): boolean => UNIT.test(text) || /^(%|s|min|h|Hz|rpm|°[CF]|VA|var)$/i.test(text);

/** The unit that a title names; null where it names none. */
export function unitOf(title: string): string | null {
  const bracketed = [...title.matchAll(IN_BRACKETS)].map(([, inside]) => inside!).find(isUnit);
  if (bracketed !== undefined) return bracketed;
  const last = AT_END.exec(title.trim())?.[1];
  return last !== undefined && isUnit(last) ? last : null;
}

/** What a quantity is kept in. */
export const keptIn = (quantity: MeterQuantity): string => KEPT_IN[quantity];
