import { range } from "d3";
import { csvText } from "../../csvText.ts";
import { stamp } from "../../ruler/stamp.ts";
import type { ActualPicture } from "./actualPicture.ts";

/** Plan and log side by side on the plan's steps; empty where the log says nothing. */
export function actualCsv({ time, plan, actual }: ActualPicture): string {
  const put = (row: Float64Array | null, i: number, times = 1) => {
    const value = row?.[i];
    return value === undefined || !Number.isFinite(value) ? "" : (times * value).toFixed(2);
  };
  const rows = range(0, time.steps + 1).map((i) => [
    stamp(time.ruler, time.startMs + i * time.stepMs),
    put(plan.chargeShare, i, 100),
    put(actual.chargeShare, i, 100),
    put(plan.loadW, i),
    put(actual.loadW, i),
    put(plan.sunW, i),
    put(actual.sunW, i),
  ]);
  const heads = ["local time", "charge planned %", "charge metered %", "load planned W", "load metered W"];
  return csvText([[...heads, "sun planned W", "sun metered W"], ...rows]);
}
