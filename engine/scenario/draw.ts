import * as z from "zod";
import { quantity } from "./quantity.ts";

/** What a thing takes, in watts, or in amperes at the voltage at which they were measured. */
export const Draw = z
  .strictObject(
    {
      drawW: quantity({ unit: "W", low: 0, high: 5000, what: "power drawn" }).optional().meta({ label: "Draw" }),
      drawA: quantity({ unit: "A", low: 0, high: 400, what: "current drawn" }).optional().meta({ label: "Draw" }),
      atV: quantity({
        unit: "V",
        low: 3,
        high: 60,
        what: "voltage at which the current was measured",
        typical: [12, 13.8],
      })
        .optional()
        .meta({ label: "At" }),
    },
    { error: 'a draw, such as { "drawW": 12 } or { "drawA": 1.2, "atV": 13.8 }' },
  )
  .meta({
    title: "Draw",
    isWhole: true,
    part: "What a thing takes: watts, or amperes with the voltage at which they were measured.",
  })
  .check(({ value, issues }) => {
    const inWatts = value.drawW !== undefined;
    const inAmperes = value.drawA !== undefined && value.atV !== undefined;
    const half = (value.drawA === undefined) !== (value.atV === undefined);
    if (inWatts === inAmperes || half || (inWatts && value.drawA !== undefined)) {
      const message = 'give the draw either as { "drawW": … } or as { "drawA": …, "atV": … }';
      issues.push({ code: "custom", path: [], input: value, message });
    }
  });
export type Draw = z.infer<typeof Draw>;

/** The power of a draw: watts as given, or amperes times their stated voltage. */
export function drawnW(draw: Draw): number {
  return draw.drawW ?? draw.drawA! * draw.atV!;
}
