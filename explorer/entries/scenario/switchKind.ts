import type { SchemaNode } from "../../../engine/fields/formSchema.ts";

type Part = Record<string, unknown>;

/** What a new kind needs that the old one does not have; places and names are never invented here. */
const STARTS: Readonly<Record<string, Part>> = {
  flat: {},
  fixed: { tiltDeg: 35, azimuthDeg: 180 },
  aimed: { aims: [{ at: "09:00" }, { at: "12:30" }, { at: "16:00" }] },
  clear: {},
  typical: {},
  words: { days: ["mixed"] },
  file: { file: "weather.csv" },
  tree: { eastM: 8, northM: -8, heightM: 12, crownBaseM: 3, crownRadiusM: 4 },
  box: { eastM: 8, northM: 0, heightM: 3, lengthM: 6, widthM: 3 },
  horizon: {
    points: [
      { bearingDeg: 90, elevationDeg: 5 },
      { bearingDeg: 180, elevationDeg: 5 },
      { bearingDeg: 270, elevationDeg: 5 },
    ],
  },
  mains: { chargerA: 20, available: [{ from: "18:00", to: "23:00" }] },
  generator: {
    continuousW: 900,
    chargerA: 40,
    allowed: [{ from: "08:00", to: "20:00" }],
    startShare: 0.4,
    stopShare: 0.9,
    burnIdleLPerH: 0.3,
    burnFullLPerH: 1,
    fuelL: 5,
  },
  vehicle: { outputA: 30, running: [{ from: "18:00", to: "19:00" }] },
};

/** What the new kind calls by another name, when one stands in for the other. */
const STANDS_FOR: readonly (readonly [string, string])[] = [
  ["available", "allowed"],
  ["available", "running"],
  ["allowed", "running"],
  ["chargerA", "outputA"],
];

/**
 * Turns a thing into another kind of it and keeps what fits: fields of the same name, and fields that mean the same.
 * @param node the schema of all kinds
 * @param days how many local days the event touches, for a word each
 */
export function switchKind(node: SchemaNode, old: unknown, kind: string, days = 1): Part {
  const option = node.oneOf!.find((each) => each.properties?.kind?.const === kind)!;
  const before = (old ?? {}) as Part;
  const now: Part = { kind };
  for (const key of Object.keys(option.properties!)) {
    if (key === "kind") continue;
    const pair = STANDS_FOR.find((names) => names.includes(key) && names.some((name) => before[name] !== undefined));
    const twin = pair?.find((name) => name !== key);
    const kept = before[key] ?? (twin === undefined ? undefined : before[twin]);
    const value = kept ?? STARTS[kind]?.[key];
    if (value !== undefined) now[key] = structuredClone(value);
  }
  if (kind === "words") {
    const words = now.days as string[];
    now.days = Array.from({ length: Math.max(1, Math.min(61, days)) }, (_, i) => words[i] ?? words.at(-1)!);
  }
  return now;
}
