import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { readSizeWish, type SizeWish } from "../../../engine/size/sizeAxis.ts";
import { prepareSizes, type SizeMap } from "../../../engine/size/sizeMap.ts";

/** A day and a half in which a bit of everything takes part: trees, a changeover switch, a generator, a 24 V bank. */
export const SIZE_SCENARIO: ScenarioInput = {
  format: "duskline-scenario",
  version: 1,
  name: "A bit of everything",
  place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, elevationM: 300, zone: "Etc/UTC" },
  time: { start: "2026-09-12T08:00", end: "2026-09-13T20:00", stepMinutes: 60 },
  weather: { kind: "typical", monthlyKt: Array.from({ length: 12 }, () => 0.42), air: { maxC: 18, minC: 6 } },
  gear: [
    { id: "router", name: "router", working: { drawW: 12 }, use: { when: "always" } },
    { id: "lamps", name: "lamps", count: 2, working: { drawW: 6 }, use: { when: "afterDark", share: 0.7 } },
  ],
  stations: [
    {
      id: "hf",
      name: "HF",
      radio: { ratedW: 100, receive: { drawW: 18 }, fullPower: { drawA: 20, atV: 13.8 } },
      staffed: [{ from: "08:00", to: "22:00" }],
      modes: [
        { mode: "ssb", share: 0.6 },
        { mode: "cw", share: 0.4 },
      ],
      transmitW: 80,
      sendingShare: 0.25,
      feed: { cable: { awg: "10", oneWayM: 3 } },
    },
  ],
  panels: [
    {
      id: "roof",
      name: "roof",
      count: 2,
      module: { ratedW: 120, cells: 72 },
      mount: { kind: "fixed", tiltDeg: 20, azimuthDeg: 180 },
      at: { eastM: 0, northM: 0, heightM: 2 },
      bring: { cost: 100, massKg: 8 },
    },
  ],
  obstacles: [
    {
      kind: "tree",
      id: "oak",
      eastM: 2,
      northM: -5,
      heightM: 9,
      crownBaseM: 2,
      crownRadiusM: 3,
      transmittanceInLeafShare: 0.2,
    },
  ],
  bank: {
    chemistry: "agm",
    nominalV: 24,
    inSeries: 2,
    blockAh: 100,
    startShare: 0.9,
    reserveShare: 0.4,
    bring: { cost: 150, massKg: 18 },
  },
  converter: { outputV: 13.8, efficiencyShare: 0.9 },
  sources: [
    {
      kind: "generator",
      id: "generator",
      name: "generator",
      continuousW: 300,
      chargerA: 8,
      allowed: [{ from: "18:00", to: "20:00" }],
      startShare: 0.6,
      stopShare: 0.9,
      burnIdleLPerH: 0.2,
      burnFullLPerH: 0.5,
      fuelL: 1,
    },
  ],
  operators: { betweenEventsShare: 0.3 },
  models: { albedoShare: 0.25 },
  knownDays: [{ date: "2026-09-13", sky: "mixed", sureness: 0.4 }],
};

export function wish(text: string): SizeWish {
  const read = readSizeWish(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.wish;
}

/** A map over fields that must be right. @param y left out for a map over one number */
export function sizeMapOf(x: string, y?: string, document: ScenarioInput = SIZE_SCENARIO, seed = "4127"): SizeMap {
  const ready = prepareSizes(document, wish(x), y === undefined ? null : wish(y), {}, seed);
  if (!ready.ok) throw new Error(ready.problems.map((problem) => problem.message).join("\n"));
  return ready.map;
}

/** What is wrong with a map, in one text. */
export function sizeProblems(x: string, y?: string, document: unknown = SIZE_SCENARIO): string {
  const ready = prepareSizes(document, wish(x), y === undefined ? null : wish(y), {}, "4127");
  return ready.ok ? "" : ready.problems.map((problem) => problem.message).join("\n");
}
