import * as z from "zod";
import { Bank } from "./bank.ts";
import { KnownDay, Operators, Sureness } from "./chanceFields.ts";
import { Change } from "./change.ts";
import { Gear } from "./gear.ts";
import { Lead } from "./lead.ts";
import { MainFeed } from "./mainFeed.ts";
import { Models } from "./models.ts";
import { Obstacle } from "./obstacle.ts";
import { PanelGroup } from "./panelGroup.ts";
import { Place } from "./place.ts";
import { id, quantity, share, text, word } from "./quantity.ts";
import { Source } from "./source.ts";
import { Station } from "./station.ts";
import { Weather } from "./weather.ts";

/** The version of the document that this program writes and fully understands. */
export const SCENARIO_VERSION = 1;

/** Step lengths that divide the hour, so that steps and the clock stay together. */
const STEP_MINUTES = [1, 2, 3, 5, 6, 10, 12, 15, 20, 30, 60] as const;

const localTime = z
  .string({ error: 'a local time such as "2026-10-08T10:00"' })
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, { error: 'a local time such as "2026-10-08T10:00"' });

const list = <Item extends z.ZodType>(item: Item, what: string, most: number) =>
  z
    .array(item, { error: `a list of ${what}` })
    .max(most, { error: `a list of at most ${most} ${what}` })
    .prefault([]) // not a default: the schema for editors shows no default of a list whose items are filled in
    .meta({ description: `${what}, at most ${most}` });

/** Feeds 12 V gear from a bank of 24 or 48 V. */
const Converter = z
  .strictObject({
    outputV: quantity({ unit: "V", low: 5, high: 30, what: "voltage it gives the gear", typical: [12, 13.8] })
      .default(13.8)
      .meta({ label: "Gives the gear" }),
    efficiencyShare: share("power that comes out of the converter", 0.5, 1).default(0.93).meta({ label: "Efficiency" }),
    maxOutputA: quantity({
      unit: "A",
      low: 0.5,
      high: 1000,
      what: "most current it gives the gear; for the limits",
      typical: [10, 60],
    })
      .optional()
      .meta({ label: "Gives at most" }),
    input: Lead.optional().meta({
      label: "Lead into it",
      description: "from the main feed into the converter; for the limits",
    }),
    output: Lead.optional().meta({
      label: "Lead out of it",
      description: "from the converter to the distribution of the 12 V gear; for the limits",
    }),
  })
  .meta({
    title: "Converter",
    label: "Converter to 12 V",
    leftOut: "none",
    change: { added: "converter to 12 V added", removed: "converter left out" },
    description: "Feeds 12 V gear from a bank of 24 or 48 V.",
  });

/** Whether several inputs may charge together. Each input is a panel group, a source, or "solar" for all panels. */
const Selector = z
  .strictObject({
    mode: word(["both", "either"], "both: inputs add; either: only the larger of the listed inputs passes")
      .default("both")
      .meta({
        label: "Inputs together",
        isPlain: true,
        choices: { both: "add up", either: "only the larger" },
        change: { to: { both: "all inputs charge together", either: "only the larger input charges" } },
      }),
    inputs: z
      .array(
        id("a panel group, a source, or solar for all panels together").meta({
          label: "Inputs",
          refersTo: ["panels", "sources"],
          choices: { solar: "all panels" },
        }),
        { error: "a list of inputs" },
      )
      .min(2, { error: "a list of at least two inputs" })
      .max(31, { error: "a list of at most 31 inputs" }) // 20 panel groups, 10 sources and solar
      .optional()
      .meta({
        label: "At the selector",
        description:
          "what stands at a selector whose mode is either; all panels together and each source when left out",
      }),
  })
  .meta({ title: "Selector", label: "Inputs together", description: "Whether several inputs may charge together." })
  .prefault({});

