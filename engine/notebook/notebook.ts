import * as z from "zod";
import { Id, Name } from "../answers/docShapes.ts";
import { type DocOf, KIND_NAMES, KINDS, type KindName } from "../answers/kinds.ts";

import { MOST_CHANGES, MOST_ENTRIES, MOST_SCENARIOS, MOST_WEATHER_FILES } from "../answers/notebookLimits.ts";
import { LOOKS } from "../words/look.ts";

export const NOTEBOOK_VERSION = 1;
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

/** Names of the kinds of entries that a notebook can hold. */
export type EntryKindName = KindName;
export type EntryDoc<Kind extends EntryKindName> = DocOf<Kind>;

/** An entry of one kind: where it stands, what it is called, and its document. */
export type EntryOf<Kind extends EntryKindName> = {
  readonly id: string;
  readonly kind: Kind;
  readonly title: string;
  readonly folded?: boolean | undefined;
  readonly doc: EntryDoc<Kind>;
};
export type Entry = { [Kind in EntryKindName]: EntryOf<Kind> }[EntryKindName];

const entryShape = (kind: EntryKindName) =>
  z.strictObject({
    id: Id,
    kind: z.literal(kind),
    title: Name,
    folded: z.boolean().optional(),
    doc: KINDS[kind].doc as z.ZodType<unknown>,
  });

const [firstShape, ...otherShapes] = KIND_NAMES.map(entryShape);
export const EntryShape = z.discriminatedUnion("kind", [firstShape!, ...otherShapes], {
  error: "names no kind of entry that this duskline knows",
}) as unknown as z.ZodType<Entry>;

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
  /** Scenarios that have the first, second, third and fourth look; null where one is free. Left out: given out in the order of scenarios. */
  looks: z.array(Id.nullable()).max(LOOKS.length, `must be at most ${LOOKS.length} scenarios`).optional(),
  entries: z.array(EntryShape).max(MOST_ENTRIES, `must be at most ${MOST_ENTRIES} entries`),
  /** Weather that scenarios take from a file, by the name that they call it by. */
  weatherFiles: z
    .array(WeatherShape)
    .max(MOST_WEATHER_FILES, `must be at most ${MOST_WEATHER_FILES} weather files`)
    .optional(),
});

export type Notebook = z.infer<typeof Notebook>;

export type { NotebookScenario } from "../answers/answersPage.ts";
