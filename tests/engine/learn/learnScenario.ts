import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import type { Reading } from "../../../engine/learn/reading.ts";
import { type PlacedReading, readReadings } from "../../../engine/learn/readReadings.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** A small station in July, two days, its weather typed in, with a generator and panels that can be turned. All invented. */
export function learnInput(parts: Partial<ScenarioInput> = {}): ScenarioInput {
  return {
    format: "duskline-scenario",
    version: 1,
    name: "Small station (invented)",
    place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, zone: "Europe/Vienna" },
    time: { start: "2026-07-10T10:00", end: "2026-07-12T10:00", stepMinutes: 30 },
    weather: { kind: "typical", monthlyKt: Array.from({ length: 12 }, () => 0.5), air: { maxC: 24, minC: 12 } },
    gear: [
      { id: "router", name: "Router", working: { drawW: 15 }, use: { when: "always" } },
      { id: "lamps", name: "Lamps", working: { drawW: 20 }, use: { when: "afterDark" } },
    ],
    stations: [
      {
        id: "hf",
        name: "HF position",
        radio: { ratedW: 100, receive: { drawW: 15 }, fullPower: { drawW: 270 } },
        staffed: [{ from: "09:00", to: "23:00" }],
        modes: [{ mode: "data", share: 1 }],
        transmitW: 50,
        sendingShare: 0.15,
      },
    ],
    panels: [
      {
        id: "field",
        name: "Field panels",
        count: 2,
        module: { ratedW: 50 },
        mount: { kind: "fixed", tiltDeg: 60, azimuthDeg: 180 },
        at: { eastM: 0, northM: 0, heightM: 0.8 },
      },
    ],
    bank: { chemistry: "lfp", blockAh: 130, startShare: 0.9, reserveShare: 0.2, temperature: 20 },
    sureness: { idleDraw: "guess", panelYield: "dataSheet" },
    ...parts,
  };
}

/** @throws Error with the problems if the scenario is not valid */
export function learnEnsemble(parts: Partial<ScenarioInput> = {}, seed = "learn"): PreparedEnsemble {
  const read = readScenario(learnInput(parts));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  const ready = prepareEnsemble(read.scenario, {}, seed);
  if (!ready.ok) throw new Error(ready.problems.map(({ message }) => message).join(" "));
  return ready.ensemble;
}

/** @throws Error with the problems if a reading is not valid */
export function placed(ensemble: PreparedEnsemble, readings: readonly Reading[]): readonly PlacedReading[] {
  const read = readReadings({ format: "duskline-readings", version: 1, readings }, ensemble.prepared.grid);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  return read.readings;
}
