/** One thing that differs between two scenarios: where, and what it was and is; undefined where it is not there. */
export interface Difference {
  /** The place, with ids inside lists: `panels.roof.count`. */
  readonly at: string;
  readonly before: unknown;
  readonly after: unknown;
}

type Group = Record<string, unknown>;

const isGroup = (value: unknown): value is Group =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const idOf = (item: unknown) => (isGroup(item) && typeof item.id === "string" ? item.id : null);

/** Fields that tell scenarios apart for people and change no watt. */
const WORDS_ONLY = new Set(["$schema", "name", "note", "variants"]);

/**
 * Lists what differs between two scenarios, list entries matched by their id. Names, notes and variants are left out.
 * @param before and @param after scenarios as `readScenario` gives them
 */
export function differences(before: object, after: object): Difference[] {
  return between(before, after, "").filter(({ at }) => !WORDS_ONLY.has(at.split(".")[0]!));
}

function between(before: unknown, after: unknown, at: string): Difference[] {
  if (Array.isArray(before) && Array.isArray(after) && [...before, ...after].every((item) => idOf(item) !== null)) {
    const ids = [...new Set([...before, ...after].map((item) => idOf(item)!))];
    const named = (list: unknown[], id: string) => list.find((item) => idOf(item) === id);
    return ids.flatMap((id) => between(named(before, id), named(after, id), joined(at, id)));
  }
  if (isGroup(before) && isGroup(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((key) => between(before[key], after[key], joined(at, key)));
  }
  return JSON.stringify(before) === JSON.stringify(after) ? [] : [{ at, before, after }];
}

const joined = (at: string, key: string) => (at === "" ? key : `${at}.${key}`);

/** A difference as a short line: "+ panels.meadow (Folding panels)", "bank.blockAh 280 → 200", "− stations.vhf". */
export function differenceInWords({ at, before, after }: Difference): string {
  if (before === undefined) return `+ ${at}${nameOf(after)}`;
  if (after === undefined) return `− ${at}${nameOf(before)}`;
  return `${at} ${shown(before)} → ${shown(after)}`;
}

function nameOf(value: unknown): string {
  if (isGroup(value)) return typeof value.name === "string" ? ` (${value.name})` : "";
  return ` ${shown(value)}`;
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? "nothing";
  return text.length > 40 ? `${text.slice(0, 37)}…` : text;
}
