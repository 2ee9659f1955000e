import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";

/** "Sat 10 13:15" */
export function hourName(light: Sunlight, ms: number): string {
  const { day, clock } = clockAt(light.ruler, ms);
  return `${day} ${clock}`;
}
