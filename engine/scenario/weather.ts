import * as z from "zod";
import { count, kind, quantity, text, word } from "./quantity.ts";

/** The words for a day's sky, brightest first; their clearness stands in `skyWords`. */
export const SKY_WORD_NAMES = ["clear", "fair", "mixed", "cloudy", "overcast"] as const;

const air = z
  .strictObject({
    maxC: quantity({ unit: "°C", low: -60, high: 60, what: "warmest of the day" }).meta({
      label: "Warmest of the day",
    }),
    minC: quantity({ unit: "°C", low: -70, high: 50, what: "coldest of the day" }).meta({
      label: "Coldest of the day",
    }),
    warmestSolarHour: quantity({
      unit: "h",
      low: 10,
      high: 18,
      what: "hour of solar time at which it is warmest",
    })
      .default(15)
      .meta({ label: "Warmest at" }),
  })
  .meta({
    title: "Air",
    label: "Air temperature",
    isWhole: true,
    change: { changed: "air {now}", removed: "air as the climate has it" },
    description:
      "Air temperature, the same every day; taken from the weather file or the climate of the place when left out.",
  })
  .check(({ value, issues }) => {
    if (value.minC > value.maxC) {
      const message = `the coldest, ${value.minC} °C, lies above the warmest, ${value.maxC} °C; swap the two`;
      issues.push({ code: "custom", path: ["minC"], input: value.minC, message });
    }
  })
  .optional();

const common = {
  air,
  linkeTurbidity: quantity({
    unit: "",
    low: 1,
    high: 8,
    what: "Linke turbidity: haze of the clear sky",
    typical: [2, 5],
    why: "left out, what is usual at the latitude, season and height; 2 clean winter or mountain air, 3 to 3.5 mid-latitude summer, 4 to 5 humid heat, 6 dust",
  })
    .optional()
    .meta({ label: "Haze (Linke turbidity)" }),
  windMs: quantity({
    unit: "m/s",
    low: 0,
    high: 40,
    what: "wind at the panels; that of a weather file goes before it",
    typical: [0.5, 4],
  })
    .default(1)
    .meta({ label: "Wind at the panels" }),
};

const twelve = <Item extends z.ZodType>(item: Item, what: string) => {
  const error = `a list of 12 monthly values, January first (${what})`;
  return z
    .array(item, { error })
    .length(12, { error })
    .optional()
    .meta({ description: `12 monthly means, January first (${what}); the climate tables' when left out` });
};

/** The weather a scenario is worked out under. Temperature comes from the same place unless `air` is typed in. */
export const Weather = z
  .discriminatedUnion(
    "kind",
    [
      z
        .strictObject({
          kind: kind("clear", "weather").meta({
            label: "Sky",
            choices: { clear: "clear all the time" },
            change: "sky {now}",
          }),
          ...common,
        })
        .meta({
          title: "Weather: clear",
          description: "No cloud at all: the most that the site can give.",
        }),
      z
        .strictObject({
          kind: kind("typical", "weather").meta({
            label: "Sky",
            choices: { typical: "typical of the month" },
            change: "sky {now}",
          }),
          ...common,
          monthlyKt: twelve(quantity({ unit: "", low: 0, high: 0.9, what: "mean daily clearness" }), "clearness")
            .optional()
            .meta({
              label: "Clearness, month by month",
              leftOut: "from the climate tables",
              change: "own monthly figures of sun",
            }),
          monthlyGhiKwhM2: twelve(
            quantity({ unit: "kWh/m² a day", low: 0, high: 12, what: "mean daily sun on the level" }),
            "kWh/m² a day on the level",
          )
            .optional()
            .meta({
              label: "Sun on the level, month by month",
              leftOut: "from the climate tables",
              change: "own monthly figures of sun",
            }),
          monthlyKtSd: twelve(
            quantity({
              unit: "",
              low: 0.01,
              high: 0.3,
              what: "standard deviation of daily clearness within the month",
              typical: [0.08, 0.22],
            }),
            "spread of daily clearness, for the odds",
          )
            .optional()
            .meta({
              label: "How much days differ, month by month",
              leftOut: "from the climate tables",
              change: "own monthly figures of sun",
            }),
          monthlyKtR1: twelve(
            quantity({
              unit: "",
              low: 0,
              high: 0.8,
              what: "correlation of a day's clearness with the day before's",
              typical: [0.1, 0.6],
            }),
            "how alike neighbouring days are, for the odds",
          )
            .optional()
            .meta({
              label: "How alike neighbouring days are, month by month",
              leftOut: "from the climate tables",
              change: "own monthly figures of sun",
            }),
        })
        .meta({
          title: "Weather: typical",
          description: "Every day the mean of its month, from the climate tables or as typed in.",
        })
        .check(({ value, issues }) => {
          if (value.monthlyKt !== undefined && value.monthlyGhiKwhM2 !== undefined) {
            const message = "monthlyKt and monthlyGhiKwhM2 say the same thing twice; take one of them out";
            issues.push({ code: "custom", path: ["monthlyGhiKwhM2"], input: value.monthlyGhiKwhM2, message });
          }
        }),
      z
        .strictObject({
          kind: kind("words", "weather").meta({
            label: "Sky",
            choices: { words: "a word for each day" },
            change: "sky {days}",
          }),
          ...common,
          days: z
            .array(word(SKY_WORD_NAMES, "the day's sky"), {
              error: 'a list of words, one a day, such as ["clear", "cloudy"]',
            })
            .min(1, { error: "a list with at least one day" })
            .max(61, { error: "a list of at most 61 days" })
            .meta({
              label: "Sky, day by day",
              isPlain: true,
              change: { changed: "sky {now}", removed: "" },
              description: "one word for each local day the event touches, the first day first",
            }),
        })
        .meta({ title: "Weather: words", description: "A word for each day's sky." }),
      z
        .strictObject({
          kind: kind("file", "weather").meta({
            label: "Sky",
            choices: { file: "hourly, from a file" },
            change: "sky {now}",
          }),
          ...common,
          file: text("name of the weather file, beside the scenario", 300).meta({
            label: "Weather file",
            isPlain: true,
            change: { changed: "weather from {now}", removed: "weather from elsewhere" },
          }),
          maxDistanceKm: count({ low: 1, high: 20_000, what: "how far the file's place may be, in km" })
            .default(150)
            .meta({ label: "File's place, at most away", change: { added: "", removed: "" } }),
        })
        .meta({
          title: "Weather: file",
          description: "Hour by hour from a file beside the scenario: TMY3, EPW, or a plain table with a header line.",
        }),
    ],
    { error: "weather whose kind is clear, typical, words or file" },
  )
  .meta({ title: "Weather", label: "Sky", description: "The sky and the air that the scenario is worked out under." });
export type Weather = z.infer<typeof Weather>;
