import { csvText } from "../../csvText.ts";
import { stamp } from "../../ruler/stamp.ts";
import type { Sunlight } from "./sunlight.ts";

/** Every number behind the strip: the share of the beam on each group, step by step, percent. */
export function sunCsv(light: Sunlight): string {
  const head = ["local time", ...light.groups.map((group) => `${group.name}, share of the sun's beam %`)];
  const rows = Array.from({ length: light.steps }, (_, i) => [
    stamp(light.ruler, light.startMs + i * light.stepMs),
    ...light.groups.map((group) => (group.share[i]! * 100).toFixed(1)),
  ]);
  return csvText([head, ...rows]);
}
