import fc from "fast-check";
import { expect, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { replayMember, runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { trace } from "../../engine/run/trace.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../../engine/scenario/scenario.ts";
import type { TimeGrid } from "../../engine/scenario/timeGrid.ts";
import type { SkyLight } from "../../engine/sky/splitDiffuse.ts";
import { plainInput } from "../truth/run/plainScenario.ts";

const climate = await loadClimateTables();
const MEMBERS = 60;

/**
 * Places with a local date on or beside which their clocks change, or nothing does. Havana, Beirut and Nuuk change over midnight;
 * Newfoundland put its clocks back from 00:01 to 23:01 until 2011; Samoa had no 30 December 2011 (the zones' own laws, as the IANA table has them).
 */
const NIGHTS: readonly (readonly [zone: string, latitudeDeg: number, longitudeDeg: number, date: string])[] = [
  ["Europe/Vienna", 46.93, 15.62, "2026-10-08"],
  ["Europe/Vienna", 46.93, 15.62, "2026-10-24"],
  ["Europe/Vienna", 46.93, 15.62, "2026-03-28"],
  ["America/Havana", 23.1, -82.4, "2026-03-07"],
  ["America/Havana", 23.1, -82.4, "2026-10-31"],
  ["Asia/Beirut", 33.9, 35.5, "2026-03-28"],
  ["America/Nuuk", 64.2, -51.7, "2026-03-28"],
  ["Australia/Lord_Howe", -31.5, 159.1, "2026-04-04"],
  ["Asia/Kathmandu", 27.7, 85.3, "2026-01-15"],
  ["America/St_Johns", 47.6, -52.7, "2010-11-06"],
  ["Pacific/Apia", -13.8, -171.8, "2011-12-29"],
  ["Europe/Oslo", 69.65, 18.96, "2026-01-19"],
  ["Europe/Oslo", 69.65, 18.96, "2026-06-20"],
  ["Etc/UTC", 0, 0, "2026-12-31"],
];

const WEATHERS: readonly ScenarioInput["weather"][] = [
  { kind: "typical" },
  { kind: "typical", monthlyKt: Array.from({ length: 12 }, (_, m) => 0.35 + 0.02 * m), air: { maxC: 9, minC: 1 } },
  { kind: "words", days: ["clear", "overcast", "mixed", "clear", "overcast", "clear"] },
];

const clockOf = (minute: number) =>
  `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
const localTime = (date: string, day: number, minute: number) =>
  `${new Date(Date.parse(`${date}T00:00Z`) + day * 86_400_000).toISOString().slice(0, 10)}T${clockOf(minute)}`;

/** Short steps are many: one plan in eight has them. */
const STEPS = [60, 60, 30, 20, 12, 10, 10, 1] as const;
const plan = fc.record({
  night: fc.constantFrom(...NIGHTS),
  weather: fc.constantFrom(...WEATHERS),
  stepMinutes: fc.constantFrom(...STEPS),
  // Where half of the first step, or the last minute, or the first one crosses midnight, or anywhere.
  edge: fc.constantFrom("half" as const, "half" as const, "last" as const, "first" as const, "any" as const),
  anyMinute: fc.integer({ min: 0, max: 1439 }),
  nights: fc.integer({ min: 1, max: 3 }),
  endMinute: fc.integer({ min: 0, max: 1439 }),
});
type Plan = typeof plan extends fc.Arbitrary<infer T> ? T : never;

/** @returns null where the clocks skip the start or the end */
function scenarioAt(made: Plan, later: number): Scenario | null {
  const [zone, latitudeDeg, longitudeDeg, date] = made.night;
  const ofEdge = { half: 1439 - Math.floor(made.stepMinutes / 2), last: 1439, first: 0, any: made.anyMinute };
  const start = ofEdge[made.edge] + later;
  const raw = plainInput({
    place: { name: "Somewhere (invented)", latitudeDeg, longitudeDeg, zone },
    time: {
      start: localTime(date, Math.floor(start / 1440), start % 1440),
      end: localTime(date, made.nights + 1, made.endMinute),
      stepMinutes: made.stepMinutes,
    },
    // Words are told by day from the start's on: past midnight the first is over.
    weather:
      made.weather.kind === "words"
        ? { ...made.weather, days: made.weather.days.slice(Math.floor(start / 1440)) }
        : made.weather,
    bank: { chemistry: "agm", blockAh: 60, startShare: 0.7, reserveShare: 0.3, temperature: "air" },
    gear: [{ id: "steady", name: "steady load", working: { drawW: 12 }, use: { when: "always" } }],
    panels: [
      {
        id: "panel",
        name: "panel",
        count: 1,
        at: { eastM: 0, northM: 0, heightM: 1 },
        module: { ratedW: 80 },
        mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: latitudeDeg < 0 ? 0 : 180 },
        controller: { kind: "mppt", cable: { awg: "10", oneWayM: 3 } },
      },
    ],
  });
  const read = readScenario(raw);
  if (read.ok) return read.scenario;
  if (read.problems.every(({ code }) => code === "skipped-hour" || code === "no-such-date")) return null;
  throw new Error(read.problems.map(({ message }) => message).join("\n"));
}

/** Light on the level by date, Wh/m², of the days that the event covers whole. */
function lightByDate({ grid }: { grid: TimeGrid }, light: SkyLight): Map<string, number> {
  const sums = new Map<string, number>();
  for (let i = 0; i < grid.steps; i++) {
    const day = grid.localDay[i]!;
    if (day === 0 || day === grid.dates.length - 1) continue;
    const date = grid.dates[day]!;
    sums.set(date, (sums.get(date) ?? 0) + light.ghiWm2[i]! * grid.stepH);
  }
  return sums;
}

function ensembleOf(scenario: Scenario) {
  const ready = prepareEnsemble(scenario, { climate }, "a minute");
  if (!ready.ok) throw new Error(ready.problems.map(({ message }) => message).join("\n"));
  return ready.ensemble;
}

function traceOf(scenario: Scenario) {
  const ran = trace(scenario, { climate });
  if (!ran.ok) throw new Error(ran.problems.map(({ message }) => message).join("\n"));
  return ran.trace;
}

const mean = (values: ArrayLike<number>) => Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;
function squaredError(values: ArrayLike<number>): number {
  const middle = mean(values);
  return (
    Array.from(values).reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1) / values.length
  );
}

const RUNS = { numRuns: 24, seed: 20261130 };
const PATIENCE_MS = 240_000;

test(
  "a start one minute later gives every whole day the same light, by its date",
  () => {
    fc.assert(
      fc.property(plan, (made) => {
        const [here, later] = [scenarioAt(made, 0), scenarioAt(made, 1)];
        fc.pre(here !== null && later !== null);
        const [first, second] = [traceOf(here!), traceOf(later!)];
        const [before, after] = [first, second].map((run) => lightByDate(run.prepared, run.prepared.light));
        for (const [date, wh] of before!) {
          if (!after!.has(date)) continue;
          // Steps of an hour see the sun once an hour, and where it hardly rises that is by chance.
          expect(Math.abs(after!.get(date)! - wh), date).toBeLessThanOrEqual(
            0.015 * wh + 12 * first.prepared.grid.stepH,
          );
        }
        expect(first.days.map(({ date }) => date)).toEqual(first.prepared.grid.dates);
        expect(first.days.reduce((sum, { hours }) => sum + hours, 0)).toBeCloseTo(
          first.prepared.grid.steps * first.prepared.grid.stepH,
          9,
        );
      }),
      { ...RUNS, numRuns: 60 },
    );
  },
  PATIENCE_MS,
);

test(
  "a start one minute later moves the odds by less than the sampling error",
  () => {
    fc.assert(
      fc.property(plan, (made) => {
        // Steps of a minute are many; one night of them is enough.
        const short = made.stepMinutes === 1 ? { ...made, nights: 1 } : made;
        const [here, later] = [scenarioAt(short, 0), scenarioAt(short, 1)];
        fc.pre(here !== null && later !== null);
        const [first, second] = [here!, later!].map(
          (scenario) => runMembers(ensembleOf(scenario), 0, MEMBERS).outcomes,
        );
        for (const key of ["lowestShare", "endShare"] as const) {
          const [a, b] = [first![key], second![key]];
          const error = Math.sqrt(squaredError(a) + squaredError(b));
          // Five standard errors: among some hundred comparisons none should be farther off by chance.
          expect(Math.abs(mean(a) - mean(b)), key).toBeLessThan(5 * error + 0.01);
        }
      }),
      RUNS,
    );
  },
  PATIENCE_MS,
);

test(
  "under typical weather the days of a trace are those of its members, each with its light and its air",
  () => {
    fc.assert(
      fc.property(plan, (made) => {
        const scenario = scenarioAt(
          { ...made, weather: made.weather.kind === "words" ? WEATHERS[0]! : made.weather },
          0,
        );
        fc.pre(scenario !== null);
        const ran = traceOf(scenario!);
        const typical = lightByDate(ran.prepared, ran.prepared.light);
        const ensemble = ensembleOf(scenario!);
        const { endShare } = runMembers(ensemble, 0, 3).outcomes;
        const lights = new Map(Array.from(typical.keys(), (date) => [date, [] as number[]]));
        const airs: number[] = [];
        for (let member = 0; member < MEMBERS; member++) {
          const replay = replayMember(ensemble, member);
          if (member < 3) expect(replay.chargeShare.at(-1)).toBe(endShare[member]);
          expect(replay.days.map(({ date, hours }) => [date, hours])).toEqual(
            ran.days.map(({ date, hours }) => [date, hours]),
          );
          for (const [date, wh] of lightByDate(ran.prepared, replay.prepared.light)) lights.get(date)!.push(wh);
          airs.push(mean(replay.prepared.airTempC));
        }
        for (const [date, drawn] of lights) {
          const wh = typical.get(date)!;
          // The tables' mean is off by ktRms from member to member alike; that is part of the members' spread.
          expect(Math.abs(mean(drawn) - wh), date).toBeLessThan(5 * Math.sqrt(squaredError(drawn)) + 0.08 * wh + 5);
        }
        expect(Math.abs(mean(airs) - mean(ran.prepared.airTempC))).toBeLessThan(5 * Math.sqrt(squaredError(airs)) + 2);
      }),
      { ...RUNS, numRuns: 12 },
    );
  },
  PATIENCE_MS,
);
