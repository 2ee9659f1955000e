import zoneAtPosition from "@photostructure/tz-lookup";
import { wrapLongitudeDeg } from "../angle.ts";
import type { Place } from "./place.ts";

/** The zone that a place's clocks keep: as written, or looked up from the position (coarse at borders and at sea). */
export function zoneOf(place: Place): string {
  return place.zone ?? zoneAtPosition(place.latitudeDeg, wrapLongitudeDeg(place.longitudeDeg));
}
