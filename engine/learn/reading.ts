import * as z from "zod";
import { quantity, share, text, word } from "../scenario/quantity.ts";
import { SKY_WORD_NAMES } from "../scenario/weather.ts";

/** Most readings of one event: one every minute for more than a day. */
export const MOST_READINGS = 2000;

const LOCAL_TIME = 'a local time such as "2026-10-09T18:30"';
const DATE = 'a date of the event, such as "2026-10-09"';

/** The fields of a reading, each within its limits; whether they go together is the business of `Reading`. */
export const ReadingFields = z
  .strictObject({
    at: z
      .string({ error: LOCAL_TIME })
      .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, { error: LOCAL_TIME })
      .meta({
        label: "Read at",
        description: "local time of the reading; an hour that the clock shows twice means the first time",
      }),
    chargeShare: share("charge of the bank").optional().meta({ label: "Charge" }),
    outAh: quantity({
      unit: "Ah",
      low: 0,
      high: 50_000,
      what: "ampere-hours out of the bank since it was full",
    })
      .optional()
      .meta({ label: "Ah out since full" }),
    restV: quantity({
      unit: "V",
      low: 6,
      high: 70,
      what: "volts of the bank after an hour or more with next to no current; a poor measure of charge",
    })
      .optional()
      .meta({ label: "Volts at rest" }),
    errorShare: quantity({
      unit: "",
      low: 0.002,
      high: 0.3,
      what: "error of this charge or of these ampere-hours, standard deviation as a share of a full bank",
      typical: [0.01, 0.05],
    })
      .optional()
      .meta({ label: "Its error" }),
    panelsW: quantity({ unit: "W", low: 0, high: 50_000, what: "what all panels give at that moment" })
      .optional()
      .meta({ label: "Panels now" }),
    loadA: quantity({
      unit: "A",
      low: 0,
      high: 2000,
      what: "what flows out of the bank to the gear while nobody sends",
    })
      .optional()
      .meta({ label: "Load now" }),
    sky: z
      .strictObject({
        date: z
          .string({ error: DATE })
          .regex(/^\d{4}-\d{2}-\d{2}$/, { error: DATE })
          .meta({ label: "Day", description: "the day that was seen, by the local calendar; not after the reading's" }),
        word: word(SKY_WORD_NAMES, "what that day's sky was like, up to the reading").meta({ label: "Sky" }),
      })
      .meta({ title: "Sky seen", description: "What the sky did on a day that has passed or is passing." })
      .optional(),
    by: text("who read it").optional().meta({ label: "Read by" }),
    enteredAt: text("when it was typed in", 40).optional().meta({ label: "Typed in at" }),
    isConfirmed: z
      .boolean({ error: "true or false (true once somebody has been asked whether it is really so)" })
      .optional()
      .meta({ label: "It is so", description: "true once somebody was asked whether an odd figure is really so" }),
    note: text("anything worth knowing about it", 1000).optional().meta({ label: "Note" }),
  })
  .meta({ title: "Reading", description: "What somebody read off the station at one time of the local clock." });

/**
 * What somebody read off the station at one time of the local clock: how full the bank is, in one of three ways, and
 * whatever else was seen. Who and when are kept and change nothing.
 */
export const Reading = ReadingFields.check(({ value, issues }) => {
  const charge = [value.chargeShare, value.outAh, value.restV].filter((each) => each !== undefined).length;
  const refuse = (path: string[], message: string) => issues.push({ code: "custom", path, input: value, message });
  if (charge > 1) {
    refuse([], "it tells the charge in more than one way; keep one of chargeShare, outAh and restV, the surest");
  }
  if (charge === 0 && value.panelsW === undefined && value.loadA === undefined && value.sky === undefined) {
    refuse([], "it holds nothing that was read; give chargeShare, outAh, restV, panelsW, loadA or sky");
  }
  if (value.errorShare !== undefined && value.chargeShare === undefined && value.outAh === undefined) {
    refuse(["errorShare"], "an error belongs to chargeShare or outAh, and neither is given; take it out");
  }
  if (value.sky !== undefined && value.sky.date > value.at.slice(0, 10)) {
    refuse(
      ["sky", "date"],
      `${value.sky.date} comes after the reading at ${value.at}; a day can be told once it has come`,
    );
  }
});
export type Reading = z.infer<typeof Reading>;

/** A file of readings. */
export const Readings = z
  .strictObject(
    {
      format: z.literal("duskline-readings", { error: '"duskline-readings", which says what this document is' }),
      version: z.literal(1, { error: "1, the version of this format" }),
      readings: z
        .array(Reading, { error: "a list of readings" })
        .max(MOST_READINGS, { error: `a list of at most ${MOST_READINGS} readings` }),
    },
    { error: "a document of readings" },
  )
  .meta({ title: "Readings", description: "What was read off the station during an event." });
export type Readings = z.infer<typeof Readings>;
