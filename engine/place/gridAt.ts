import { wrapLongitudeDeg } from "../angle.ts";
import { EngineFault } from "../fault.ts";
import type { ClimateTables, ClimateWorld, GridTile } from "./climateTables.ts";

/** One of the four cells round a place: its tile, its number in there, and how much it counts. */
interface Corner {
  readonly tile: number;
  readonly cell: number;
  readonly weight: number;
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
 * @throws EngineFault if the tables were fetched for places elsewhere
 */
export function gridAt(
  tables: ClimateTables,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number | null,
): GridClimate {
  const { world } = tables;
  const corners = cornersAt(world, latitudeDeg, longitudeDeg);
  const groundM = blend(tables, "z", corners, 1, 0) ?? 0;
  const cooler = world.lapseCPerM * ((elevationM ?? groundM) - groundM);
  const months = Array.from({ length: 12 }, (_, month) => month);
  return {
    kt: months.map((month) => blend(tables, "kt", corners, 12, month)),
    tmaxC: months.map((month) => (blend(tables, "tmax", corners, 12, month) ?? 0) + cooler),
    tminC: months.map((month) => (blend(tables, "tmin", corners, 12, month) ?? 0) + cooler),
    groundM,
  };
}

/** The four cells round a place: south-west, south-east, north-west, north-east. */
export function cornersAt(world: ClimateWorld, latitudeDeg: number, longitudeDeg: number): Corner[] {
  const y = Math.max(0, Math.min(world.rows - 1, (latitudeDeg - world.lat0) / world.step));
  const x = (wrapLongitudeDeg(longitudeDeg) - world.lon0) / world.step;
  const row = Math.min(Math.floor(y), world.rows - 2);
  const col = Math.floor(x);
  const up = y - row;
  const right = x - col;
  const west = (col + world.cols) % world.cols;
  const east = (west + 1) % world.cols;
  return [
    cornerOf(world, row, west, (1 - up) * (1 - right)),
    cornerOf(world, row, east, (1 - up) * right),
    cornerOf(world, row + 1, west, up * (1 - right)),
    cornerOf(world, row + 1, east, up * right),
  ];
}

function cornerOf({ cols, tileCells }: ClimateWorld, row: number, col: number, weight: number): Corner {
  const tile = Math.floor(row / tileCells) * Math.ceil(cols / tileCells) + Math.floor(col / tileCells);
  return { tile, cell: (row % tileCells) * tileCells + (col % tileCells), weight };
}

function blend(
  { world, tiles }: ClimateTables,
  name: keyof GridTile,
  corners: readonly Corner[],
  months: number,
  month: number,
): number | null {
  const { scale, offset, missing } = world[name];
  let sum = 0;
  let weights = 0;
  for (const { tile, cell, weight } of corners) {
    const here = tiles.get(tile);
    if (here === undefined) throw new EngineFault(`tile ${tile} of the world grid is not here`);
    const byte = here[name][cell * months + month]!;
    if (byte === missing) continue;
    sum += weight * (byte * scale + offset);
    weights += weight;
  }
  return weights > 0 ? sum / weights : null;
}
