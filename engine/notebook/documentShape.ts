/**
 * What a scenario's document is made of: which fields are lists, things with fields of their own, texts and numbers, and which cannot be
 * left out ("?" marks those that can). It is the frame of the engine's own schema without what values may be, a test holds the two
 * together, and it is small enough to be at hand before anything is shown.
 */
export type Shape =
  | "text"
  | "number"
  | "number or nothing"
  | "yes or no"
  | "anything"
  | readonly [Shape]
  | { readonly [field: string]: Shape }
  | Kinds;

/** A thing that comes in several kinds, by the word in its field `kind`. */
export interface Kinds {
  readonly kinds: { readonly [kind: string]: { readonly [field: string]: Shape } };
}

const WINDOWS = [{ from: "text", to: "text", "days?": ["text"] }] as const;
const DRAW = { "drawW?": "number", "drawA?": "number", "atV?": "number" } as const;
const CABLE = { "awg?": "text", "mm2?": "number", oneWayM: "number", "tempC?": "number" } as const;
const BRING = { "cost?": "number", "massKg?": "number", "setupMinutes?": "number" } as const;
const AIR = {
  "air?": { maxC: "number", minC: "number", "warmestSolarHour?": "number" },
  "linkeTurbidity?": "number",
  "windMs?": "number",
} as const;
const SOURCE = { kind: "text", id: "text", name: "text", "bring?": BRING, "chargeV?": "number" } as const;
const OBSTACLE = { kind: "text", id: "text", "name?": "text" } as const;

const PANELS = {
  id: "text",
  name: "text",
  count: "number",
  "inSeries?": "number",
  module: {
    ratedW: "number",
    "vmpV?": "number",
    "impA?": "number",
    "vocV?": "number",
    "iscA?": "number",
    "powerTempCoeffPerK?": "number",
    "vocTempCoeffPerK?": "number",
    "maxSeriesFuseA?": "number",
    "cells?": "number",
    "bypassSections?": "number",
    "lengthM?": "number",
    "widthM?": "number",
    "wiring?": "text",
  },
  mount: {
    kinds: {
      flat: { kind: "text", "headingDeg?": "number" },
      fixed: { kind: "text", tiltDeg: "number", azimuthDeg: "number" },
      aimed: { kind: "text", aims: [{ at: "text", "tiltDeg?": "number", "azimuthDeg?": "number" }] },
    },
  },
  "out?": WINDOWS,
  at: { eastM: "number", northM: "number", heightM: "number" },
  "cooling?": "text",
  "losses?": [{ name: "text", share: "number" }],
  "controller?": {
    "kind?": "text",
    "efficiencyShare?": "number",
    "ownDrawW?": "number",
    "maxChargeA?": "number or nothing",
    "maxPanelV?": "number",
    "maxPanelA?": "number",
    "fuseA?": "number",
    "stepDownOnly?": "yes or no",
    "at?": "text",
    "cable?": CABLE,
  },
  "bring?": BRING,
} as const;

const BANK = {
  chemistry: "text",
  "nominalV?": "number",
  blockAh: "number",
  "inSeries?": "number",
  "inParallel?": "number",
  "healthShare?": "number",
  startShare: "number",
  reserveShare: "number",
  "maxChargeA?": "number",
  "maxDischargeA?": "number",
  "peakDischargeA?": "number",
  "shortCircuitA?": "number",
  "internalResistanceOhm?": "number",
  "chargingResistanceOhm?": "number",
  "coulombicEfficiencyShare?": "number",
  "peukertExponent?": "number",
  "absorptionV?": "number",
  "acceptancePerH?": "number",
  "disconnectV?": "number",
  "reconnectV?": "number",
  "coldChargeLockC?": "number or nothing",
  "temperature?": "number",
  "openCircuitCurve?": [{ share: "number", cellV: "number" }],
  "name?": "text",
  "bring?": BRING,
} as const;

