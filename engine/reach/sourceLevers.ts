import type { Scenario } from "../scenario/scenario.ts";
import type { Generator, Source } from "../scenario/source.ts";
import { clockAt, durationWords, endedLater, windowsWords } from "./clockWindows.ts";
import { type Amount, added, type Lever, NOT_STATED, NOTHING, put } from "./lever.ts";

/** A charger on the vehicle's alternator, and a small generator with a charger, where the plan has none (common practice, no source). */
const ENGINE_A = 20;
const GENERATOR = {
  continuousW: 1000,
  chargerA: 40,
  startShare: 0.95,
  stopShare: 0.99,
  burnIdleLPerH: 0.3,
  burnFullLPerH: 1,
};
const MORNING = 8 * 60;
const ENGINE_STEP_MINUTES = 10;
const MOST_ENGINE_MINUTES = 240;
const GENERATOR_STEP_MINUTES = 30;
const MOST_GENERATOR_MINUTES = 360;
/** Hours of what is there already, in steps. */
const MORE_STEP_MINUTES = 30;
const MOST_MORE_MINUTES = 360;
const MOST_MORE_L = 10;
const MOST_FUEL_L = 2000;

/** More hours of what charges the bank beside the sun; where nothing does, an engine or a generator in the morning. */
export function sourceLevers(scenario: Scenario): Lever[] {
  const { sources, bank } = scenario;
  const has = (kind: Source["kind"]) => sources.some((source) => source.kind === kind);
  return [
    ...sources.map(moreHours),
    ...sources.flatMap((source) => (source.kind === "generator" ? [moreFuel(source)] : [])),
    ...(has("vehicle") || bank.nominalV !== 12 ? [] : [morningEngine(scenario)]),
    ...(has("generator") ? [] : [morningGenerator(scenario)]),
  ].filter(({ amounts }) => amounts.length > 0);
}

const HOURS_FIELD = { mains: "available", generator: "allowed", vehicle: "running" } as const;

function windowsOf(source: Source) {
  if (source.kind === "mains") return source.available;
  return source.kind === "generator" ? source.allowed : source.running;
}

function moreHours(source: Source): Lever {
  const field = HOURS_FIELD[source.kind];
  const now = windowsOf(source);
  const amounts: Amount[] = [];
  for (let more = MORE_STEP_MINUTES; more <= MOST_MORE_MINUTES; more += MORE_STEP_MINUTES) {
    const windows = endedLater(now, more);
    if (JSON.stringify(windows) === JSON.stringify(amounts.at(-1)?.changes[0]?.to ?? now)) break;
    amounts.push({
      words: `${windowsWords(windows)}, was ${windowsWords(now)}`,
      changes: [put(`sources.${source.id}.${field}`, windows)],
      price: { ...NOTHING, cost: null },
      why: "it charges for longer, sun or no sun",
    });
  }
  const id = `source-${source.id}`;
  // A generator is started and stopped by the charge, so that an hour more of it may come at a worse time.
  const isMonotone = source.kind !== "generator";
  const name = `${source.name}, more hours`;
  return { id, kind: "source", name, amounts, isMonotone, touches: [`sources.${source.id}.${field}`] };
}

function moreFuel({ id, name, fuelL }: Generator): Lever {
  const amounts: Amount[] = [];
  for (let more = 1; more <= MOST_MORE_L && fuelL + more <= MOST_FUEL_L; more++) {
    amounts.push({
      words: `${Number((fuelL + more).toFixed(2))} L, was ${fuelL} L`,
      changes: [{ at: `sources.${id}.fuelL`, to: fuelL + more }],
      price: { ...NOTHING, cost: null, massKg: null },
      why: "it runs until the fuel is gone",
    });
  }
  return {
    id: `fuel-${id}`,
    kind: "fuel",
    name: `${name}, more fuel`,
    amounts,
    isMonotone: true,
    touches: [`sources.${id}.fuelL`],
  };
}

function freeId(scenario: Scenario, wanted: string): string {
  const taken = [...scenario.sources, ...scenario.panels].map(({ id }) => id);
  let id = wanted;
  for (let n = 2; taken.includes(id); n++) id = `${wanted}-${n}`;
  return id;
}

const morning = (minutes: number) => [{ from: clockAt(MORNING), to: clockAt(MORNING + minutes) }];

function morningEngine(scenario: Scenario): Lever {
  const id = freeId(scenario, "engine");
  const amounts: Amount[] = [];
  for (let minutes = ENGINE_STEP_MINUTES; minutes <= MOST_ENGINE_MINUTES; minutes += ENGINE_STEP_MINUTES) {
    const source = { kind: "vehicle", id, name: "Vehicle's engine", outputA: ENGINE_A, running: morning(minutes) };
    amounts.push({
      words: `${durationWords(minutes)} each morning`,
      changes: [added("sources", source)],
      price: NOT_STATED,
      why: `if there is one to run: ${Math.round((ENGINE_A * minutes) / 60)} Ah each morning`,
    });
  }
  const name = `Vehicle's engine, ${ENGINE_A} A`;
  return { id: "engine", kind: "source", name, amounts, isMonotone: true, touches: [`sources.${id}`] };
}

function morningGenerator(scenario: Scenario): Lever {
  const id = freeId(scenario, "generator");
  const days = (Date.parse(`${scenario.time.end}Z`) - Date.parse(`${scenario.time.start}Z`)) / 86_400_000;
  const amounts: Amount[] = [];
  for (let minutes = GENERATOR_STEP_MINUTES; minutes <= MOST_GENERATOR_MINUTES; minutes += GENERATOR_STEP_MINUTES) {
    const fuelL = Math.ceil((GENERATOR.burnFullLPerH * minutes * (days + 1)) / 60);
    const source = { kind: "generator", id, name: "Generator", ...GENERATOR, allowed: morning(minutes), fuelL };
    amounts.push({
      words: `${durationWords(minutes)} each morning`,
      changes: [added("sources", source)],
      price: NOT_STATED,
      why: `if there is one: at most ${Math.round((GENERATOR.chargerA * minutes) / 60)} Ah each morning`,
    });
  }
  const name = `Generator, ${GENERATOR.chargerA} A`;
  return { id: "generator", kind: "source", name, amounts, isMonotone: true, touches: [`sources.${id}`] };
}
