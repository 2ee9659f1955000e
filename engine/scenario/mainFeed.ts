import * as z from "zod";
import { Cable } from "./cable.ts";
import { holderA, Lead } from "./lead.ts";
import { quantity } from "./quantity.ts";

/**
 * What all loads share on their way from the bank's posts: fuse, switch, cable, distribution. Its resistance takes volts from every radio
 * on a peak; its ratings are read by the limits alone. The watts lost in it are not counted: 2 W at 30 A in 2 mΩ.
 */
export const MainFeed = z
  .strictObject({
    cable: Cable.optional().meta({ label: "Cable", description: "the run from the bank to the distribution" }),
    contactsOhm: quantity({
      unit: "Ω",
      low: 0,
      high: 1,
      what: "fuse, switch and lugs in the main feed, both conductors",
      typical: [0.0005, 0.003],
    })
      .default(0.001)
      .meta({ label: "Fuses and plugs" }),
    fuseA: quantity({ unit: "A", low: 1, high: 1000, what: "rating of the main fuse" })
      .optional()
      .meta({ label: "Main fuse" }),
    holderA,
    fuseBreaksA: quantity({
      unit: "A",
      low: 100,
      high: 300_000,
      what: "breaking capacity of the main fuse at the bank's volts: the current that it can still interrupt",
      typical: [2000, 20_000],
    })
      .optional()
      .meta({ label: "Main fuse breaks up to" }),
    fuseFromPostM: quantity({
      unit: "m",
      low: 0,
      high: 20,
      what: "length of conductor between the bank's post and the main fuse",
      typical: [0, 0.18],
    })
      .optional()
      .meta({ label: "Main fuse from the post" }),
    fuseLeadSheathed: z
      .boolean({ error: "true or false (true where the conductor up to the fuse runs in a sheath or conduit)" })
      .default(false)
      .meta({
        label: "Conductor up to the fuse sheathed",
        description: "whether the conductor up to the fuse runs in a sheath or conduit",
      }),
    disconnectA: quantity({
      unit: "A",
      low: 1,
      high: 2000,
      what: "rating of the main switch, continuous",
    })
      .optional()
      .meta({ label: "Main switch" }),
    distributionA: quantity({
      unit: "A",
      low: 1,
      high: 2000,
      what: "rating of the fuse block or bus bar behind the main feed",
    })
      .optional()
      .meta({ label: "Fuse block or bus bar" }),
    otherGear: Lead.optional().meta({
      label: "Branch of all other gear",
      description: "the branch that feeds all gear which has no lead of its own; for the limits",
    }),
  })
  .meta({
    title: "Main feed",
    change: { added: "main feed given", removed: "main feed left out" },
    description: "What all loads share on their way from the bank: fuse, switch, cable, distribution.",
  });
export type MainFeed = z.infer<typeof MainFeed>;
