import * as z from "zod";
import { RadioLead } from "./cable.ts";
import { ClockWindows } from "./clockWindow.ts";
import { Draw } from "./draw.ts";
import { holderA, Lead } from "./lead.ts";
import { PRESENCE } from "./presence.ts";
import { count, id, quantity, share, text, word } from "./quantity.ts";

/** Modes whose transmit current is known; what each means for current is in `modeCurrent`. */
export const MODES = ["ssb", "ssbProcessed", "cw", "fm", "rtty", "data", "am"] as const;
export type Mode = (typeof MODES)[number];

/** What is usual; common practice of the trade, no source. */
const SENDING = { typical: [0.1, 0.5], why: "chatting 10 to 20 %, calling 20 to 40, a contest run 40 to 55" } as const;

const Radio = z
  .strictObject({
    ratedW: quantity({ unit: "W", low: 0.1, high: 1500, what: "full transmit power", typical: [5, 100] }).meta({
      label: "Radio, full power",
      isPlain: true,
      change: { changed: "{item}: a {now} radio, was {was}", tellsPart: true },
    }),
    receive: Draw.meta({ label: "Receive draw", isPlain: true, description: "what it takes on receive" }),
    fullPower: Draw.meta({
      label: "Key-down draw",
      isPlain: true,
      description: "what it takes at rated power, key down",
    }),
    bias: Draw.optional().meta({
      label: "Keyed, no signal",
      description: "what it takes keyed with no signal (a linear final's bias); 0.15 of full power when left out",
    }),
    minimumV: quantity({
      unit: "V",
      low: 5,
      high: 30,
      what: "lowest voltage at its socket at which it works; 13.8 V less 15 % is 11.73 V",
    })
      .default(11.73)
      .meta({ label: "Works down to" }),
  })
  .meta({ title: "Radio", description: "A transceiver by its data sheet or, better, by your meter." })
  .check(({ value, issues }) => {
    const power = (draw: z.infer<typeof Draw>) => draw.drawW ?? (draw.drawA ?? 0) * (draw.atV ?? 0);
    if (power(value.fullPower) < power(value.receive)) {
      const message = "at full power it takes less than on receive; swap the two draws or correct them";
      issues.push({ code: "custom", path: ["fullPower"], input: value.fullPower, message });
    }
  });

const ModeShare = z
  .strictObject({
    mode: word(MODES, "mode of operation").meta({
      label: "Mode",
      choices: { ssb: "SSB", ssbProcessed: "SSB, processed", cw: "CW", fm: "FM", rtty: "RTTY", am: "AM" },
    }),
    share: share("part of the sending that is done in this mode", 0, 1).meta({ label: "Share of the sending" }),
    sendingShare: share(
      "part of the clock spent sending while in this mode; the station's own when left out",
      0,
      1,
      SENDING,
    )
      .optional()
      .meta({ label: "Sends, own share", isPlain: false }),
  })
  .meta({ title: "Mode", description: "A mode of operation and its part of the sending." });

const Companion = z
  .strictObject({
    id: id("the thing's name in this document").meta({ label: "Short name" }),
    name: text("what people call it").meta({ label: "Name", isPlain: true }),
    count: count({ low: 0, high: 50, what: "how many of them" }).default(1).meta({ label: "How many", isPlain: true }),
    idle: Draw.default({ drawW: 0 }).meta({
      label: "Draw while idle",
      description: "what one takes while it does not work",
    }),
    working: Draw.meta({ label: "Draw while working", isPlain: true, description: "what one takes while it works" }),
    works: word(["staffed", "sending"], "works while the station is staffed, or only while it sends")
      .default("staffed")
      .meta({ label: "Works", choices: { staffed: "while staffed", sending: "only while sending" } }),
    lead: Lead.optional().meta({
      label: "Lead of its own",
      description: "its own branch; without one it hangs on mainFeed.otherGear",
    }),
  })
  .meta({
    title: "Companion",
    says: "[{count} × ]{working}, {works}",
    change: { added: "{item}: with {thing}", removed: "{item}: without {thing}" },
    description: "A thing that always goes with the radio: laptop, tuner, amplifier.",
  });

const ACTIVITY = "a list of 24 numbers from 0 to 1, one for each hour from midnight (activity by hour)";

