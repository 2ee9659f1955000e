import { dayName } from "../../ruler/rulerClock.ts";
import { sunDays } from "./sunHours.ts";
import type { Sunlight } from "./sunlight.ts";

/** What stands over the columns, without the panels' own. */
export const SHADE_HEADS: readonly string[] = [
  "Day",
  "Sun up, h",
  "Open sun, h",
  "In part, h",
  "worth, h",
  "Dark, h",
  "Sun behind or packed away, h",
];

/** Each group and day in figures, one for each of `SHADE_HEADS`. */
export function shadeRows(light: Sunlight): { readonly name: string; readonly figures: readonly string[] }[] {
  return light.groups.flatMap((group) =>
    sunDays(light, group).map((day) => ({
      name: group.name,
      figures: [
        `${dayName(day.date)}${day.isWhole ? "" : " (part of it)"}`,
        ...[day.upH, day.openH, day.partH, day.partWorthH, day.darkH, day.awayH].map((h) => h.toFixed(1)),
      ],
    })),
  );
}
