import * as z from "zod";
import { quantity } from "./quantity.ts";

/** What bringing one of these takes; it makes tradeoffs comparable and changes no watt. */
export const Bring = z
  .strictObject({
    cost: quantity({ unit: "", low: 0, high: 1_000_000, what: "price in the club's own money" })
      .optional()
      .meta({ label: "Price" }),
    massKg: quantity({ unit: "kg", low: 0, high: 5000, what: "mass" }).optional().meta({ label: "Mass" }),
    setupMinutes: quantity({ unit: "min", low: 0, high: 1440, what: "work to set it up and take it down" })
      .optional()
      .meta({ label: "Work to set up" }),
  })
  .meta({
    title: "Bring",
    label: "To bring it",
    description: "What bringing one of these takes; it makes tradeoffs comparable and changes no watt.",
  });
export type Bring = z.infer<typeof Bring>;
