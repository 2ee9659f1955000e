import { climateAt } from "./climateAt.ts";
import type { ClimateTables } from "./climateTables.ts";

/**
 * How far records lie below the rule where they lie lowest, K: with it nine in ten of the station records that it was held against are
 * warmer (`tests/truth/place/recordCold.test.ts`).
 */
const RECORD_BELOW_RULE_K = 9;

/**
 * The coldest morning that a place is likely to have on record, °C. Our climate tables carry no extremes, so it is estimated from the mean of the
 * coldest month: 0.006 T² + 1.316 T − 21.9, the rule by which BIOME4 fills in an absolute minimum, lowered by what records fall short of it.
 * @param elevationM null takes the ground of the grid
 * @returns null south of 58.5° S, where there are no data
 * @see Kaplan and others, “Climate change and Arctic ecosystems 2”, J. Geophys. Res. 108 (2003), after Prentice and others, “A global biome model
 *   based on plant physiology and dominance, soil properties and climate”, J. Biogeography 19 (1992): the formula as public notes on the model give it
 */
export function recordColdC(
  tables: ClimateTables,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number | null,
): number | null {
  const found = climateAt(tables, latitudeDeg, longitudeDeg, elevationM);
  if (!found.ok) return null;
  const { tmaxC, tminC } = found.climate;
  const coldestC = Math.min(...tminC.map((min, month) => (min + tmaxC[month]!) / 2));
  return absoluteMinimumC(coldestC) - RECORD_BELOW_RULE_K;
}

/** The rule itself. It turns round below −110 °C, where no place is. */
export function absoluteMinimumC(coldestMonthC: number): number {
  return 0.006 * coldestMonthC * coldestMonthC + 1.316 * coldestMonthC - 21.9;
}
