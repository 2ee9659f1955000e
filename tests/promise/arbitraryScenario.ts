import fc from "fast-check";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

type Panels = NonNullable<ScenarioInput["panels"]>[number];
type Obstacles = NonNullable<ScenarioInput["obstacles"]>[number];
type Gear = NonNullable<ScenarioInput["gear"]>[number];
type Stations = NonNullable<ScenarioInput["stations"]>[number];
type Sources = NonNullable<ScenarioInput["sources"]>[number];

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const hour = fc.integer({ min: 0, max: 23 });
const clock = (h: number) => `${String(h).padStart(2, "0")}:00`;
const window = fc
  .tuple(hour, fc.integer({ min: 1, max: 20 }))
  .map(([from, length]) => ({ from: clock(from), to: clock((from + length) % 24) }));

const weather: fc.Arbitrary<ScenarioInput["weather"]> = fc
  .record({
    meanC: real(-15, 30),
    swingC: real(0, 8),
    wind: real(0, 8),
    kind: fc.constantFrom("clear", "words", "typical"),
    words: fc.array(fc.constantFrom("clear", "fair", "mixed", "cloudy", "overcast"), { minLength: 5, maxLength: 5 }),
    kt: real(0, 0.75),
  })
  .map(({ meanC, swingC, wind, kind, words, kt }) => {
    const common = { air: { maxC: meanC + swingC, minC: meanC - swingC }, windMs: wind };
    if (kind === "words") return { kind: "words", days: words, ...common };
    if (kind === "typical") return { kind: "typical", monthlyKt: Array.from({ length: 12 }, () => kt), ...common };
    return { kind: "clear", ...common };
  });

const mount: fc.Arbitrary<Panels["mount"]> = fc.oneof(
  fc.record({ kind: fc.constant("flat" as const), headingDeg: real(0, 360) }),
  fc.record({ kind: fc.constant("fixed" as const), tiltDeg: real(0, 90), azimuthDeg: real(0, 360) }),
  fc.constant({
    kind: "aimed" as const,
    aims: [{ at: "09:00" }, { at: "14:00", tiltDeg: 40, azimuthDeg: 220 }] as {
      at: string;
      tiltDeg?: number;
      azimuthDeg?: number;
    }[],
  }),
);

const panels = (id: string): fc.Arbitrary<Panels> =>
  fc
    .record({
      strings: fc.integer({ min: 1, max: 3 }),
      inSeries: fc.integer({ min: 1, max: 2 }),
      ratedW: real(20, 400),
      wiring: fc.constantFrom("series" as const, "area" as const),
      mount,
      eastM: real(-8, 8),
      northM: real(-8, 8),
      heightM: real(0.1, 3),
      cooling: fc.constantFrom("openRack" as const, "closeRoof" as const, "onRoof" as const),
      kind: fc.constantFrom("mppt" as const, "pwm" as const),
      maxChargeA: fc.option(real(2, 60)),
      stepDownOnly: fc.boolean(),
      at: fc.constantFrom("bank" as const, "panels" as const),
      oneWayM: real(0, 30),
      out: fc.option(window, { nil: undefined }),
    })
    .map((part) => ({
      id,
      name: id,
      count: part.strings * part.inSeries,
      inSeries: part.inSeries,
      module: { ratedW: part.ratedW, wiring: part.wiring },
      mount: part.mount,
      at: { eastM: part.eastM, northM: part.northM, heightM: part.heightM },
      cooling: part.cooling,
      ...(part.out === undefined ? {} : { out: [part.out] }),
      controller: {
        kind: part.kind,
        maxChargeA: part.maxChargeA,
        stepDownOnly: part.stepDownOnly,
        at: part.at,
        cable: { awg: "10" as const, oneWayM: part.oneWayM },
      },
    }));

// Obstacles keep clear of the panels' square, so that none is buried in one.
const obstacle = (id: string): fc.Arbitrary<Obstacles> =>
  fc
    .record({
      bearing: real(0, 360),
      distance: real(16, 40),
      height: real(3, 20),
      isTree: fc.boolean(),
      tau: real(0, 0.6),
    })
    .map(({ bearing, distance, height, isTree, tau }) => {
      const eastM = distance * Math.sin((bearing * Math.PI) / 180);
      const northM = distance * Math.cos((bearing * Math.PI) / 180);
      return isTree
        ? {
            kind: "tree",
            id,
            eastM,
            northM,
            heightM: height,
            crownBaseM: height / 4,
            crownRadiusM: height / 3,
            transmittanceInLeafShare: tau,
          }
        : { kind: "box", id, eastM, northM, heightM: height, lengthM: 6, widthM: 4, headingDeg: 30 };
    });

