import { zoneAt } from "#zoneTable";
import { wrapLongitudeDeg } from "../angle.ts";
import type { Place } from "./place.ts";

/** The zone that a place's clocks keep: as written, or looked up from the position (coarse at borders and at sea). */
export function zoneOf(place: Place): string {
  return place.zone ?? zoneAt(place.latitudeDeg, wrapLongitudeDeg(place.longitudeDeg));
}