/** A radio with all that always goes with it, and the people at it. */
export const Station = z
  .strictObject({
    id: id("the station's name in this document").meta({ label: "Short name" }),
    name: text("what people call it").meta({ label: "Name", isPlain: true }),
    radio: Radio,
    companions: z
      .array(Companion, { error: "a list of the things that go with the radio" })
      .max(40, { error: "a list of at most 40 things that go with the radio" })
      .default([])
      .meta({ label: "Goes with the radio", description: "things that go with the radio" }),
    staffed: ClockWindows.meta({
      label: "Staffed",
      isPlain: true,
      empty: "never",
      change: "{item} staffed {now}, was {was}",
      description: "when somebody sits at it; an empty list is never",
    }),
    whenUnstaffed: word(["off", "receive"], "what the radio does while nobody is at it")
      .default("off")
      .meta({ label: "Radio while unstaffed", choices: { receive: "left on receive" } }),
    activityByHour: z
      .array(share("activity in that hour"), { error: ACTIVITY })
      .length(24, { error: ACTIVITY })
      .default(Array.from({ length: 24 }, () => 1))
      .meta({
        label: "Activity, hour by hour",
        change: "{item}: other busy hours",
        description: "24 shares, one for each hour from local midnight, by which sendingShare is multiplied",
      }),
    modes: z
      .array(ModeShare, { error: 'a list of modes, such as [{ "mode": "ssb", "share": 1 }]' })
      .min(1, { error: "a list with at least one mode" })
      .max(7, { error: "a list of at most 7 modes" })
      .meta({
        label: "Modes",
        isPlain: true,
        change: "{item} in {now}, was {was}",
        description: "modes with their shares, which add up to 1",
      }),
    transmitW: quantity({
      unit: "W",
      low: 0.01,
      high: 1500,
      what: "transmit power it is set to",
      typical: [5, 100],
    }).meta({ label: "Transmit power", isPlain: true, change: "{item} at {now}, was {was}" }),
    sendingShare: share("part of the clock spent sending while fully active", 0, 1, SENDING).meta({
      label: "Sending, share of staffed time",
      isPlain: true,
      change: "{item} sending {now} of the time, was {was}",
    }),
    ssbCurrent: word(
      ["envelope", "upperBound", "powerDuty"],
      "how SSB current is figured: speech envelope 0.886√d (the usual), its bound √d, or the power duty d, which understates it",
    )
      .default("envelope")
      .meta({
        label: "SSB current figured by",
        choices: { envelope: "speech envelope", upperBound: "upper bound", powerDuty: "power duty" },
      }),
    interlock: id("group of stations of which only one sends at a time")
      .optional()
      .meta({ label: "One sends at a time, group" }),
    feed: z
      .strictObject({
        cable: RadioLead.optional().meta({
          label: "Cable",
          leftOut: "10 AWG, 3 m one way",
          description:
            "the radio's own lead; 10 AWG over 3 m one way when left out, and then only assumed in the limits",
        }),
        fuseA: quantity({
          unit: "A",
          low: 0.1,
          high: 400,
          what: "fuse in the radio's lead; for the limits",
          typical: [5, 30],
        })
          .optional()
          .meta({ label: "Radio lead, fuse" }),
        holderA,
        contactsOhm: quantity({
          unit: "Ω",
          low: 0,
          high: 1,
          what: "fuses, plugs and switches in the feed, both conductors",
          typical: [0.005, 0.02],
        })
          .default(0.01)
          .meta({ label: "Fuses and plugs" }),
      })
      .meta({ title: "Feed", description: "What lies between the bank and the radio's socket." })
      .prefault({}),
    longestOverMin: quantity({
      unit: "min",
      low: 0.1,
      high: 1440,
      what: "the longest that it sends without a pause; for the limits, where ten minutes and what is left out count as lasting",
      typical: [0.25, 10],
      why: "a data slot a quarter of a minute, talk one to three, a bulletin ten",
    })
      .optional()
      .meta({ label: "Longest over" }),
    ...PRESENCE,
  })
  .meta({
    title: "Station",
    says: ["{transmitW}, sending {sendingShare}, {staffed}", "{transmitW}, sending {sendingShare}, never staffed"],
    change: { added: "{item} added, {now}", removed: "{item} stays at home" },
    description: "A radio with all that always goes with it, and the people at it.",
  })
  .check(({ value, issues }) => {
    const refuse = (path: (string | number)[], message: string, input: unknown) =>
      issues.push({ code: "custom", path, input, message });
    const sum = value.modes.reduce((total, entry) => total + entry.share, 0);
    if (Math.abs(sum - 1) > 0.001) {
      refuse(
        ["modes"],
        `the shares of its modes add up to ${+sum.toFixed(3)} but must add up to 1; change one of them`,
        value.modes,
      );
    }
    if (value.transmitW > value.radio.ratedW) {
      refuse(
        ["transmitW"],
        `${value.transmitW} W is more than the radio's ${value.radio.ratedW} W; turn it down or change radio.ratedW`,
        value.transmitW,
      );
    }
  });
export type Station = z.infer<typeof Station>;
