import { gearChange } from "../gear/gearChange.ts";
import { GENERIC_GEAR } from "../gear/gearTable.ts";
import type { Measurement } from "../gear/measuredGear.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import { COMMON_GEAR } from "./commonGear.ts";

type Gear = NonNullable<ScenarioInput["gear"]>[number];
type Station = NonNullable<ScenarioInput["stations"]>[number];
type Obstacle = NonNullable<ScenarioInput["obstacles"]>[number];
type Panels = NonNullable<ScenarioInput["panels"]>[number];
type Source = NonNullable<ScenarioInput["sources"]>[number];

/** Radios that one chooses among, by their kind on the gear shelf. */
export const RADIOS = {
  hf100: { name: "HF, 100 W set", gear: "hf-100" },
  hf10: { name: "HF, 10 W set", gear: "hf-10" },
  fm50: { name: "VHF FM, 50 W set", gear: "fm-50" },
} as const;

/** How much of the staffed time is spent sending (common practice, no source). */
export const KEENNESS = {
  listening: { words: "mostly listening", sendingShare: 0.05 },
  chatting: { words: "chatting", sendingShare: 0.15 },
  calling: { words: "calling a lot", sendingShare: 0.3 },
  contest: { words: "running a contest", sendingShare: 0.5 },
} as const;

export const HOURS = {
  evening: { words: "evenings, 17 to 22", windows: [{ from: "17:00", to: "22:00" }] },
  day: { words: "days, 9 to 18", windows: [{ from: "09:00", to: "18:00" }] },
  waking: { words: "all waking hours, 8 to 23", windows: [{ from: "08:00", to: "23:00" }] },
  clock: { words: "round the clock", windows: [{ from: "00:00", to: "24:00" }] },
} as const;

export const MODES = { ssb: "voice (SSB)", cw: "Morse (CW)", data: "data" } as const;
export const PLACING = {
  flat: "flat on a roof",
  fixed: "propped towards the noon sun",
  aimed: "re-aimed three times a day",
} as const;
export const CONTROLLERS = { mppt: "MPPT", pwm: "PWM" } as const;
export const CHEMISTRY = { lfp: "LFP", agm: "AGM", flooded: "flooded lead" } as const;
export const BACKUP = {
  none: "nothing else",
  mains: "a mains hook-up in the evening",
  generator: "a small generator by day",
} as const;
export const SHADE = { open: "in the open", some: "some trees around", under: "under trees" } as const;

/** What the six questions ask. */
export interface StartAnswers {
  readonly placeName: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  /** Local times, "2026-10-09T12:00". */
  readonly start: string;
  readonly end: string;
  /** How many of each kind on the gear shelf, by its id. */
  readonly gear: Readonly<Record<string, number>>;
  readonly stations: number;
  readonly radio: keyof typeof RADIOS;
  readonly mode: keyof typeof MODES;
  readonly transmitW: number;
  readonly hours: keyof typeof HOURS;
  readonly keenness: keyof typeof KEENNESS;
  readonly panels: number;
  readonly panelW: number;
  readonly placing: keyof typeof PLACING;
  readonly controller: keyof typeof CONTROLLERS;
  readonly backup: keyof typeof BACKUP;
  readonly chemistry: keyof typeof CHEMISTRY;
  readonly blockAh: number;
  readonly blocks: number;
  readonly shade: keyof typeof SHADE;
}

/** Kinds of gear that may come along besides the radios, the common ones first. */
const ASKED_FIRST = [
  ...new Set(
    [...COMMON_GEAR, ...GENERIC_GEAR.filter(({ radio }) => radio === null).map((gear) => ({ gear }))].map(
      ({ gear }) => gear.id,
    ),
  ),
];

const DAY_MS = 86_400_000;

/**
 * Answers that make a plan before anybody has answered: two operators, a weekend, a panel and a bank of common size.
 * @param today a date, "2026-10-05"; the plan starts on the first Friday after it
 */
