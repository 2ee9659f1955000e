import { openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { drawHourlyCloud, prepareHourlyCloud } from "../../../engine/sky/hourlyCloud.ts";
import type { HourlyDay } from "./cloudStatistics.ts";

/** Days under the same sun with the same totals and drawn cloud, drawn in `perHour` steps an hour and read by the hour. */
export function drawnDays(
  days: readonly Pick<HourlyDay, "clearWm2" | "index">[],
  perHour: number,
  members: number,
): HourlyDay[] {
  const state = new Uint32Array(STREAM_WORDS);
  const words = seedWords("cloud");
  return days.flatMap(({ clearWm2, index }) => {
    const hours = clearWm2.length;
    const clear = Float64Array.from({ length: hours * perHour }, (_, k) => clearWm2[Math.floor(k / perHour)]!);
    const cloud = prepareHourlyCloud(Int32Array.of(0, clear.length), clear, 1 / perHour);
    const drawn = new Float64Array(clear.length);
    return Array.from({ length: members }, (_, member) => {
      openStream(state, words, member, "cloud");
      drawHourlyCloud(cloud, state, Float64Array.of(index), drawn);
      const ghiWm2 = clearWm2.map((clearHour, hour) => {
        let sum = 0;
        for (let k = 0; k < perHour; k++) sum += drawn[hour * perHour + k]!;
        return (clearHour * sum) / perHour;
      });
      return { clearWm2, index, ghiWm2 };
    });
  });
}
