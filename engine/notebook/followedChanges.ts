import { applyChanges } from "../scenario/applyChanges.ts";
import type { Change } from "../scenario/change.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";

type Names = readonly { readonly id?: unknown }[];

/** What became of a list: an entry was given another short name, or one was taken out of a list whose entries go by number. */
type Move =
  | { readonly list: string; readonly from: string; readonly to: string }
  | { readonly list: string; readonly gone: number };

/**
 * The changes of a scenario, rewritten so that they mean the same things after `made` was worked into what it is based on. A change of
 * something that has gone keeps a place that does not exist, so that it is said to be lost rather than done to something else.
 * @param base what it is based on, as it was before
 */
export function followedChanges(changes: readonly Change[], made: readonly Change[], base: ScenarioInput): Change[] {
  let document: unknown = base;
  let followed = [...changes];
  for (const change of made) {
    const move = moveOf(change, document);
    if (move !== null) followed = followed.map((each) => moved(each, move));
    const next = applyChanges(document, [change]);
    if (!next.ok) break;
    document = next.document;
  }
  return followed;
}

function moveOf({ at, to, remove }: Change, document: unknown): Move | null {
  const parts = at.split(".");
  if (parts.length >= 3 && parts.at(-1) === "id" && typeof to === "string") {
    const list = parts.slice(0, -2).join(".");
    const entry = entryOf(document, list, parts.at(-2)!);
    const from = entry === null ? undefined : entry.of[entry.number]!.id;
    return typeof from === "string" && from !== to ? { list, from, to } : null;
  }
  if (remove !== true) return null;
  const list = parts.slice(0, -1).join(".");
  const entry = entryOf(document, list, parts.at(-1)!);
  // Entries that have a short name are called by it, and no other takes its place.
  return entry === null || entry.of[entry.number]?.id !== undefined ? null : { list, gone: entry.number };
}

/** The list at a place and the number of what `name` means in it; null where there is no such list or entry. */
function entryOf(document: unknown, list: string, name: string): { of: Names; number: number } | null {
  let value = document;
  for (const part of list.split(".")) {
    if (typeof value !== "object" || value === null) return null;
    if (Array.isArray(value)) {
      const number: number = numberOf(value as Names, part);
      value = value[number];
    } else value = Object.hasOwn(value, part) ? (value as Record<string, unknown>)[part] : undefined;
  }
  if (!Array.isArray(value)) return null;
  const number = numberOf(value as Names, name);
  return number < 0 || number >= value.length ? null : { of: value as Names, number };
}

function numberOf(list: Names, name: string): number {
  const named = list.findIndex((entry) => typeof entry === "object" && entry !== null && entry.id === name);
  return named >= 0 ? named : /^\d+$/.test(name) ? Number(name) : -1;
}

function moved(change: Change, move: Move): Change {
  const there = { ...change, at: movedPlace(change.at, move) };
  return "from" in move ? renamedWithin(there, move) : there;
}

function movedPlace(at: string, move: Move): string {
  if (!at.startsWith(`${move.list}.`)) return at;
  const [name, ...rest] = at.slice(move.list.length + 1).split(".") as [string, ...string[]];
  const placed = (other: string) => [move.list, other, ...rest].join(".");
  if ("from" in move) return name === move.from ? placed(move.to) : at;
  if (!/^\d+$/.test(name)) return at;
  const number = Number(name);
  return number === move.gone ? placed(`taken-out-${number}`) : number > move.gone ? placed(String(number - 1)) : at;
}

/** Short names that stand in what a change brings: the order of shedding, the selector's inputs, the station that gear follows. */
function renamedWithin(change: Change, { list, from, to }: Extract<Move, { from: string }>): Change {
  const other = (value: unknown) => (value === from ? to : value);
  const swap = (value: unknown): unknown => (Array.isArray(value) ? value.map(other) : other(value));
  const isOf = (...lists: readonly string[]) => lists.includes(list);
  const { at } = change;
  if (change.to !== undefined) {
    const isNamed =
      (at === "shedding" && isOf("gear", "stations")) ||
      (at === "selector.inputs" && isOf("panels", "sources")) ||
      (/^gear\.[^.]+\.use\.station$/.test(at) && isOf("stations"));
    if (isNamed) return { ...change, to: swap(change.to) } as Change;
    if (at === "selector" && isOf("panels", "sources"))
      return { ...change, to: inside(change.to, "inputs", swap) } as Change;
    if (/^gear\.[^.]+\.use$/.test(at) && isOf("stations"))
      return { ...change, to: inside(change.to, "station", swap) } as Change;
  }
  if (change.add !== undefined && at === "gear" && isOf("stations")) {
    return { ...change, add: inside(change.add, "use", (use) => inside(use, "station", swap)) } as Change;
  }
  return change;
}

function inside(value: unknown, key: string, turn: (value: unknown) => unknown): unknown {
  if (typeof value !== "object" || value === null || !Object.hasOwn(value, key)) return value;
  return { ...value, [key]: turn((value as Record<string, unknown>)[key]) };
}
