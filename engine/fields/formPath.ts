import type { Change } from "../scenario/change.ts";
import type { SchemaNode } from "./formSchema.ts";
import { schemaAt } from "./formSchema.ts";

export type Path = readonly (string | number)[];
type Group = Record<string | number, unknown>;

const isContainer = (value: unknown): value is Group => typeof value === "object" && value !== null;

/** What stands at a place; undefined where there is nothing. */
export function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const key of path) {
    if (!isContainer(value) || !Object.hasOwn(value, key)) return undefined;
    value = value[key];
  }
  return value;
}

/** The same place in another document, entries of lists found by their id; null where that document has no such entry. */
export function sameIn(document: unknown, path: Path, other: unknown): Path | null {
  const there: (string | number)[] = [];
  for (const [depth, key] of path.entries()) {
    if (typeof key !== "number") {
      there.push(key);
      continue;
    }
    const id = (valueAt(document, path.slice(0, depth + 1)) as { id?: unknown } | undefined)?.id;
    const list = valueAt(other, there);
    if (!Array.isArray(list)) return null;
    const index = typeof id === "string" ? list.findIndex((item) => isContainer(item) && item.id === id) : key;
    if (index < 0 || index >= list.length) return null;
    there.push(index);
  }
  return there;
}

/** Names as changes write them, ids inside lists, as a path with numbers there, in a document that has the thing. */
export function pathOf(document: unknown, names: readonly string[]): Path {
  const path: (string | number)[] = [];
  for (const name of names) {
    const here = valueAt(document, path);
    const index = Array.isArray(here) ? here.findIndex((item) => isContainer(item) && item.id === name) : null;
    path.push(index === null ? name : index < 0 ? Number(name) : index);
  }
  return path;
}

/** The place as the words and lists of this folder name it: "stations[].radio.ratedW". */
export function pattern(path: Path): string {
  return path
    .map((key) => (typeof key === "number" ? "[]" : `.${key}`))
    .join("")
    .replace(/^\./, "");
}

/** A place as changes write it, with ids inside lists; null where an entry cannot be told by its id or number. */
function written(document: unknown, path: Path): string | null {
  const parts: string[] = [];
  for (const [depth, key] of path.entries()) {
    if (typeof key !== "number") {
      parts.push(key);
      continue;
    }
    const list = valueAt(document, path.slice(0, depth)) as Group[];
    const ids = list.map((item) => (isContainer(item) && typeof item.id === "string" ? item.id : null));
    const id = ids[key];
    if (id != null && /^[A-Za-z0-9-]+$/.test(id) && ids.indexOf(id) === key) parts.push(id);
    else if (!ids.includes(String(key))) parts.push(String(key));
    else return null;
  }
  return parts.join(".");
}

/** What a part needs before one of its fields can be written: the fields without which it says nothing. */
function scaffold(node: SchemaNode | undefined, filled: unknown): unknown {
  if (Array.isArray(filled)) return structuredClone(filled);
  const start: Group = isContainer(node?.default) ? structuredClone(node.default) : {};
  for (const key of node?.required ?? []) {
    if (start[key] === undefined && isContainer(filled) && filled[key] !== undefined)
      start[key] = structuredClone(filled[key]);
  }
  return start;
}

/**
 * The change that puts a value at a place. Parts that the document leaves out are written with what they cannot do
 * without, taken from the filled-in scenario.
 * @param filled the scenario with everything filled in, as `readScenario` gives it
 */
export function changeTo(document: unknown, path: Path, to: unknown, filled: unknown): Change {
  let depth = path.length - 1;
  while (depth > 0 && !isContainer(valueAt(document, path.slice(0, depth)))) depth--;
  let value = to;
  for (let at = path.length - 1; at > depth; at--) {
    const place = path.slice(0, at);
    const part = scaffold(schemaAt(filled, place), valueAt(filled, place)) as Group;
    part[path[at]!] = value;
    value = part;
  }
  let target = path.slice(0, depth + 1);
  for (;;) {
    const at = written(document, target);
    if (at !== null) return { at, to: value } as Change;
    // Its name in the list is not unique: write the list again.
    const list = structuredClone(valueAt(document, target.slice(0, -1))) as Group;
    list[target.at(-1)!] = value;
    value = list;
    target = target.slice(0, -1);
  }
}

/** The change that takes out what stands at a place, or null where nothing does. */
export function changeAway(document: unknown, path: Path): Change | null {
  if (valueAt(document, path) === undefined) return null;
  const at = written(document, path);
  if (at !== null) return { at, remove: true };
  const list = (valueAt(document, path.slice(0, -1)) as unknown[]).filter((_, index) => index !== path.at(-1));
  return changeTo(document, path.slice(0, -1), list, document);
}

/** The change that adds to a list; one that only stands there filled in is written out first. */
export function changeAdd(document: unknown, path: Path, add: unknown, filled: unknown): Change {
  const usual = valueAt(filled, path);
  const list = valueAt(document, path);
  const at = written(document, path);
  const parent = valueAt(document, path.slice(0, -1));
  if (at !== null && isContainer(parent) && (list !== undefined || !Array.isArray(usual) || usual.length === 0)) {
    return { at, add } as Change;
  }
  return changeTo(document, path, [...((list ?? usual ?? []) as unknown[]), add], filled);
}