export function defaultAnswers(today: string): StartAnswers {
  const todayMs = Date.parse(`${today}T00:00Z`);
  const daysToFriday = (5 - new Date(todayMs).getUTCDay() + 7) % 7 || 7;
  const date = (days: number) => new Date(todayMs + (daysToFriday + days) * DAY_MS).toISOString().slice(0, 10);
  return {
    placeName: "Our place",
    latitudeDeg: 47,
    longitudeDeg: 15.5,
    elevationM: 400,
    start: `${date(0)}T14:00`,
    end: `${date(2)}T14:00`,
    gear: Object.fromEntries(COMMON_GEAR.map(({ gear, usual }) => [gear.id, usual])),
    stations: 1,
    radio: "hf100",
    mode: "ssb",
    transmitW: 100,
    hours: "waking",
    keenness: "chatting",
    panels: 2,
    panelW: 100,
    placing: "fixed",
    controller: "mppt",
    backup: "none",
    chemistry: "lfp",
    blockAh: 100,
    blocks: 1,
    shade: "open",
  };
}

/**
 * The scenario that the answers describe; it reads as it is whenever the numbers are in their ranges.
 * @param measured what somebody measured of their gear: it goes before what is usual
 */
export function startScenario(answers: StartAnswers, measured: readonly Measurement[] = []): ScenarioInput {
  const isBright = answers.latitudeDeg >= -58.5; // the climate tables end there
  return {
    format: "duskline-scenario",
    version: 1,
    name: answers.placeName,
    place: {
      name: answers.placeName,
      latitudeDeg: answers.latitudeDeg,
      longitudeDeg: answers.longitudeDeg,
      elevationM: answers.elevationM,
    },
    time: { start: answers.start, end: answers.end, stepMinutes: 10 },
    weather: isBright
      ? { kind: "typical" }
      : {
          kind: "words",
          days: Array.from({ length: daysTouched(answers) }, () => "mixed"),
          air: { maxC: 0, minC: -8 },
        },
    gear: ASKED_FIRST.filter((id) => (answers.gear[id] ?? 0) > 0).map((id) => ({
      ...(fromShelf(id, measured) as Gear),
      count: answers.gear[id]!,
    })),
    stations: Array.from({ length: answers.stations }, (_, n) => stationOf(answers, n, measured)),
    panels: answers.panels > 0 ? [panelsOf(answers)] : [],
    obstacles: treesOf(answers),
    bank: {
      chemistry: answers.chemistry,
      blockAh: answers.blockAh,
      inParallel: answers.blocks,
      startShare: 1,
      reserveShare: answers.chemistry === "lfp" ? 0.2 : 0.5,
    },
    sources: sourcesOf(answers),
    variants: [
      { id: "folding", name: "with two folding panels", changes: [{ at: "panels", add: foldingPair(answers) }] },
    ],
  };
}

/** Metres to the equator's side at which a pair stands clear of the trees that the questions plant. */
const CLEAR_M = 27;
const NEAR_M = 6;

/**
 * Two folding panels of a common size in the open, re-aimed three times a day: what a club most often borrows. Sizes, mass and minutes are
 * common practice, no source; what they cost is for whoever buys them to say.
 */
function foldingPair({ shade, latitudeDeg }: StartAnswers) {
  const awayM = shade === "open" ? NEAR_M : CLEAR_M;
  return {
    id: "folding",
    name: "Folding panels in the open",
    count: 2,
    inSeries: 2,
    module: { ratedW: 120, vmpV: 18.2, impA: 6.6, vocV: 22, iscA: 7 },
    mount: { kind: "aimed", aims: [{ at: "08:00" }, { at: "11:30" }, { at: "15:00" }] },
    at: { eastM: 3, northM: latitudeDeg < 0 ? awayM : -awayM, heightM: 0.5 },
    controller: { kind: "mppt", maxChargeA: 20, cable: { awg: "10", oneWayM: awayM } },
    bring: { massKg: 7, setupMinutes: 12 },
  };
}

function daysTouched({ start, end }: StartAnswers): number {
  const day = (local: string) => Date.parse(`${local.slice(0, 10)}T00:00Z`) / DAY_MS;
  const days = day(end) - day(start) + 1;
  return Math.min(61, Math.max(1, Number.isFinite(days) ? days : 1));
}

