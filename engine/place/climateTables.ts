/** Twelve monthly values, January first; null where the month has no light to speak of or the source has no value. */
export type Monthly = readonly (number | null)[];

/** What is known of the climate at one place: a station, or a cell of a finer grid. */
export interface ClimateStation {
  readonly id: string;
  readonly name: string;
  readonly region: string | null;
  readonly country: string;
  readonly lat: number;
  readonly lon: number;
  /** Height, m; null for grid cells. */
  readonly elev: number | null;
  /** Key of `sources` and `licences`. */
  readonly src: string;
  /** Years behind the numbers; 1 for a typical year put together from many. */
  readonly years: number;
  /** Daily clearness GHI / H0: mean, standard deviation within a month, correlation from day to day, quantiles. */
  readonly kt: Monthly;
  readonly sd: Monthly;
  readonly r1: Monthly;
  readonly kt10: Monthly;
  readonly kt50: Monthly;
  readonly kt90: Monthly;
  /** Mean daily maximum and minimum, °C. */
  readonly tmax: Monthly;
  readonly tmin: Monthly;
  /** Mean wind at about 10 m, m/s. */
  readonly wind: Monthly;
}

/** One quantity of the world grid, as bytes: value = byte × scale + offset. */
export interface GridLayer {
  readonly bytes: Uint8Array;
  readonly scale: number;
  readonly offset: number;
  /** The byte that stands for "no value", or null. */
  readonly missing: number | null;
}

/** Monthly normals of the world in 3° cells, west to east, then south to north, 12 months a cell (`z` has one). */
export interface ClimateWorld {
  readonly lat0: number;
  readonly lon0: number;
  readonly step: number;
  readonly rows: number;
  readonly cols: number;
  readonly kt: GridLayer;
  readonly tmax: GridLayer;
  readonly tmin: GridLayer;
  /** Smoothed height of the ground, m. */
  readonly z: GridLayer;
  /** °C for each metre above `z`. */
  readonly lapseCPerM: number;
  readonly licences: Readonly<Record<string, string>>;
}

/** Everything the project knows of the world's climate. */
export interface ClimateTables {
  readonly stations: readonly ClimateStation[];
  readonly sources: Readonly<Record<string, string>>;
  readonly licences: Readonly<Record<string, string>>;
  readonly world: ClimateWorld;
}

/**
 * Reads the two climate files of `engine/place/data`, as parsed JSON.
 * @throws TypeError if a file is not what this version of the engine expects; they ship with it, so that is our fault
 */
export function readClimateTables(stationsJson: unknown, worldJson: unknown): ClimateTables {
  const table = stationsJson as {
    format: number;
    stations: ClimateStation[];
    sources: Record<string, string>;
    licences: Record<string, string>;
  };
  if (table?.format !== 1 || !Array.isArray(table.stations)) {
    throw new TypeError("The station table must have format 1 and a list of stations.");
  }
  const grid = worldJson as {
    format: number;
    lat0: number;
    lon0: number;
    step: number;
    rows: number;
    cols: number;
    lapse: { value: number };
    licences: Record<string, string>;
  } & Record<"kt" | "tmax" | "tmin" | "z", StoredLayer>;
  if (grid?.format !== 1) throw new TypeError("The world grid must have format 1.");
  const { lat0, lon0, step, rows, cols, licences } = grid;
  const cells = rows * cols;
  return {
    stations: table.stations,
    sources: table.sources,
    licences: table.licences,
    world: {
      lat0,
      lon0,
      step,
      rows,
      cols,
      kt: layer(grid.kt, cells * 12, "kt"),
      tmax: layer(grid.tmax, cells * 12, "tmax"),
      tmin: layer(grid.tmin, cells * 12, "tmin"),
      z: layer(grid.z, cells, "z"),
      lapseCPerM: grid.lapse.value,
      licences,
    },
  };
}

interface StoredLayer {
  base64: string;
  scale: number;
  offset: number;
  missing?: number;
}

function layer(stored: StoredLayer, length: number, name: string): GridLayer {
  const bytes = bytesOfBase64(stored.base64);
  if (bytes.length !== length) throw new TypeError(`${name} of the world grid must hold ${length} bytes.`);
  return { bytes, scale: stored.scale, offset: stored.offset, missing: stored.missing ?? null };
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
