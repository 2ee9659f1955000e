import { type GeoProjection, geoAzimuthalEquidistant, geoNaturalEarth1 } from "d3";

export const MAP_PX = { width: 640, height: 330 } as const;

/** Kilometres across the drawing; null for the whole world. */
export const VIEWS = [
  { name: "world", acrossKm: null, stepDeg: 2 },
  { name: "region", acrossKm: 5000, stepDeg: 0.5 },
  { name: "nearby", acrossKm: 1200, stepDeg: 0.1 },
] as const;

/** The nearest view, which has towns. */
export const NEAREST = VIEWS.length - 1;

const EARTH_KM = 6371;
/** Nearer to an edge than this the middle moves along. */
const EDGE_PX = 40;

/** Degrees as they are typed: two places. */
export const rounded = (degrees: number) => Math.round(degrees * 100) / 100;
/** A longitude from −180 to 180. */
export const wrapped = (degrees: number) => ((((degrees + 180) % 360) + 360) % 360) - 180;

/** How a view lays the globe on the drawing: whole, or flat about a middle with true distances from it. */
export function mapProjection(view: number, [lon, lat]: readonly [number, number]): GeoProjection {
  const { width, height } = MAP_PX;
  const { acrossKm } = VIEWS[view]!;
  if (acrossKm === null)
    return geoNaturalEarth1().fitExtent(
      [
        [2, 2],
        [width - 2, height - 2],
      ],
      { type: "Sphere" },
    );
  return geoAzimuthalEquidistant()
    .rotate([-lon, -lat])
    .translate([width / 2, height / 2])
    .scale((width / acrossKm) * EARTH_KM)
    .clipExtent([
      [0, 0],
      [width, height],
    ]);
}

/** Whether a place lies on the drawing, and not at its very edge. */
export function isWellInside(at: readonly [number, number] | null): boolean {
  return (
    at !== null &&
    at[0] > EDGE_PX &&
    at[0] < MAP_PX.width - EDGE_PX &&
    at[1] > EDGE_PX &&
    at[1] < MAP_PX.height - EDGE_PX
  );
}

/** "47.37° N, 8.54° E" */
export function positionWords(latitudeDeg: number, longitudeDeg: number): string {
  const lon = wrapped(longitudeDeg);
  const north = `${rounded(Math.abs(latitudeDeg))}° ${latitudeDeg < 0 ? "S" : "N"}`;
  return `${north}, ${rounded(Math.abs(lon))}° ${lon < 0 ? "W" : "E"}`;
}
