import { openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import {
  clearnessOfNormals,
  drawDailyNormals,
  type MonthlyClearness,
  prepareDailyClearness,
} from "../../../engine/sky/dailyClearness.ts";
import type { ClearnessYear } from "./clearnessStatistics.ts";

/** The days of a year that is no leap year. */
export const YEAR_DATES: readonly string[] = Array.from({ length: 365 }, (_, day) =>
  new Date(Date.UTC(2025, 0, 1 + day)).toISOString().slice(0, 10),
);
export const YEAR_MONTHS = Uint8Array.from(YEAR_DATES, (date) => Number(date.slice(5, 7)) - 1);

/** Years drawn by the daily generator, one per member. */
export function drawnYears(climate: MonthlyClearness, members: number, seed: string): ClearnessYear[] {
  const prepared = prepareDailyClearness(climate, YEAR_DATES);
  const words = seedWords(seed);
  const state = new Uint32Array(STREAM_WORDS);
  const normals = new Float64Array(prepared.days);
  return Array.from({ length: members }, (_, member) => {
    const kt = new Float64Array(prepared.days);
    openStream(state, words, member, "sky");
    drawDailyNormals(prepared, state, normals);
    clearnessOfNormals(prepared, normals, kt);
    return { kt, month: YEAR_MONTHS };
  });
}
