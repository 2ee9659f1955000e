import type { Models } from "../scenario/models.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";

type Cooling = NonNullable<PanelGroup["cooling"]>;

/**
 * Faiman's two coefficients, W/(m² K) and W s/(m³ K). Open rack: his own field mean. The other two are fitted here to
 * King's curves for the same mountings over 0…8 m/s (within 0.6 K at 1000 W/m²), since Faiman measured open racks only;
 * the one for a panel on a roof gives 57.6 K at 1000 W/m² and 1 m/s, beside 56.3 K by Ross's k = 0.0563 K m²/W for a
 * panel with no air behind it (Skoplaki & Palyvos, Renewable Energy 34 (2009) 23–29).
 */
const FAIMAN: Readonly<Record<Cooling, { readonly u0: number; readonly u1: number }>> = {
  openRack: { u0: 25, u1: 6.84 },
  closeRoof: { u0: 19.13, u1: 1.052 },
  onRoof: { u0: 16.46, u1: 0.893 },
};

/** King's a, b and the step from the module's back to its cells, K at 1000 W/m². */
const SANDIA: Readonly<Record<Cooling, { readonly a: number; readonly b: number; readonly deltaK: number }>> = {
  openRack: { a: -3.56, b: -0.075, deltaK: 3 },
  closeRoof: { a: -2.98, b: -0.0471, deltaK: 1 },
  onRoof: { a: -2.81, b: -0.0455, deltaK: 0 },
};

/**
 * How much warmer than the air the cells get for each W/m² on the panel, K m²/W. Both published forms are proportional
 * to the light, so this is all that the steps need to know of the wind. Real modules differ by 3 to 5 K.
 * @param windMs wind at the panel, m/s, 0 or more
 * @throws RangeError if the wind is negative or not a number
 * @see D. Faiman, Progress in Photovoltaics 16 (2008) 307–315 (faiman); D. King et al., Sandia report SAND2004-3535,
 *   2004 (sandia; coefficients from memory)
 */
export function heatKPerWm2(model: Models["cellTemperature"], cooling: Cooling, windMs: number): number {
  if (!(windMs >= 0)) throw new RangeError(`windMs must be 0 or more, got ${windMs}`);
  if (model === "faiman") {
    const { u0, u1 } = FAIMAN[cooling];
    return 1 / (u0 + u1 * windMs);
  }
  const { a, b, deltaK } = SANDIA[cooling];
  return Math.exp(a + b * windMs) + deltaK / 1000;
}
