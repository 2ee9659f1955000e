import type * as z from "zod";
import { MOST_WEATHER_FILES } from "../../../engine/answers/notebookLimits.ts";
import { migrateNotebook } from "../../../engine/notebook/migrateNotebook.ts";
import { Notebook, WeatherShape } from "../../../engine/notebook/notebook.ts";
import { notebookFrom } from "../../../engine/notebook/readNotebook.ts";
import { cut, type Fields, nameOf, reason, type Salvage, whyLeftOut } from "./damage.ts";
import { salvagedEntries } from "./salvagedEntries.ts";
import { salvagedScenarios } from "./salvagedScenarios.ts";

export type Salvaged =
  | { readonly ok: true; readonly notebook: Notebook; readonly missing: readonly string[] }
  | { readonly ok: false; readonly sentences: readonly string[] };

const HEAD_FIELDS = new Set([
  "format",
  "version",
  "id",
  "title",
  "seed",
  "members",
  "scenarios",
  "looks",
  "entries",
  "weatherFiles",
]);

/**
 * What can be read of a notebook that cannot be read whole, and a sentence for everything that is missing or is not as it was. It is
 * a notebook of its own: what it was made from stays where it lies.
 * @param id what it is to be called by
 */
export function salvagedNotebook(value: unknown, id: string): Salvaged {
  const current = migrateNotebook(value);
  if (!current.ok) return { ok: false, sentences: [current.sentence] };
  const source = current.document as Fields;
  const salvage: Salvage = { missing: [], values: 0 };
  for (const name of Object.keys(source)) {
    if (!HEAD_FIELDS.has(name)) salvage.missing.push(`A field ${name.slice(0, 60)} that no notebook has is left out.`);
  }
  const scenarios = salvagedScenarios(listOf(source.scenarios, "scenarios", salvage), salvage);
  const weatherFiles = weatherFrom(listOf(source.weatherFiles ?? [], "weather files", salvage), salvage);
  const known = new Set(scenarios.map((scenario) => scenario.id));
  const entries = salvagedEntries(listOf(source.entries, "entries", salvage), known, salvage);
  const notebook = { ...headFrom(source, salvage), id, scenarios, entries } as Notebook;
  const looks = looksFrom(source.looks, salvage);
  if (looks !== null) notebook.looks = looks;
  if (weatherFiles.length > 0) notebook.weatherFiles = weatherFiles;
  const read = notebookFrom(notebook);
  return read.ok
    ? { ok: true, notebook: read.notebook, missing: salvage.missing }
    : { ok: false, sentences: read.sentences };
}

function listOf(value: unknown, what: string, salvage: Salvage): readonly unknown[] {
  if (Array.isArray(value)) return value;
  salvage.missing.push(`The list of ${what} is damaged: none of them can be read.`);
  return [];
}

function headFrom(source: Fields, salvage: Salvage) {
  const { id, title, seed, members } = Notebook.shape;
  const part = <Value>(shape: z.ZodType<Value>, name: string, instead: Value, says: string): Value => {
    const read = shape.safeParse(source[name]);
    if (read.success) return read.data;
    salvage.missing.push(says);
    return instead;
  };
  if (!id.safeParse(source.id).success) salvage.missing.push("Its id is damaged; it gets a new one.");
  return {
    format: source.format,
    version: source.version,
    title: part(title, "title", cut(source.title) ?? "Untitled", "Its title is not as it was."),
    seed: part(seed, "seed", "4127", "Its seed is damaged: 4127 takes its place, and the skies are other ones."),
    members: part(members, "members", 1000, "The number of its skies is damaged: 1000 are drawn."),
  };
}

/** Who had which look; what is damaged is given out again. */
function looksFrom(value: unknown, salvage: Salvage): NonNullable<Notebook["looks"]> | null {
  if (value === undefined) return null;
  const read = Notebook.shape.looks.safeParse(value);
  const held = (read.data ?? []).map((id, k, all) => (all.indexOf(id) === k ? id : null));
  if (!read.success || held.some((id, k) => id !== read.data?.[k])) {
    salvage.missing.push("Not every scenario is drawn as it was.");
  }
  return held;
}

function weatherFrom(list: readonly unknown[], salvage: Salvage) {
  const read: NonNullable<Notebook["weatherFiles"]> = [];
  for (const [number, part] of list.entries()) {
    const name = nameOf(part, "Weather file", number);
    const why = whyLeftOut(part, salvage);
    const parsed = WeatherShape.safeParse(part);
    if (why !== null || !parsed.success) salvage.missing.push(`${name} is missing: ${why ?? reason(parsed.error!)}.`);
    else if (read.length >= MOST_WEATHER_FILES)
      salvage.missing.push(`${name} is missing: a notebook keeps ${MOST_WEATHER_FILES}.`);
    else if (read.some((each) => each.name === parsed.data.name))
      salvage.missing.push(`${name} is there twice; one is missing.`);
    else read.push(parsed.data);
  }
  return read;
}
