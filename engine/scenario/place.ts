import * as z from "zod";
import { quantity, text } from "./quantity.ts";

/** Zones that were found to be some: looking one up takes a quarter of all the reading of a scenario, and there are some hundreds of them. */
const knownZones = new Set<string>();

function isZone(zone: string): boolean {
  if (knownZones.has(zone)) return true;
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
  } catch {
    return false;
  }
  if (!/^[A-Za-z]/.test(zone)) return false;
  knownZones.add(zone);
  return true;
}

/** Where the station stands. */
export const Place = z
  .strictObject({
    name: text("what people call the place").meta({ label: "Place", isPlain: true }),
    latitudeDeg: quantity({ unit: "°", low: -90, high: 90, what: "latitude, north positive" }).meta({
      label: "Latitude",
      isPlain: true,
      change: { changed: "at {name}", tellsPart: true },
    }),
    longitudeDeg: quantity({ unit: "°", low: -180, high: 360, what: "longitude, east positive" }).meta({
      label: "Longitude",
      isPlain: true,
      change: { changed: "at {name}", tellsPart: true },
    }),
    elevationM: quantity({ unit: "m", low: -450, high: 6000, what: "height above the sea" })
      .default(0)
      .meta({ label: "Height above the sea", isPlain: true }),
    zone: z
      .string({ error: 'a time zone, such as "Europe/Oslo"' })
      .refine(isZone, {
        error: 'a time zone of the IANA list, such as "Europe/Oslo" or "America/Denver"',
        params: { expectation: true },
      })
      .optional()
      .meta({ label: "Time zone", description: "IANA time zone; taken from the position when left out" }),
  })
  .meta({ title: "Place", description: "Where the station stands." });
export type Place = z.infer<typeof Place>;
