import * as z from "zod";
import type { Change, ScenarioInput } from "../../engine/index.ts";
import { ReadingFields } from "../../engine/learn/reading.ts";
import {
  LONGEST_NAME,
  LONGEST_NOTE,
  MOST_CHANGES,
  MOST_ENTRIES,
  MOST_LOG_ROWS,
  MOST_READINGS,
  MOST_SCENARIOS,
  MOST_WEATHER_FILES,
} from "./notebookLimits.ts";

export const NOTEBOOK_VERSION = 1;

/** What stands where in a notebook is found by its id: short, and safe in an address. */
const Id = z.string().regex(/^[a-z0-9-]{1,40}$/, "must be 1 to 40 small letters, digits or hyphens");
const Name = z
  .string()
  .min(1, "must not be empty")
  .max(LONGEST_NAME, `must be at most ${LONGEST_NAME} characters long`);

const ChangeShape = z.strictObject({
  at: z.string().min(1).max(200),
  to: z.json().optional(),
  add: z.record(z.string(), z.json()).optional(),
  remove: z.literal(true).optional(),
});

/** A scenario as written down whole. */
export const WholeScenario = z.strictObject({ id: Id, name: Name, document: z.record(z.string(), z.json()) });
/** A scenario as a base and what is changed about it. */
export const ChangedScenario = z.strictObject({
  id: Id,
  name: Name,
  basedOn: Id,
  changes: z.array(ChangeShape).max(MOST_CHANGES, `must be at most ${MOST_CHANGES} changes`),
});

const OfOne = z.strictObject({ scenario: Id });

/** A number of a scenario and the values that a map looks at. */
const SizeDirection = z.strictObject({
  at: z.string().min(1).max(200),
  values: z.array(z.number()).min(1, "must name at least one value").max(50, "must name at most 50 values"),
});

const LogColumn = z.array(z.number().nullable()).max(MOST_LOG_ROWS);

/** A meter's log as it is kept: in our units and signs, thinned out to the plan's steps, with what it was read with. */
const KeptLog = z.strictObject({
  name: z.string().min(1).max(200),
  takenAt: z.string().min(1).max(40).optional(),
  zone: z.string().min(1).max(60),
  stamp: z.enum(["instant", "start", "end"]),
  startMs: z.number(),
  usualMs: z.number().min(1),
  /** Minutes after `startMs`, rising; the columns have one value for each. */
  atMinutes: z.array(z.number()).min(2).max(MOST_LOG_ROWS),
  chargeShare: LogColumn.optional(),
  bankV: LogColumn.optional(),
  bankA: LogColumn.optional(),
  bankW: LogColumn.optional(),
  pvW: LogColumn.optional(),
  loadW: LogColumn.optional(),
  /** The file's titles and how they were read, so that the next log of this meter is read alike. */
  titles: z.array(z.string().max(300)).max(60),
  mapping: z.record(z.string().max(40), z.json()),
  findings: z.array(z.string().max(2000)).max(60),
});

/** What an entry of each kind holds. */
export const ENTRY_DOCS = {
  note: z.strictObject({ text: z.string().max(LONGEST_NOTE, `must be at most ${LONGEST_NOTE} characters long`) }),
  scenario: OfOne,
  forecast: z.strictObject({ scenarios: z.array(Id).min(1).max(4) }),
  versus: z.strictObject({ first: Id, second: Id }),
  /** Directions left out are the bank's block and the first group of panels. */
  sizing: z.strictObject({
    scenario: Id,
    across: SizeDirection.optional(),
    up: SizeDirection.optional(),
    targetIn100: z.number().min(1).max(100),
    autonomyDays: z.number().min(0.1).max(60),
  }),
  drivers: OfOne,
  run: OfOne,
  days: OfOne,
  ledger: OfOne,
  shade: OfOne,
  /** What limits are met at; what is left out is the run's own, and 3 % of its volts for a run of cable. */
  limits: z.strictObject({
    scenario: Id,
    dropIn100: z.number().min(0.1).max(50).optional(),
    chargeIn100: z.number().min(0).max(100).optional(),
    coldestC: z.number().min(-90).max(60).optional(),
  }),
  /** Readings by the engine's own schema; whether the fields of one go together is said beside it, and shuts no notebook. */
  readings: z.strictObject({
    scenario: Id,
    readings: z.array(ReadingFields).max(MOST_READINGS, `must be at most ${MOST_READINGS} readings`),
  }),
  actual: z.strictObject({ scenario: Id, log: KeptLog.optional() }),
  cautions: z.strictObject({}),
} as const;

export type EntryKindName = keyof typeof ENTRY_DOCS;
export type EntryDoc<Kind extends EntryKindName> = z.infer<(typeof ENTRY_DOCS)[Kind]>;

const entryShape = <Kind extends EntryKindName>(kind: Kind) =>
  z.strictObject({
    id: Id,
    kind: z.literal(kind),
    title: Name,
    folded: z.boolean().optional(),
    doc: ENTRY_DOCS[kind],
  });

export const EntryShape = z.discriminatedUnion(
  "kind",
  [
    entryShape("note"),
    entryShape("scenario"),
    entryShape("forecast"),
    entryShape("versus"),
    entryShape("sizing"),
    entryShape("drivers"),
    entryShape("run"),
    entryShape("days"),
    entryShape("ledger"),
    entryShape("shade"),
    entryShape("limits"),
    entryShape("readings"),
    entryShape("actual"),
    entryShape("cautions"),
  ],
  { error: "names no kind of entry that this duskline knows" },
);

export const WeatherShape = z.strictObject({
  name: z.string().min(1).max(300),
  text: z.string().max(900_000, "must be at most 900000 characters long"),
});

/** A notebook: scenarios, and entries that show what becomes of them. Every member of an ensemble is drawn from its seed. */
export const Notebook = z.strictObject({
  format: z.literal("duskline-notebook"),
  version: z.literal(NOTEBOOK_VERSION),
  id: Id,
  title: Name,
  seed: z.string().min(1).max(60),
  members: z.number().int().min(20).max(10_000),
  scenarios: z
    .array(z.union([WholeScenario, ChangedScenario]))
    .min(1)
    .max(MOST_SCENARIOS, `must be at most ${MOST_SCENARIOS} scenarios`),
  entries: z.array(EntryShape).max(MOST_ENTRIES, `must be at most ${MOST_ENTRIES} entries`),
  /** Weather that scenarios take from a file, by the name that they call it by. */
  weatherFiles: z
    .array(WeatherShape)
    .max(MOST_WEATHER_FILES, `must be at most ${MOST_WEATHER_FILES} weather files`)
    .optional(),
});

export type Notebook = z.infer<typeof Notebook>;
export type Entry = Notebook["entries"][number];

/** A scenario with a document of its own, or one based on another. */
export type NotebookScenario =
  | { readonly id: string; readonly name: string; readonly document: ScenarioInput }
  | { readonly id: string; readonly name: string; readonly basedOn: string; readonly changes: readonly Change[] };
