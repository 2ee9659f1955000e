import type { Town, TownHeight } from "../../engine/towns/index.ts";
import { displayUnit, toDisplay } from "../../engine/words/displayUnits.ts";
import { figure } from "../../engine/words/numbers.ts";

/** What the licence asks for: who gave the towns, and under what. */
export const TOWNS_CREDIT = "Towns: GeoNames, CC BY 4.0";

let names: Intl.DisplayNames | undefined;

/** The English name of a country by its code; the code where the browser knows none. */
export function countryName(code: string): string {
  names ??= new Intl.DisplayNames("en", { type: "region", fallback: "code" });
  try {
    return names.of(code) ?? code;
  } catch {
    return code;
  }
}

/** "Illinois, United States": where a town is. A region that is called as the town is not said. */
export function whereWords({ name, region, countryCode }: Town): string {
  return [region === name ? "" : region, countryName(countryCode)].filter((part) => part !== "").join(", ");
}

const metres = (m: number) => figure(Math.round(toDisplay(m, "m") / 10) * 10);

/** Towns whose heights lie farther apart than this say little about the ground between them, m. */
const APART_M = 150;

/** What a height that was taken from towns is, in words. */
export function heightWords(height: TownHeight | null): string {
  if (height === null) return "No town of known height is within 40 km: put in your own.";
  const { heightM, lowM, highM } = height;
  const apart = highM - lowM > APART_M ? ` (they lie between ${metres(lowM)} and ${metres(highM)})` : "";
  return `About ${metres(heightM)} ${displayUnit("m")}, as the nearest towns${apart}; put in your own.`;
}
