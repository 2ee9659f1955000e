import { openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { afternoonLean } from "../../../engine/sky/afternoonCloud.ts";
import { drawHourlyCloud, prepareHourlyCloud } from "../../../engine/sky/hourlyCloud.ts";
import { solarHour } from "../../../engine/sky/solarDay.ts";
import { afternoonLessMorning, type HourlyDay } from "./cloudStatistics.ts";

/** A day at a site, hour by hour. */
export type SiteDay = Pick<HourlyDay, "clearWm2" | "index"> & {
  readonly site: { readonly latitudeDeg: number; readonly longitudeDeg: number; readonly elevationM: number };
  /** Middle of each hour, UTC. */
  readonly timesMs: Float64Array;
};

/** The index after noon less that before when the cloud of these days of one site is drawn: mean over days and members. */
export function drawnAfternoons(days: readonly SiteDay[], members: number): number {
  const { site } = days[0]!;
  const starts = [0];
  for (const { clearWm2 } of days) starts.push(starts.at(-1)! + clearWm2.length);
  const clearWm2 = Float64Array.from(days.flatMap((day) => [...day.clearWm2]));
  const timesMs = Float64Array.from(days.flatMap((day) => [...day.timesMs]));
  const cloud = prepareHourlyCloud(Int32Array.from(starts), clearWm2, 1, afternoonLean(site, timesMs));
  const state = new Uint32Array(STREAM_WORDS);
  const words = seedWords("afternoon");
  const drawn = new Float64Array(clearWm2.length);
  const index = Float64Array.from(days, (day) => day.index);
  const off: number[] = [];
  for (let member = 0; member < members; member++) {
    openStream(state, words, member, "cloud");
    drawHourlyCloud(cloud, state, index, drawn);
    off.push(
      ...afternoonLessMorning(
        days.map((day, d) => ({
          ...day,
          ghiWm2: day.clearWm2.map((clear, k) => clear * drawn[starts[d]! + k]!),
          solarHour: day.timesMs.map((timeMs) => solarHour(timeMs, site.longitudeDeg)),
        })),
      ),
    );
  }
  return off.reduce((sum, value) => sum + value, 0) / off.length;
}
