import { wrapLongitudeDeg } from "../angle.ts";
import type { ClimateWorld, GridLayer } from "./climateTables.ts";

/** The four cells round a place and how much each counts. */
interface Corners {
  readonly cell: readonly number[];
  readonly weight: readonly number[];
}

/** What the world grid says of a place, before any station is asked; monthly, January first. */
export interface GridClimate {
  /** Mean clearness; null where the month has next to no light. */
  readonly kt: (number | null)[];
  /** Mean daily maximum and minimum at the place's own height, °C. */
  readonly tmaxC: number[];
  readonly tminC: number[];
  /** Smoothed height of the ground in the grid, m. */
  readonly groundM: number;
}

/**
 * Reads the grid at a place: bilinear between the four nearest cell centres, round the world in longitude, leaving out
 * missing values and sharing their weight among the rest. Polewards of the last row the last row holds.
 * @param elevationM height of the place; null takes the grid's own
 */
export function gridAt(
  world: ClimateWorld,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number | null,
): GridClimate {
  const corners = cornersAt(world, latitudeDeg, longitudeDeg);
  const groundM = blend(world.z, corners, 1, 0) ?? 0;
  const cooler = world.lapseCPerM * ((elevationM ?? groundM) - groundM);
  const months = Array.from({ length: 12 }, (_, month) => month);
  return {
    kt: months.map((month) => blend(world.kt, corners, 12, month)),
    tmaxC: months.map((month) => (blend(world.tmax, corners, 12, month) ?? 0) + cooler),
    tminC: months.map((month) => (blend(world.tmin, corners, 12, month) ?? 0) + cooler),
    groundM,
  };
}

function cornersAt(world: ClimateWorld, latitudeDeg: number, longitudeDeg: number): Corners {
  const y = Math.max(0, Math.min(world.rows - 1, (latitudeDeg - world.lat0) / world.step));
  const x = (wrapLongitudeDeg(longitudeDeg) - world.lon0) / world.step;
  const row = Math.min(Math.floor(y), world.rows - 2);
  const col = Math.floor(x);
  const up = y - row;
  const right = x - col;
  const west = (col + world.cols) % world.cols;
  const east = (west + 1) % world.cols;
  return {
    cell: [
      row * world.cols + west,
      row * world.cols + east,
      (row + 1) * world.cols + west,
      (row + 1) * world.cols + east,
    ],
    weight: [(1 - up) * (1 - right), (1 - up) * right, up * (1 - right), up * right],
  };
}

function blend(layer: GridLayer, corners: Corners, months: number, month: number): number | null {
  let sum = 0;
  let weights = 0;
  for (let i = 0; i < 4; i++) {
    const byte = layer.bytes[corners.cell[i]! * months + month]!;
    if (byte === layer.missing) continue;
    sum += corners.weight[i]! * (byte * layer.scale + layer.offset);
    weights += corners.weight[i]!;
  }
  return weights > 0 ? sum / weights : null;
}
