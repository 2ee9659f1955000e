import * as z from "zod";
import { quantity, share, word } from "./quantity.ts";
import { SKY_WORD_NAMES } from "./weather.ts";

/** How a figure is known; what each means as a spread stands in `SURENESS_SPREAD`. */
export const SURENESS_WORDS = ["measured", "dataSheet", "guess"] as const;
export type SurenessWord = (typeof SURENESS_WORDS)[number];

const sureness = (what: string) =>
  word(SURENESS_WORDS, `how sure you are of ${what}`).meta({
    choices: { dataSheet: "from the data sheet", guess: "a guess" },
  });

/** How sure the plan's figures are; an ensemble varies them accordingly. */
export const Sureness = z
  .strictObject({
    idleDraw: sureness("what the gear draws while nobody sends")
      .default("dataSheet")
      .meta({ label: "Draw while nobody sends" }),
    startCharge: sureness("the charge at the start").default("measured").meta({ label: "Charge at the start" }),
    bankHealth: sureness("the capacity that age has left").default("dataSheet").meta({ label: "Capacity left by age" }),
    canopy: sureness("how much light comes through the trees")
      .default("guess")
      .meta({ label: "Light through the trees" }),
    panelYield: sureness("what the panels give in good light")
      .default("dataSheet")
      .meta({ label: "What panels give in good light" }),
  })
  .meta({
    title: "How sure are you?",
    label: "How sure",
    isPlain: true,
    description: "How sure the plan's figures are; an ensemble varies them accordingly.",
  });
export type Sureness = z.infer<typeof Sureness>;

/** How much operating differs from plan: standard deviations of the sending share, as shares of its mean. */
export const Operators = z
  .strictObject({
    betweenEventsShare: share("spread of keenness from one event to the next")
      .default(0.2)
      .meta({ label: "Keenness, event to event" }),
    betweenDaysShare: share("spread from day to day").default(0.15).meta({ label: "Keenness, day to day" }),
    byHourShare: share("spread from hour to hour, for each station")
      .default(0.5)
      .meta({ label: "Keenness, hour to hour" }),
  })
  .meta({ title: "Operators", description: "How much operating differs from plan, as shares of the mean sending." });
export type Operators = z.infer<typeof Operators>;

const DATE = 'a date of the event, such as "2026-10-09"';

/** What somebody knows of one day's sky, such as from a forecast. */
export const KnownDay = z
  .strictObject({
    date: z
      .string({ error: DATE })
      .regex(/^\d{4}-\d{2}-\d{2}$/, { error: DATE })
      .meta({ label: "Day", description: "which day of the event, by the local calendar" }),
    sky: word(SKY_WORD_NAMES, "the day's sky").meta({ label: "Sky" }),
    sureness: quantity({
      unit: "",
      low: 0,
      high: 1,
      what: "how sure it is: 0 nothing known, 1 certain; falls with the days ahead when left out",
    })
      .optional()
      .meta({ label: "How sure, 0 to 1" }),
  })
  .meta({
    title: "Known day",
    says: "{date} {sky}",
    description: "What is known of one day's sky, such as from a forecast; the skies of an ensemble lean on it.",
  });