/** Full transmit power of a radio that one chooses. */
export function ratedWOf(radio: keyof typeof RADIOS): number {
  return GENERIC_GEAR.find(({ id }) => id === RADIOS[radio].gear)!.radio!.ratedW;
}

/** What the shelf would put into a scenario. */
function fromShelf(id: string, measured: readonly Measurement[]): unknown {
  const gear = GENERIC_GEAR.find((each) => each.id === id)!;
  return gearChange(
    gear,
    measured.find((each) => each.gear === id),
    [],
  ).add;
}

function stationOf(answers: StartAnswers, n: number, measured: readonly Measurement[]): Station {
  const { radio } = fromShelf(RADIOS[answers.radio].gear, measured) as Station;
  const mode = answers.radio === "fm50" && answers.mode !== "data" ? "fm" : answers.mode;
  return {
    id: `station-${n + 1}`,
    name: answers.stations === 1 ? "Station" : `Station ${n + 1}`,
    radio,
    staffed: HOURS[answers.hours].windows.map((window) => ({ ...window })),
    modes: [{ mode, share: 1 }],
    transmitW: Math.min(answers.transmitW, radio.ratedW),
    sendingShare: KEENNESS[answers.keenness].sendingShare,
  };
}

function panelsOf(answers: StartAnswers): Panels {
  const toEquator = answers.latitudeDeg < 0 ? 0 : 180;
  const tiltDeg = Math.round(Math.min(70, Math.max(10, Math.abs(answers.latitudeDeg))));
  const mounts: Record<StartAnswers["placing"], Panels["mount"]> = {
    flat: { kind: "flat" },
    fixed: { kind: "fixed", tiltDeg, azimuthDeg: toEquator },
    aimed: { kind: "aimed", aims: [{ at: "08:00" }, { at: "11:30" }, { at: "15:00" }] },
  };
  const isRoof = answers.placing === "flat";
  return {
    id: "panels",
    name: isRoof ? "Roof panels" : "Panels on the grass",
    count: answers.panels,
    module: { ratedW: answers.panelW },
    mount: mounts[answers.placing],
    at: { eastM: 0, northM: 0, heightM: isRoof ? 2.5 : 0.5 },
    controller: { kind: answers.controller },
  };
}

/** Bearing from north, distance and height of each tree, all in metres but the bearing. */
const TREES: Record<StartAnswers["shade"], readonly (readonly [number, number, number])[]> = {
  open: [],
  some: [
    [110, 14, 12],
    [180, 16, 10],
    [245, 13, 13],
  ],
  under: [
    [90, 6, 12],
    [150, 5, 13],
    [205, 6, 12],
    [265, 6, 14],
    [20, 7, 12],
  ],
};

function treesOf(answers: StartAnswers): Obstacle[] {
  const mirrored = answers.latitudeDeg < 0; // the sun stands north there, and so do the trees that matter
  return TREES[answers.shade].map(([bearing, distance, heightM], n) => {
    const rad = ((mirrored ? 540 - bearing : bearing) * Math.PI) / 180;
    const metres = (value: number) => Math.round(value * 10) / 10;
    return {
      kind: "tree",
      id: `tree-${n + 1}`,
      eastM: metres(distance * Math.sin(rad)),
      northM: metres(distance * Math.cos(rad)),
      heightM,
      crownBaseM: 3,
      crownRadiusM: answers.shade === "under" ? 5 : 4,
    };
  });
}

function sourcesOf(answers: StartAnswers): Source[] {
  // A fifth of the bank's ampere-hours an hour suits every chemistry.
  const chargerA = Math.min(60, Math.max(5, Math.round((answers.blockAh * answers.blocks) / 5)));
  if (answers.backup === "mains") {
    return [
      { kind: "mains", id: "mains", name: "Mains hook-up", chargerA, available: [{ from: "18:00", to: "23:00" }] },
    ];
  }
  if (answers.backup === "none") return [];
  return [
    {
      kind: "generator",
      id: "generator",
      name: "Generator",
      continuousW: 900,
      chargerA,
      allowed: [{ from: "08:00", to: "20:00" }],
      startShare: 0.4,
      stopShare: 0.9,
      burnIdleLPerH: 0.3,
      burnFullLPerH: 1,
      fuelL: 5,
    },
  ];
}
