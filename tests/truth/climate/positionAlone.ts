import { climateAt, type SiteClimate } from "../../../engine/place/climateAt.ts";
import type { ClimateTables } from "../../../engine/place/climateTables.ts";
import { distanceKm } from "../../../engine/place/distanceKm.ts";
import type { MonthlyClearness } from "../../../engine/sky/dailyClearness.ts";
import { clearnessStatistics } from "./clearnessStatistics.ts";
import type { DrawnPlace } from "./drawnYears.ts";
import type { LongRecord } from "./longRecords.ts";

/** A station so near a record is the record itself, or the cell it was drawn from. */
const SAME_PLACE_KM = 30;

/** The climate of a record's place as its position alone gives it, with whatever stands for the record itself left out. */
export function positionAlone(
  tables: ClimateTables,
  { latitudeDeg, longitudeDeg, elevationM }: DrawnPlace,
): SiteClimate {
  const here = { lat: latitudeDeg, lon: longitudeDeg };
  const others = { ...tables, stations: tables.stations.filter((one) => distanceKm(here, one) > SAME_PLACE_KM) };
  const found = climateAt(others, latitudeDeg, longitudeDeg, elevationM);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.climate;
}

/** A record's own monthly figures, as somebody who has them would type them in. */
export function ownClimate({ years }: LongRecord): MonthlyClearness {
  const months = clearnessStatistics(years);
  return {
    kt: months.map((month) => month?.mean ?? 0.4),
    sd: months.map((month) => month?.sdWithin ?? 0.15),
    r1: months.map((month) => Math.max(0, month?.r[0] ?? 0.3)),
  };
}