const gear = (id: string): fc.Arbitrary<Gear> =>
  fc
    .record({
      idle: real(0, 10),
      working: real(0, 60),
      when: fc.constantFrom("always" as const, "byTheClock" as const, "afterDark" as const, "whenStaffed" as const),
      share: real(0, 1),
      window,
    })
    .map((part) => ({
      id,
      name: id,
      idle: { drawW: part.idle },
      working: { drawW: part.idle + part.working },
      use: { when: part.when, share: part.share, ...(part.when === "byTheClock" ? { windows: [part.window] } : {}) },
    }));

const station = (id: string): fc.Arbitrary<Stations> =>
  fc
    .record({
      sending: real(0, 0.9),
      mode: fc.constantFrom("ssb" as const, "cw" as const, "fm" as const),
      watts: real(1, 100),
      window,
      locked: fc.boolean(),
    })
    .map((part) => ({
      id,
      name: id,
      radio: { ratedW: 100, receive: { drawA: 1.2, atV: 13.8 }, fullPower: { drawA: 20, atV: 13.8 } },
      companions: [{ id: "amp", name: "preamplifier", working: { drawW: 9 }, works: "sending" as const }],
      staffed: [part.window],
      modes: [{ mode: part.mode, share: 1 }],
      transmitW: part.watts,
      sendingShare: part.sending,
      ...(part.locked ? { interlock: "one-signal" } : {}),
    }));

const source: fc.Arbitrary<Sources> = fc.oneof(
  fc.record({ amps: real(2, 60), window }).map(({ amps, window: available }) => ({
    kind: "mains" as const,
    id: "mains",
    name: "mains",
    chargerA: amps,
    available: [available],
  })),
  fc.record({ amps: real(10, 60), window, fuel: real(0, 5) }).map(({ amps, window: allowed, fuel }) => ({
    kind: "generator" as const,
    id: "generator",
    name: "generator",
    continuousW: 800,
    chargerA: amps,
    allowed: [allowed],
    startShare: 0.5,
    stopShare: 0.9,
    burnIdleLPerH: 0.25,
    burnFullLPerH: 0.9,
    fuelL: fuel,
  })),
);

/** Valid scenarios of all kinds: one or two days, any season and latitude to 68°, every chemistry, mount and source. */
export const arbitraryScenario: fc.Arbitrary<ScenarioInput> = fc
  .record({
    latitudeDeg: real(-68, 68),
    longitudeDeg: real(-180, 180),
    dayOfYear: fc.integer({ min: 0, max: 364 }),
    hours: fc.integer({ min: 6, max: 54 }),
    stepMinutes: fc.constantFrom(10 as const, 20 as const, 30 as const, 60 as const),
    weather,
    gear: fc.tuple(gear("g1"), gear("g2"), gear("g3")),
    stations: fc
      .array(fc.constant(0), { maxLength: 2 })
      .chain((list) => fc.tuple(...list.map((_, k) => station(`s${k}`)))),
    panels: fc
      .array(fc.constant(0), { maxLength: 3 })
      .chain((list) => fc.tuple(...list.map((_, k) => panels(`p${k}`)))),
    obstacles: fc
      .array(fc.constant(0), { maxLength: 3 })
      .chain((list) => fc.tuple(...list.map((_, k) => obstacle(`o${k}`)))),
    chemistry: fc.constantFrom("lfp" as const, "agm" as const, "flooded" as const),
    blockAh: real(20, 400),
    startShare: real(0, 1),
    healthShare: real(0.5, 1),
    bankTemp: fc.option(real(-15, 35), { nil: "air" as const }),
    sources: fc.array(source, { maxLength: 1 }),
    either: fc.boolean(),
  })
  .map((part) => {
    const startMs = Date.UTC(2026, 0, 1 + part.dayOfYear, 7);
    const local = (ms: number) => new Date(ms).toISOString().slice(0, 16);
    return {
      format: "duskline-scenario",
      version: 1,
      name: "Made at random",
      place: { name: "Anywhere", latitudeDeg: part.latitudeDeg, longitudeDeg: part.longitudeDeg, zone: "Etc/UTC" },
      time: { start: local(startMs), end: local(startMs + part.hours * 3_600_000), stepMinutes: part.stepMinutes },
      weather: part.weather,
      gear: part.gear,
      stations: part.stations,
      panels: part.panels,
      obstacles: part.obstacles,
      bank: {
        chemistry: part.chemistry,
        blockAh: part.blockAh,
        startShare: part.startShare,
        healthShare: part.healthShare,
        reserveShare: 0.2,
        temperature: part.bankTemp,
      },
      sources: part.sources,
      selector: { mode: part.either ? ("either" as const) : ("both" as const) },
    };
  });
