import { wrapLongitudeDeg } from "../angle.ts";
import type { Prepared } from "../run/prepare.ts";
import { turbidityOf } from "../run/prepareSky.ts";
import { makeRunRows, ROW_SLOTS, ROW_SOLAR_W } from "../run/runRows.ts";
import { stepRun } from "../run/stepRun.ts";
import { dayLight, MAX_DAY_CLEAR_INDEX } from "../sky/dayClearIndex.ts";
import { makeSkyLight, prepareSplit, splitPrepared } from "../sky/splitDiffuse.ts";
import { hadRoom } from "./logFeatures.ts";
import type { MeterSeries } from "./meterSeries.ts";
import type { ChargeLimits } from "./plannedRows.ts";

/** How bright one day was, as its panels tell it. */
export interface SkyOfDay {
  /** Local date, "2026-10-09". */
  readonly date: string;
  /** Light on the level over that of a cloudless sky, 0…1.25; null where the log tells too little of the day. */
  readonly clearIndexShare: number | null;
  /** Hours of sun that it is told by. */
  readonly sunH: number;
}

/** Days with fewer hours of metered sun than this are not told. */
const FEWEST_SUN_H = 3;
const HALVINGS = 16;

/**
 * Finds for each day the clear-sky index under which the plan's panels would have given what was metered, cloud spread evenly over the day.
 * Steps in which the bank had no room are left out. What the panels yield over plan goes into it in full: 5 % less yield looks like 5 % less sky.
 */
export function skyOfLog(prepared: Prepared, planned: ChargeLimits, series: MeterSeries): readonly SkyOfDay[] {
  const { grid, clear } = prepared;
  const { pvW } = series;
  const days = grid.dates.length;
  const got = new Float64Array(days);
  const sunH = new Float64Array(days);
  const isUsed = Uint8Array.from({ length: grid.steps }, (_, i) =>
    pvW !== null && Number.isFinite(pvW[i]!) && clear.ghiWm2[i]! > 0 && hadRoom(prepared, planned, series, i) ? 1 : 0,
  );
  for (let i = 0; i < grid.steps; i++) {
    if (isUsed[i] === 0) continue;
    got[grid.localDay[i]!]! += pvW![i]!;
    sunH[grid.localDay[i]!]! += grid.stepH;
  }
  const low = new Float64Array(days);
  const high = new Float64Array(days).fill(MAX_DAY_CLEAR_INDEX);
  const run = makeRunRows(prepared);
  const light = makeSkyLight(grid.steps);
  const { scenario } = prepared;
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  const site = { ...scenario.place, longitudeDeg, linkeTurbidity: turbidityOf(scenario, grid) };
  const split = prepareSplit(clear, dayLight(site, grid.middleMs, grid.localDay), grid.stepH);
  // All days are halved at once: each run tells of every day whether it was too bright.
  for (let round = 0; round < HALVINGS; round++) {
    const middle = low.map((share, day) => (share + high[day]!) / 2);
    splitPrepared(
      split,
      middle,
      Float64Array.from(grid.localDay, (day) => middle[day]!),
      light,
    );
    stepRun(prepared, light, prepared.airTempC, prepared.inputs, run);
    const would = new Float64Array(days);
    for (let i = 0; i < grid.steps; i++) {
      if (isUsed[i] === 1) would[grid.localDay[i]!]! += run.rows[i * ROW_SLOTS + ROW_SOLAR_W]!;
    }
    for (let day = 0; day < days; day++) {
      if (would[day]! > got[day]!) high[day] = middle[day]!;
      else low[day] = middle[day]!;
    }
  }
  return grid.dates.map((date, day) => ({
    date,
    clearIndexShare: sunH[day]! >= FEWEST_SUN_H ? (low[day]! + high[day]!) / 2 : null,
    sunH: sunH[day]!,
  }));
}
