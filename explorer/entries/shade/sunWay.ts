import type { Ruler } from "../../../engine/ruler/ruler.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";
import { nearBearing, type SkyView } from "./skyView.ts";
import type { SunPath } from "./sunPath.ts";

/** A full hour on the sun's way. */
export interface SkyHour {
  readonly hour: number;
  readonly x: number;
  readonly y: number;
}

/** Where the sun stands at a point of its way. */
export function onSky(view: SkyView, bearingDeg: number, elevationDeg: number): { x: number; y: number } {
  return { x: view.x(nearBearing(bearingDeg, view.centreDeg)), y: view.y(elevationDeg) };
}

/** The full hours of a day of the ruler on the sun's way. */
export function skyHours(path: SunPath | undefined, ruler: Ruler, day: number, view: SkyView): SkyHour[] {
  if (path === undefined) return [];
  const { hoursMs } = ruler.days[day]!;
  return Array.from(path.ms).flatMap((ms, i) => {
    if (!hoursMs.includes(ms)) return [];
    const hour = Number(clockAt(ruler, ms).clock.slice(0, 2));
    return [{ hour, ...onSky(view, path.bearingDeg[i]!, path.elevationDeg[i]!) }];
  });
}

/** A stretch of the sun's way as a line; a jump over the window's edge, as where the sun goes round the pole, breaks it. */
export function wayLine(path: SunPath, view: SkyView, from = 0, to = path.ms.length - 1): string {
  let text = "";
  let beforeX = 0;
  for (let i = from; i <= to; i++) {
    const { x, y } = onSky(view, path.bearingDeg[i]!, path.elevationDeg[i]!);
    const breaks = i === from || Math.abs(x - beforeX) > view.widthPx / 2;
    text += `${breaks ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`;
    beforeX = x;
  }
  return text;
}
