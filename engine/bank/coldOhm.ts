import type { ChemistryData } from "./chemistryData.ts";

/** Temperature at which resistances are stated, and 0 °C on the absolute scale. */
const STATED_C = 25;
const ABSOLUTE_C = 273.15;
/** Hot lead charges more easily, but no curve says for how long: the fall with warmth stops here (our choice, no source). */
const LEAST_COLD = 0.5;

/**
 * Resistance of the cells over that at 25 °C. Lithium follows Arrhenius; lead rises by a share of that at 25 °C for each kelvin below it.
 * @returns 1 at 25 °C, more in the cold
 */
export function coldOhm(cold: ChemistryData["internalCold"], tempC: number): number {
  if ("arrheniusK" in cold) return Math.exp(cold.arrheniusK * (1 / (tempC + ABSOLUTE_C) - 1 / (STATED_C + ABSOLUTE_C)));
  return Math.max(LEAST_COLD, 1 + cold.perKBelow25 * (STATED_C - tempC));
}
