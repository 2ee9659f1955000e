/** Where the device says it is, or why not, in words. */
export type DevicePosition =
  | { readonly ok: true; readonly latitudeDeg: number; readonly longitudeDeg: number; readonly accuracyM: number }
  | { readonly ok: false; readonly why: string };

const OTHERWISE = "Search for a town, or use the map.";
/** Patience, ms: a receiver under a roof may need most of it. */
const PATIENCE_MS = 20_000;
/** Older positions than this are asked for again, ms. */
const OLDEST_MS = 600_000;

const REFUSALS: Readonly<Record<number, string>> = {
  1: `The browser may not tell this page where it is. Allow it in the browser's settings for this page. ${OTHERWISE}`,
  2: `The device does not know where it is just now. ${OTHERWISE}`,
  3: `The device did not find out where it is within 20 seconds. Try again in the open. ${OTHERWISE}`,
};

/**
 * Asks the device once where it is; the browser asks whoever holds it.
 * @param device the browser's `navigator.geolocation`; undefined where there is none
 * @see W3C Geolocation, codes of a GeolocationPositionError
 */
export function devicePosition(device: Geolocation | undefined): Promise<DevicePosition> {
  if (device === undefined)
    return Promise.resolve({ ok: false, why: `This browser cannot tell where the device is. ${OTHERWISE}` });
  return new Promise((resolve) => {
    device.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) =>
        resolve(
          Number.isFinite(latitude) && Number.isFinite(longitude)
            ? { ok: true, latitudeDeg: latitude, longitudeDeg: longitude, accuracyM: accuracy }
            : { ok: false, why: REFUSALS[2]! },
        ),
      ({ code }) => resolve({ ok: false, why: REFUSALS[code] ?? REFUSALS[2]! }),
      { enableHighAccuracy: false, timeout: PATIENCE_MS, maximumAge: OLDEST_MS },
    );
  });
}

/** How sure a position is, in words. The place is kept to 0.01°, which is 1.1 km north and south. */
export function accuracyWords(accuracyM: number): string {
  if (!Number.isFinite(accuracyM) || accuracyM < 0) return "The device does not say how exactly.";
  if (accuracyM > 20_000)
    return `To about ${Math.round(accuracyM / 1000)} km only, which is far off for a climate: look at it on the map.`;
  if (accuracyM >= 1000) return `To about ${Math.round(accuracyM / 1000)} km, which is enough for a climate.`;
  return `To about ${Math.max(1, Math.round(accuracyM))} m; kept to 0.01°, about 1 km.`;
}
