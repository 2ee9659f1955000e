import { EngineFault } from "../fault.ts";

/** Twelve monthly values, January first; null where the month has no light to speak of or the source has no value. */
export type Monthly = readonly (number | null)[];

/** What is known of the climate at one place: a station, or a cell of a finer grid. */
export interface ClimateStation {
  readonly id: string;
  readonly name: string;
  readonly country: string;
  readonly lat: number;
  readonly lon: number;
  /** Height, m; null for grid cells. */
  readonly elev: number | null;
  /** Key of `licences`. */
  readonly src: string;
  /** Years behind the numbers; 1 for a typical year put together from many. */
  readonly years: number;
  /** Daily clearness GHI / H0: mean, standard deviation within a month, correlation from day to day. */
  readonly kt: Monthly;
  readonly sd: Monthly;
  readonly r1: Monthly;
  /** Mean daily maximum and minimum, °C. */
  readonly tmax: Monthly;
  readonly tmin: Monthly;
  /** Mean wind at about 10 m, m/s. */
  readonly wind: Monthly;
}

/** How one quantity of the world grid is written as bytes: value = byte × scale + offset. */
export interface GridLayer {
  readonly scale: number;
  readonly offset: number;
  /** The byte that stands for "no value". */
  readonly missing?: number;
}

/** A square of the world grid, row by row from its south-western cell; 12 months a cell (`z` has one). */
export interface GridTile {
  readonly kt: Uint8Array;
  readonly tmax: Uint8Array;
  readonly tmin: Uint8Array;
  /** Smoothed height of the ground. */
  readonly z: Uint8Array;
}

/** Monthly normals of the world in 3° cells, west to east, then south to north, cut into tiles. */
export interface ClimateWorld {
  readonly lat0: number;
  readonly lon0: number;
  readonly step: number;
  readonly rows: number;
  readonly cols: number;
  /** Cells along a tile's side; the northernmost tiles have fewer rows. */
  readonly tileCells: number;
  readonly kt: GridLayer;
  readonly tmax: GridLayer;
  readonly tmin: GridLayer;
  /** Height of the ground, m. */
  readonly z: GridLayer;
  /** °C for each metre above `z`. */
  readonly lapseCPerM: number;
  readonly gridLicences: readonly string[];
  readonly stationLicences: Readonly<Record<string, string>>;
  /** Latitude and longitude of every station, whether its tile is here or not. */
  readonly stationPlaces: readonly (readonly [number, number])[];
}

/** What the project knows of the world's climate, or as much of it as some places need. */
export interface ClimateTables {
  readonly world: ClimateWorld;
  /** By their numbers. */
  readonly tiles: ReadonlyMap<number, GridTile>;
  /** Those that stand in the tiles, in the order of the world's. */
  readonly stations: readonly ClimateStation[];
}

/** A tile of `engine/place/data/tiles` as parsed JSON. */
export interface StoredTile {
  readonly kt: string;
  readonly tmax: string;
  readonly tmin: string;
  readonly z: string;
  readonly stations: readonly ClimateStation[];
}

/**
 * Puts tables together from tiles.
 * @param stored the tiles by their numbers
 * @param homes the tile of each of the world's stations
 * @throws EngineFault if a tile is not what this version of the engine expects; they ship with it
 */
export function climateTables(
  world: ClimateWorld,
  stored: ReadonlyMap<number, StoredTile>,
  homes: readonly number[],
): ClimateTables {
  const stationsOf = new Map([...stored].map(([number, { stations }]) => [number, stations.values()]));
  const tiles = new Map([...stored].map(([number, tile]) => [number, gridTile(tile, number)]));
  const stations = homes.flatMap((home) => stationsOf.get(home)?.next().value ?? []);
  return { world, tiles, stations };
}

function gridTile({ kt, tmax, tmin, z }: StoredTile, number: number): GridTile {
  const ground = bytesOfBase64(z);
  const monthly = [kt, tmax, tmin].map(bytesOfBase64) as [Uint8Array, Uint8Array, Uint8Array];
  if (monthly.some(({ length }) => length !== 12 * ground.length)) {
    throw new EngineFault(`tile ${number} of the world grid does not hold twelve months for each of its cells`);
  }
  return { kt: monthly[0], tmax: monthly[1], tmin: monthly[2], z: ground };
}

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** The engine has neither `atob` (browser) nor `Buffer` (Node) to lean on. RFC 4648, section 4. */
function bytesOfBase64(text: string): Uint8Array {
  const body = text.replace(/=+$/, "");
  const bytes = new Uint8Array(Math.floor((body.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (const letter of body) {
    held = ((held << 6) | ALPHABET.indexOf(letter)) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at++] = (held >> bits) & 0xff;
    }
  }
  return bytes;
}
