import { openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { moveByClimateError, prepareClimateError } from "../../../engine/sky/climateError.ts";
import {
  clearnessOfNormals,
  drawDailyNormals,
  type MonthlyClearness,
  prepareDailyClearness,
} from "../../../engine/sky/dailyClearness.ts";
import { dayLight } from "../../../engine/sky/dayClearIndex.ts";
import { SOLAR_MS_PER_DEG } from "../../../engine/sky/solarDay.ts";
import { usualTurbidity } from "../../../engine/sky/usualTurbidity.ts";
import type { ClearnessYear } from "./clearnessStatistics.ts";

/** The days of a year that is no leap year. */
export const YEAR_DATES: readonly string[] = Array.from({ length: 365 }, (_, day) =>
  new Date(Date.UTC(2025, 0, 1 + day)).toISOString().slice(0, 10),
);
export const YEAR_MONTHS = Uint8Array.from(YEAR_DATES, (date) => Number(date.slice(5, 7)) - 1);

export interface DrawnPlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number | null;
}

/** H0 and the brightest believed Kt of the days of the year at a place, as an ensemble has them. */
export function yearLight({ latitudeDeg, longitudeDeg, elevationM }: DrawnPlace) {
  const noonMs = Float64Array.from(
    YEAR_DATES,
    (date) => Date.parse(`${date}T12:00:00Z`) - longitudeDeg * SOLAR_MS_PER_DEG,
  );
  const linkeTurbidity = usualTurbidity(latitudeDeg, elevationM ?? 0, noonMs[0]!);
  const site = { latitudeDeg, longitudeDeg, elevationM: elevationM ?? 0, linkeTurbidity };
  return dayLight(
    site,
    noonMs,
    Int32Array.from(noonMs, (_, day) => day),
  );
}

export interface DrawnWays {
  /** From `yearLight`; left out, nothing is held. */
  readonly brightestKt?: Float64Array;
  /** Error of the climate's mean that every year gets a draw of. */
  readonly ktErrorRms?: number;
  /** The same draw for all years, in standard deviations, instead of one for each: as one record would have it. */
  readonly oneError?: number;
}

/** Years drawn by the daily generator, one per member. */
export function drawnYears(
  climate: MonthlyClearness,
  members: number,
  seed: string,
  { brightestKt, ktErrorRms = 0, oneError }: DrawnWays = {},
): ClearnessYear[] {
  const prepared = prepareDailyClearness(climate, YEAR_DATES, brightestKt);
  const moves = prepareClimateError(prepared, ktErrorRms);
  const words = seedWords(seed);
  const state = new Uint32Array(STREAM_WORDS);
  const normals = new Float64Array(prepared.days);
  return Array.from({ length: members }, (_, member) => {
    const kt = new Float64Array(prepared.days);
    openStream(state, words, member, "sky");
    drawDailyNormals(prepared, state, normals);
    if (moves !== null && oneError !== undefined) {
      for (let day = 0; day < normals.length; day++) normals[day] = normals[day]! + moves[day]! * oneError;
    } else if (moves !== null) {
      openStream(state, words, member, "climate");
      moveByClimateError(moves, state, normals);
    }
    clearnessOfNormals(prepared, normals, kt);
    return { kt, month: YEAR_MONTHS };
  });
}
