import type { Place } from "./place.ts";

/** The zone that a place's clocks keep. Reading has written it in where it was left open. @throws RangeError where it is missing */
export function zoneOf({ zone, name }: Place): string {
  if (zone === undefined)
    throw new RangeError(`the zone of ${name} must be known; read the scenario with readScenario`);
  return zone;
}
