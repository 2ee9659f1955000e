import { figure, THIN } from "./numbers.ts";

export const UNIT_SYSTEMS = { metric: "metres, kg, °C", imperial: "feet, lb, °F" } as const;
export type UnitSystem = keyof typeof UNIT_SYSTEMS;

interface Shown {
  readonly unit: string;
  /** How many of it make one of ours, and what has to be added then. */
  readonly per: number;
  readonly plus: number;
}

/**
 * What each unit of the documents is shown as elsewhere. Exact by definition: foot 0.3048 m, mile 1609.344 m, pound 0.45359237 kg.
 * @see NIST Special Publication 811 (2008), appendix B.8
 */
const IMPERIAL: Readonly<Record<string, Shown>> = {
  m: { unit: "ft", per: 1 / 0.3048, plus: 0 },
  km: { unit: "mi", per: 1 / 1.609344, plus: 0 },
  kg: { unit: "lb", per: 1 / 0.45359237, plus: 0 },
  "m/s": { unit: "mph", per: 3600 / 1609.344, plus: 0 },
  "°C": { unit: "°F", per: 1.8, plus: 32 },
};

/** What people type behind a number besides, in the unit of the documents. */
const SPELLINGS: Readonly<Record<string, readonly string[]>> = {
  m: ["m", "metre", "metres", "meter", "meters"],
  ft: ["ft", "foot", "feet", "'", "′"],
  km: ["km"],
  mi: ["mi", "mile", "miles"],
  kg: ["kg"],
  lb: ["lb", "lbs", "pound", "pounds"],
  "m/s": ["m/s"],
  mph: ["mph"],
  "°C": ["°c", "c"],
  "°F": ["°f", "f"],
};

let chosen: () => UnitSystem = () => "metric";

/** Says where to look up which units are shown; on the page that is a signal, so that words change with it. */
export function showUnits(choice: () => UnitSystem): void {
  chosen = choice;
}

const shownAs = (unit: string): Shown | undefined => (chosen() === "imperial" ? IMPERIAL[unit] : undefined);

/** The unit in which values of a document's unit are shown. */
export const displayUnit = (unit: string) => shownAs(unit)?.unit ?? unit;

/** A document's value as it is shown; four figures are plenty for what was measured with a tape. */
export function toDisplay(value: number, unit: string): number {
  const shown = shownAs(unit);
  return shown === undefined ? value : Number((value * shown.per + shown.plus).toPrecision(4));
}

/** A value that was typed as it is shown, in the document's unit. */
export function fromDisplay(value: number, unit: string): number {
  const shown = shownAs(unit);
  return shown === undefined ? value : inOurs(value, shown);
}

/** A value that was typed with a unit of its own behind it; null where that is no unit of the same kind. */
export function fromTyped(value: number, typedUnit: string, unit: string): number | null {
  const is = (name: string) => SPELLINGS[name]?.includes(typedUnit.trim().toLowerCase()) === true;
  if (is(unit)) return value;
  const other = IMPERIAL[unit];
  return other !== undefined && is(other.unit) ? inOurs(value, other) : null;
}

const inOurs = (value: number, { per, plus }: Shown) => Number(((value - plus) / per).toPrecision(7));

/** "3.7 m" or "12.1 ft": a document's value with its unit. */
export function inUnits(value: number, unit: string, decimals = 1): string {
  return `${figure(toDisplay(value, unit), decimals)}${THIN}${displayUnit(unit)}`;
}

/** The same for a difference, in which no zero point counts. */
export function differenceInUnits(value: number, unit: string, decimals = 1): string {
  const shown = shownAs(unit);
  return `${figure(value * (shown?.per ?? 1), decimals)}${THIN}${shown?.unit ?? unit}`;
}
