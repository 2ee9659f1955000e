import * as z from "zod";
import { quantity, word } from "./quantity.ts";

/** American wire gauges with a known resistance; see `copperOhmPerM`. */
export const WIRE_GAUGES = [
  "18",
  "16",
  "14",
  "12",
  "10",
  "8",
  "6",
  "4",
  "3",
  "2",
  "1",
  "1/0",
  "2/0",
  "3/0",
  "4/0",
] as const;

const cableCalled = (conductor: string, length: string) =>
  z
    .strictObject(
      {
        awg: word(WIRE_GAUGES, "American wire gauge").optional().meta({ label: conductor }),
        mm2: quantity({ unit: "mm²", low: 0.25, high: 240, what: "cross-section of one conductor" })
          .optional()
          .meta({ label: conductor }),
        oneWayM: quantity({ unit: "m", low: 0, high: 200, what: "length of the run, one way", typical: [1, 15] }).meta({
          label: length,
        }),
        tempC: quantity({ unit: "°C", low: -40, high: 90, what: "temperature of the copper", typical: [20, 50] })
          .default(25)
          .meta({ label: "Copper temperature" }),
      },
      { error: 'a cable, such as { "awg": "10", "oneWayM": 6 }' },
    )
    .meta({
      title: "Cable",
      part: "A two-wire copper cable: its gauge or its cross-section, and its length one way.",
    })
    .check(({ value, issues }) => {
      if ((value.awg === undefined) === (value.mm2 === undefined)) {
        const message = "give the conductor either as awg or as mm2, and not both";
        issues.push({ code: "custom", path: ["awg"], input: value.awg, message });
      }
    });

/** A two-wire copper cable: its gauge in AWG or its cross-section in mm², and its length one way. */
export const Cable = cableCalled("Conductor", "Cable, one way");
/** The same between the bank and a radio, which pages call by a name of its own. */
export const RadioLead = cableCalled("Radio lead, conductor", "Radio lead, one way");
export type Cable = z.infer<typeof Cable>;

/** What runs count with where the document states no cable: the limits star them. Common practice, no source. */
export const USUAL_RADIO_LEAD: Cable = { awg: "10", oneWayM: 3, tempC: 25 };
export const USUAL_PANEL_CABLE: Cable = { awg: "10", oneWayM: 5, tempC: 25 };

/** The lead of a station, or the usual one. */
export const radioLeadOf = (feed: { readonly cable?: Cable | undefined }): Cable => feed.cable ?? USUAL_RADIO_LEAD;
/** The long cable of a panel group's controller, or the usual one. */
export const panelCableOf = (controller: { readonly cable?: Cable | undefined }): Cable =>
  controller.cable ?? USUAL_PANEL_CABLE;