const STATION = {
  id: "text",
  name: "text",
  radio: { ratedW: "number", receive: DRAW, fullPower: DRAW, "bias?": DRAW, "minimumV?": "number" },
  "companions?": [{ id: "text", name: "text", "count?": "number", "idle?": DRAW, working: DRAW, "works?": "text" }],
  staffed: WINDOWS,
  "whenUnstaffed?": "text",
  "activityByHour?": ["number"],
  modes: [{ mode: "text", share: "number", "sendingShare?": "number" }],
  transmitW: "number",
  sendingShare: "number",
  "ssbCurrent?": "text",
  "interlock?": "text",
  "feed?": { cable: CABLE, "fuseA?": "number", "contactsOhm?": "number" },
} as const;

export const DOCUMENT_SHAPE: { readonly [field: string]: Shape } = {
  "$schema?": "text",
  format: "text",
  version: "number",
  name: "text",
  "note?": "text",
  place: { name: "text", latitudeDeg: "number", longitudeDeg: "number", "elevationM?": "number", "zone?": "text" },
  time: { start: "text", end: "text", "stepMinutes?": "number" },
  weather: {
    kinds: {
      clear: { kind: "text", ...AIR },
      typical: { kind: "text", ...AIR, "monthlyKt?": ["number"], "monthlyGhiKwhM2?": ["number"] },
      words: { kind: "text", ...AIR, days: ["text"] },
      file: { kind: "text", ...AIR, file: "text", "maxDistanceKm?": "number" },
    },
  },
  "gear?": [
    {
      id: "text",
      name: "text",
      "count?": "number",
      "idle?": DRAW,
      working: DRAW,
      use: { when: "text", "windows?": WINDOWS, "station?": "text", "share?": "number" },
    },
  ],
  "stations?": [STATION],
  "panels?": [PANELS],
  "obstacles?": [
    {
      kinds: {
        tree: {
          ...OBSTACLE,
          eastM: "number",
          northM: "number",
          heightM: "number",
          crownBaseM: "number",
          crownRadiusM: "number",
          "trunkRadiusM?": "number",
          "transmittanceInLeafShare?": "number",
          "transmittanceBareShare?": "number",
          "leafShare?": "number",
        },
        box: {
          ...OBSTACLE,
          eastM: "number",
          northM: "number",
          "baseM?": "number",
          heightM: "number",
          lengthM: "number",
          widthM: "number",
          "headingDeg?": "number",
        },
        horizon: { ...OBSTACLE, points: [{ bearingDeg: "number", elevationDeg: "number" }] },
      },
    },
  ],
  bank: BANK,
  "mainFeed?": {
    "cable?": CABLE,
    "contactsOhm?": "number",
    "fuseA?": "number",
    "fuseBreaksA?": "number",
    "fuseFromPostM?": "number",
    "fuseLeadSheathed?": "yes or no",
    "disconnectA?": "number",
    "distributionA?": "number",
  },
  "converter?": { "outputV?": "number", "efficiencyShare?": "number" },
  "sources?": [
    {
      kinds: {
        mains: { ...SOURCE, chargerA: "number", available: WINDOWS },
        generator: {
          ...SOURCE,
          continuousW: "number",
          chargerA: "number",
          "chargerEfficiencyShare?": "number",
          allowed: WINDOWS,
          startShare: "number",
          stopShare: "number",
          burnIdleLPerH: "number",
          burnFullLPerH: "number",
          fuelL: "number",
        },
        vehicle: { ...SOURCE, outputA: "number", running: WINDOWS },
      },
    },
  ],
  "selector?": { "mode?": "text", "inputs?": ["text"] },
  "models?": {
    "transposition?": "text",
    "incidence?": "text",
    "cellTemperature?": "text",
    "diffuseShade?": "text",
    "sectionRule?": "text",
    "albedoShare?": "number",
  },
  "sureness?": {
    "idleDraw?": "text",
    "startCharge?": "text",
    "bankHealth?": "text",
    "canopy?": "text",
    "panelYield?": "text",
  },
  "operators?": { "betweenEventsShare?": "number", "betweenDaysShare?": "number", "byHourShare?": "number" },
  "knownDays?": [{ date: "text", sky: "text", "sureness?": "number" }],
  "shedding?": ["text"],
  "variants?": [
    {
      id: "text",
      name: "text",
      changes: [{ at: "text", "to?": "anything", "add?": "anything", "remove?": "yes or no" }],
    },
  ],
};
