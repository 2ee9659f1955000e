import * as z from "zod";
import { Cable } from "./cable.ts";
import { quantity } from "./quantity.ts";

/** The rating of what a fuse sits in. */
export const holderA = quantity({
  unit: "A",
  low: 0.5,
  high: 2000,
  what: "rating of the holder that the fuse sits in; for the limits",
})
  .optional()
  .meta({ label: "Fuse holder" });

/** A wire between the bank or its distribution and one thing, with its fuse. Read by the limits alone: no watt is lost in it. */
export const Lead = z
  .strictObject({
    cable: Cable.optional().meta({
      label: "Lead",
      description: "the wire itself; the limits assume one when left out",
    }),
    fuseA: quantity({
      unit: "A",
      low: 0.5,
      high: 1000,
      what: "fuse at the end that is fed, the bank's or the distribution's; for the limits",
      typical: [5, 60],
    })
      .optional()
      .meta({ label: "Lead, fuse" }),
    holderA,
  })
  .meta({
    title: "Lead",
    change: { added: "{item}: lead and fuse given", removed: "{item}: lead and fuse left out" },
    description: "A wire between the bank or its distribution and one thing, with its fuse; for the limits.",
  });
export type Lead = z.infer<typeof Lead>;
