import type { ClimateTables } from "../place/climateTables.ts";
import { loadClimateNear, loadClimateTables } from "../place/loadClimateTables.ts";
import type { Scenario } from "../scenario/scenario.ts";

/**
 * What of the climate tables some scenarios need; a map that moves its place may ask about anywhere.
 * @param varies paths of fields that are varied
 */
export function climateOf(scenarios: readonly Scenario[], varies: readonly string[] = []): Promise<ClimateTables> {
  if (varies.some((path) => path.startsWith("place."))) return loadClimateTables();
  return loadClimateNear(scenarios.map(({ place }) => ({ lat: place.latitudeDeg, lon: place.longitudeDeg })));
}
