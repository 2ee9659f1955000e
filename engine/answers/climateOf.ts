import type { ClimateTables } from "../place/climateTables.ts";
import { loadClimateNear, loadClimateTables } from "../place/loadClimateTables.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { SizeWish } from "../size/sizeAxis.ts";

/** What of the climate tables some scenarios need; a map that moves its place may ask about anywhere. */
export function climateOf(
  scenarios: readonly Scenario[],
  axes: readonly (SizeWish | null)[] = [],
): Promise<ClimateTables> {
  if (axes.some((axis) => axis?.at.startsWith("place."))) return loadClimateTables();
  return loadClimateNear(scenarios.map(({ place }) => ({ lat: place.latitudeDeg, lon: place.longitudeDeg })));
}
