import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { switchKind } from "./switchKind.ts";

type Item = Record<string, unknown>;

const STARTS: Readonly<Record<string, Item>> = {
  gear: { id: "gear", name: "Lamp", working: { drawW: 5 }, use: { when: "afterDark" } },
  stations: {
    id: "station",
    name: "HF position",
    radio: {
      ratedW: 100,
      receive: { drawA: 1.2, atV: 13.8 },
      fullPower: { drawA: 20, atV: 13.8 },
      bias: { drawA: 3, atV: 13.8 },
    },
    staffed: [{ from: "09:00", to: "22:00" }],
    modes: [{ mode: "ssb", share: 1 }],
    transmitW: 100,
    sendingShare: 0.15,
  },
  companions: { id: "laptop", name: "laptop", working: { drawW: 15 } },
  panels: {
    id: "panels",
    name: "Folding panel",
    count: 1,
    module: { ratedW: 100 },
    mount: { kind: "aimed", aims: [{ at: "09:00" }, { at: "12:30" }, { at: "16:00" }] },
    at: { eastM: 0, northM: -5, heightM: 0.5 },
  },
  aims: { at: "12:00" },
  losses: { name: "dust", share: 0.02 },
  modes: { mode: "cw", share: 0 },
  points: { bearingDeg: 180, elevationDeg: 5 },
  knownDays: { sky: "fair" },
  openCircuitCurve: { share: 0.5, cellV: 3.28 },
  variants: { id: "variant", name: "the same with something different", changes: [{ at: "bank.inParallel", to: 2 }] },
  changes: { at: "bank.inParallel", to: 2 },
};

/** Where a list may be left out, what it starts with when it is not. */
const FIRST: Readonly<Record<string, unknown>> = {
  out: [{ from: "08:00", to: "18:00" }],
  windows: [{ from: "07:00", to: "22:00" }],
  openCircuitCurve: [
    { share: 0, cellV: 2.5 },
    { share: 0.1, cellV: 3.2 },
    { share: 0.9, cellV: 3.33 },
    { share: 1, cellV: 3.45 },
  ],
  monthlyKt: Array.from({ length: 12 }, () => 0.45),
  monthlyGhiKwhM2: [1, 1.8, 3, 4, 5, 5.5, 5.5, 4.7, 3.5, 2.1, 1.2, 0.8],
  monthlyKtSd: Array.from({ length: 12 }, () => 0.16),
  monthlyKtR1: Array.from({ length: 12 }, () => 0.3),
  air: { maxC: 20, minC: 10 },
  converter: { outputV: 13.8 },
  inputs: ["solar"],
};

/** What an optional part starts with when somebody wants to say it. */
export function firstOf(key: string): unknown {
  return structuredClone(FIRST[key] ?? {});
}

/** A short name that nothing in the list has yet: "gear", "gear-2", "gear-3". */
export function freeId(wanted: string, taken: readonly string[]): string {
  const stem = wanted.replace(/-\d+$/, "").slice(0, 36);
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!taken.includes(id)) return id;
  }
}

/** The short names in use where a new one would clash; panel groups and sources share one list of names. */
function takenIds(document: ScenarioInput, key: string, list: readonly unknown[]): string[] {
  const ids = (items: readonly unknown[] | undefined) => (items ?? []).map((item) => String((item as Item).id));
  if (key === "panels" || key === "sources") return ["solar", ...ids(document.panels), ...ids(document.sources)];
  if (key === "gear" || key === "stations") return [...ids(document.gear), ...ids(document.stations)];
  return ids(list);
}

/** The local dates that an event touches: "2026-10-08", … */
export function datesOf(document: ScenarioInput): string[] {
  const from = Date.parse(`${document.time.start.slice(0, 10)}T00:00Z`);
  const to = Date.parse(`${document.time.end.slice(0, 10)}T00:00Z`);
  const days = Math.min(61, Math.max(0, (to - from) / 86_400_000 + 1));
  return Array.from({ length: Number.isFinite(days) ? days : 0 }, (_, i) =>
    new Date(from + i * 86_400_000).toISOString().slice(0, 10),
  );
}

/** A stretch of the clock that follows the last one. */
function nextWindow(list: readonly unknown[]): Item {
  const last = list.at(-1) as { to?: string } | undefined;
  const hour = Number(last?.to?.slice(0, 2) ?? 8) + 1;
  if (!(hour <= 22)) return { from: "05:00", to: "06:00" };
  const clock = (h: number) => `${String(h).padStart(2, "0")}:00`;
  return { from: clock(last === undefined ? 9 : hour), to: clock(last === undefined ? 22 : hour + 1) };
}

/**
 * Something sensible to add to a list, with a name that is free.
 * @param key the list's field name
 * @param kind for a list of several kinds, which
 */
export function newItem(
  document: ScenarioInput,
  key: string,
  node: SchemaNode,
  list: readonly unknown[],
  kind?: string,
): unknown {
  if (kind !== undefined) {
    const id = freeId(kind, takenIds(document, key, list));
    const named = key === "sources" ? { id, name: kind.charAt(0).toUpperCase() + kind.slice(1) } : { id };
    return switchKind(node.items!, named, kind);
  }
  if (["staffed", "windows", "out", "available", "allowed", "running"].includes(key)) return nextWindow(list);
  const item = structuredClone(STARTS[key] ?? {});
  if (typeof item.id === "string") item.id = freeId(item.id, takenIds(document, key, list));
  if (key === "knownDays") {
    const known = list.map((day) => (day as { date?: string }).date);
    const dates = datesOf(document);
    return { date: dates.find((date) => !known.includes(date)) ?? dates[0], ...item };
  }
  if (key === "aims") {
    const last = (list.at(-1) as { at?: string } | undefined)?.at;
    return {
      at: last === undefined ? "12:00" : `${String(Math.min(23, Number(last.slice(0, 2)) + 2)).padStart(2, "0")}:00`,
    };
  }
  if (key === "openCircuitCurve") return item;
  return item;
}

/** A copy of an entry with a name of its own, beside the first so that neither hides the other. */
export function copyOfItem(document: ScenarioInput, key: string, list: readonly unknown[], item: unknown): unknown {
  const copy = structuredClone(item) as Item;
  if (typeof copy.id === "string") copy.id = freeId(copy.id, takenIds(document, key, list));
  if (typeof copy.name === "string") copy.name = `${copy.name.replace(/ \(copy\)$/, "").slice(0, 190)} (copy)`;
  for (const place of [copy, copy.at as Item | undefined]) {
    if (typeof place?.eastM === "number") place.eastM = Math.min(500, place.eastM + 3);
  }
  return copy;
}
