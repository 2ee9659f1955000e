import tzLookup from "@photostructure/tz-lookup";
import { wrapLongitudeDeg } from "../angle.ts";
import { requireRange } from "../require.ts";

/**
 * The IANA time zone of a place, such as "Europe/Zurich"; a nautical zone ("Etc/GMT+3") at sea. Borders are coarse: within
 * a few kilometres of one, let the person choose.
 * @throws RangeError if the latitude leaves −90…90 or the longitude is not a finite number
 */
export function zoneAt(latitudeDeg: number, longitudeDeg: number): string {
  requireRange({ latitudeDeg }, -90, 90);
  requireRange({ longitudeDeg }, -Number.MAX_VALUE, Number.MAX_VALUE);
  return tzLookup(latitudeDeg, wrapLongitudeDeg(longitudeDeg));
}