/** A whole plan: what is brought, where it stands, who operates and under what sky. */
export const Scenario = z
  .strictObject(
    {
      $schema: z
        .string({ error: 'the place of the format\'s schema, such as "../docs/scenario.schema.json"' })
        .optional()
        .meta({ label: "Schema file", description: "where an editor finds the format's schema; changes nothing" }),
      format: z
        .literal("duskline-scenario", { error: '"duskline-scenario", which says what this document is' })
        .meta({ label: "Document", description: "says what this document is" }),
      version: z
        .literal(SCENARIO_VERSION, { error: `${SCENARIO_VERSION}, the version of this format` })
        .meta({ label: "Version of the format", description: "version of the format" }),
      name: text("what the plan is called").meta({ label: "Name", isPlain: true, change: "called “{now}”" }),
      note: text("anything worth knowing about it", 4000)
        .optional()
        .meta({
          label: "Note",
          change: { changed: "note reworded", removed: "note taken out" },
        }),
      place: Place,
      time: z
        .strictObject({
          start: localTime.meta({ label: "Begins", isPlain: true, description: "local time at which the plan begins" }),
          end: localTime.meta({
            label: "Ends",
            isPlain: true,
            description: "local time at which it ends, at most 60 days later",
          }),
          stepMinutes: z
            .union(
              STEP_MINUTES.map((minutes) => z.literal(minutes)),
              {
                error: `one of ${STEP_MINUTES.join(", ")} (minutes in a step; 10 or less where anything casts shade)`,
              },
            )
            .default(10)
            .meta({
              label: "Step of the working",
              description: "minutes in a step; 10 or less where anything casts shade",
            }),
        })
        .meta({
          title: "Time",
          change: { all: { of: ["start", "end"], says: "{start} to {end}" } },
          description: "When it takes place, by the local clock.",
        }),
      weather: Weather,
      gear: list(Gear, "gear", 200).meta({ label: "Gear" }),
      stations: list(Station, "stations", 30).meta({ label: "Stations" }),
      panels: list(PanelGroup, "panel groups", 20).meta({ label: "Panels" }),
      obstacles: list(Obstacle, "obstacles", 100).meta({ label: "What casts shade" }),
      bank: Bank,
      mainFeed: MainFeed.optional(),
      converter: Converter.optional(),
      sources: list(Source, "sources", 10).meta({ label: "Other charging" }),
      selector: Selector,
      models: Models.prefault({}),
      sureness: Sureness.prefault({}),
      operators: Operators.prefault({}),
      knownDays: list(KnownDay, "known days", 60).meta({
        label: "Days with a forecast",
        isPlain: true,
        change: { changed: "forecast: {now}", emptied: "no day's forecast known" },
      }),
      shedding: list(
        id("gear or station that may go without").meta({ label: "Shedding", refersTo: ["stations", "gear"] }),
        "gear and stations, first to go without first",
        230,
      ).meta({
        label: "May go without, first to go first",
        isOrdered: true,
        change: { changed: "goes without first: {now}", emptied: "nothing goes without" },
      }),
      variants: list(
        z
          .strictObject({
            id: id("the variant's name in this document").meta({ label: "Short name" }),
            name: text("what people call it").meta({ label: "Name" }),
            changes: z
              .array(Change, { error: "a list of changes" })
              .min(1, { error: "a list with at least one change" })
              .max(100, { error: "a list of at most 100 changes" })
              .meta({ label: "Changes", description: "what is different, in order" }),
          })
          .meta({
            title: "Variant",
            says: "{changes.length} {change|changes}",
            description: "The same scenario with named changes, to be compared with it.",
          }),
        "variants",
        30,
      ).meta({ label: "Variants", isPlain: true, change: "variants changed" }),
    },
    { error: "a scenario document" },
  )
  .meta({
    title: "Scenario",
    description: "A whole plan: what is brought, where it stands, who operates and under what sky.",
  });
/** A whole plan as `readScenario` gives it, with everything that was left out filled in. */
export type Scenario = z.infer<typeof Scenario>;
/** A scenario as it may be written: defaults left out. */
export type ScenarioInput = z.input<typeof Scenario>;
