import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** A thing that draws so many amperes at 13 V, all the time. */
export const gear = (id: string, amps: number, lead?: object) => ({
  id,
  name: id,
  count: 2,
  working: { drawW: (amps * 13) / 2 },
  use: { when: "always" as const },
  ...(lead === undefined ? {} : { lead }),
});

/** A plan on 24 V with something of everything and much of it wrong: two panel groups, a generator, a van, two strings, a converter. */
export const nastyPlan = (): ScenarioInput => ({
  format: "duskline-scenario",
  version: 1,
  name: "Nasty",
  place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, zone: "Europe/Berlin" },
  time: { start: "2026-06-12T00:00", end: "2026-06-13T00:00", stepMinutes: 60 },
  weather: { kind: "clear", air: { maxC: 25, minC: 10 } },
  gear: [
    {
      id: "fridge",
      name: "Compressor fridge",
      working: { drawW: 50 },
      use: { when: "always", share: 0.3 },
      lead: { cable: { awg: "14", oneWayM: 3 } },
    },
    { id: "r", name: "Router", working: { drawW: 12 }, use: { when: "always" } },
    { id: "l", name: "Lamps", working: { drawW: 20 }, use: { when: "afterDark" } },
  ],
  stations: [
    {
      id: "a",
      name: "HF run position in the big tent",
      radio: { ratedW: 100, receive: { drawA: 1, atV: 13.8 }, fullPower: { drawA: 20, atV: 13.8 } },
      staffed: [{ from: "00:00", to: "24:00" }],
      modes: [{ mode: "fm", share: 1 }],
      transmitW: 100,
      sendingShare: 0.2,
      feed: { cable: { awg: "14", oneWayM: 4 }, fuseA: 30 },
    },
    {
      id: "b",
      name: "VHF",
      radio: { ratedW: 50, receive: { drawA: 0.6, atV: 13.8 }, fullPower: { drawA: 10, atV: 13.8 } },
      staffed: [{ from: "00:00", to: "24:00" }],
      modes: [{ mode: "fm", share: 1 }],
      transmitW: 50,
      sendingShare: 0.1,
    },
  ],
  panels: [
    {
      id: "roof",
      name: "Van roof",
      count: 2,
      module: { ratedW: 200 },
      mount: { kind: "flat" },
      at: { eastM: 0, northM: 0, heightM: 2.7 },
      controller: { maxChargeA: 30, fuseA: 40, maxPanelV: 50 },
    },
    {
      id: "fold",
      name: "Folding",
      count: 4,
      module: { ratedW: 120 },
      mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 },
      at: { eastM: 5, northM: 0, heightM: 0.5 },
      controller: { maxChargeA: 20 },
    },
  ],
  bank: {
    chemistry: "lfp",
    nominalV: 24,
    inSeries: 2,
    inParallel: 2,
    blockAh: 100,
    startShare: 1,
    reserveShare: 0.2,
    temperature: 20,
  },
  mainFeed: { cable: { awg: "10", oneWayM: 1 }, fuseA: 100, disconnectA: 50, distributionA: 30 },
  converter: { outputV: 13.8, maxOutputA: 40 },
  sources: [
    {
      kind: "generator",
      id: "g",
      name: "Generator",
      continuousW: 900,
      chargerA: 25,
      allowed: [{ from: "10:00", to: "13:00" }],
      startShare: 0.4,
      stopShare: 0.8,
      burnIdleLPerH: 0.2,
      burnFullLPerH: 0.6,
      fuelL: 5,
    },
    {
      kind: "vehicle",
      id: "v",
      name: "Van alternator",
      outputA: 30,
      running: [{ from: "15:00", to: "17:00" }],
      lead: { cable: { awg: "8", oneWayM: 4 }, fuseA: 40 },
    },
  ],
});
