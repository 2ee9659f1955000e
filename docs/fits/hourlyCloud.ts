/**
 * `npx tsx docs/fits/hourlyCloud.ts`: the spread of hours within a day and their memory, measured and drawn. Needs the
 * measured hours beside the checkout.
 */
import { openStream, seedWords } from "../../engine/chance/stream.ts";
import { drawHourlyCloud, prepareHourlyCloud } from "../../engine/sky/hourlyCloud.ts";
import { cloudStatistics, type HourlyDay } from "../../tests/truth/climate/cloudStatistics.ts";
import { measuredDays } from "../../tests/truth/climate/measuredHours.ts";

const days = measuredDays();
const edges = [0, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.1];
const members = 200;

/** The same days with drawn cloud: same sun, same total, drawn at 60 and at 10 minutes and read by the hour. */
function drawnDays(perHour: number): HourlyDay[] {
  const state = new Uint32Array(4);
  const words = seedWords("cloud");
  return days.flatMap((day) => {
    const clear = Float64Array.from(
      { length: day.clearWm2.length * perHour },
      (_, k) => day.clearWm2[Math.floor(k / perHour)]!,
    );
    const cloud = prepareHourlyCloud(Int32Array.of(0, clear.length), clear, 1 / perHour);
    const index = new Float64Array(clear.length);
    return Array.from({ length: members }, (_, member) => {
      openStream(state, words, member, "cloud");
      drawHourlyCloud(cloud, state, Float64Array.of(day.index), index);
      const ghiWm2 = day.clearWm2.map((clearHour, hour) => {
        let sum = 0;
        for (let k = 0; k < perHour; k++) sum += index[hour * perHour + k]!;
        return (clearHour * sum) / perHour;
      });
      return { ...day, ghiWm2 };
    });
  });
}

for (const [name, set] of Object.entries({
  measured: days,
  "drawn, 60 min": drawnDays(1),
  "drawn, 10 min": drawnDays(6),
})) {
  console.log(`\n${name}`);
  console.log("day index      days   spread   r(1 h)   r(2 h)   darkest  brightest  skew");
  for (let bin = 0; bin + 1 < edges.length; bin++) {
    const [low, high] = [edges[bin]!, edges[bin + 1]!];
    const s = cloudStatistics(set.filter(({ index }) => index >= low && index < high));
    const numbers = [s.spread, s.r1, s.r2, s.darkest, s.brightest, s.skew].map((value) => value.toFixed(3).padStart(8));
    console.log(`${low.toFixed(2)}–${high.toFixed(2)}  ${String(s.days).padStart(8)} ${numbers.join(" ")}`);
  }
}
