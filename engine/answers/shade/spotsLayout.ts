import type { SpotsPicture } from "./spotsPicture.ts";

/** A map of spots to scale, north up. */
export interface SpotsLayout {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerM: number;
  readonly x: (eastM: number) => number;
  readonly y: (northM: number) => number;
  /** The place under a point of the map. */
  readonly at: (xPx: number, yPx: number) => { readonly eastM: number; readonly northM: number };
}

/** A map no wider and no higher than that. */
export function spotsLayout({ window }: Pick<SpotsPicture, "window">, mostPx: number, highestPx: number): SpotsLayout {
  const { westM, eastM, southM, northM } = window;
  const pxPerM = Math.min(mostPx / (eastM - westM), highestPx / (northM - southM));
  return {
    widthPx: (eastM - westM) * pxPerM,
    heightPx: (northM - southM) * pxPerM,
    pxPerM,
    x: (east) => (east - westM) * pxPerM,
    y: (north) => (northM - north) * pxPerM,
    at: (xPx, yPx) => ({ eastM: westM + xPx / pxPerM, northM: northM - yPx / pxPerM }),
  };
}
