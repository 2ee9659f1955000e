import zoneAtPosition from "@photostructure/tz-lookup";
import { wrapLongitudeDeg } from "../angle.ts";
import type { ScenarioInput } from "./scenario.ts";

/** The zone whose clocks are kept at a position; coarse at borders and at sea. @throws RangeError where there is no such position */
export function zoneAt(latitudeDeg: number, longitudeDeg: number): string {
  return zoneAtPosition(latitudeDeg, wrapLongitudeDeg(longitudeDeg));
}

/**
 * Writes the zone of its place into a document that leaves it open. What has no position that could be looked up is left as it is: reading says
 * what is wrong with it. The table is 30 kB of gzip, so the page fetches this file where a document needs it.
 */
export function withZone<Document>(document: Document): Document {
  const { place } = (document ?? {}) as Partial<ScenarioInput>;
  if (typeof place !== "object" || place === null || place.zone !== undefined) return document;
  const { latitudeDeg, longitudeDeg } = place;
  const isOnEarth = Math.abs(latitudeDeg) <= 90 && longitudeDeg >= -180 && longitudeDeg <= 360;
  if (typeof latitudeDeg !== "number" || typeof longitudeDeg !== "number" || !isOnEarth) return document;
  return { ...document, place: { ...place, zone: zoneAt(latitudeDeg, longitudeDeg) } };
}
