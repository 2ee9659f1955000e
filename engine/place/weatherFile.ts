import type { Problem } from "../scenario/problem.ts";

/** Weather by equal intervals, as a file gave it; every array has one value per interval. */
export interface WeatherFile {
  readonly format: "tmy3" | "epw" | "csv";
  readonly latitudeDeg: number | null;
  readonly longitudeDeg: number | null;
  readonly elevationM: number | null;
  /** Hours that the file's own clock is ahead of UTC; standard time the year round. */
  readonly utcOffsetH: number;
  readonly stepMinutes: number;
  /** Start of each interval, UTC, in the file's own years. */
  readonly startMs: Float64Array;
  /** Whether the months were put together from different years, so that only month, day and hour mean anything. */
  readonly typicalYear: boolean;
  /** Mean over the interval, W/m²: on the level; beam facing the sun; sky on the level. */
  readonly ghiWm2: Float64Array;
  readonly dniWm2: Float64Array | null;
  readonly dhiWm2: Float64Array | null;
  readonly tempC: Float64Array | null;
  readonly windMs: Float64Array | null;
  /** What a person should know of how the file was read: columns left out, and why. */
  readonly notes: readonly string[];
}

export type WeatherReading = { ok: true; file: WeatherFile } | { ok: false; problems: Problem[] };
