import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import type { OddsTask } from "../../../engine/odds/oddsTask.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import type { SizesTask } from "../../../engine/size/sizesTask.ts";
import { benchScenario } from "../../bench/benchScenario.ts";

/** A day and a half at hourly steps with a bank that some members empty: everything that is counted happens. */
const SMALL: ScenarioInput = {
  ...benchScenario,
  time: { start: "2026-06-11T08:00", end: "2026-06-12T20:00", stepMinutes: 60 },
  weather: { kind: "typical", monthlyKt: Array.from({ length: 12 }, () => 0.42), air: { maxC: 24, minC: 12 } },
  panels: benchScenario.panels!.slice(0, 2),
  sources: [
    {
      kind: "generator",
      id: "generator",
      name: "generator",
      continuousW: 300,
      chargerA: 10,
      allowed: [{ from: "08:00", to: "10:00" }],
      startShare: 0.6,
      stopShare: 0.9,
      burnIdleLPerH: 0.2,
      burnFullLPerH: 0.5,
      fuelL: 1,
    },
  ],
  bank: { chemistry: "agm", blockAh: 60, startShare: 0.8, reserveShare: 0.4 },
};

/** A map of the small scenario with six cells. */
export function oneMapTask(from: number, to: number): SizesTask {
  const x = { at: "bank.blockAh", values: [60, 90, 120] };
  const y = { at: "panels.p1.count", values: [0, 2] };
  return { document: SMALL, x, y, surroundings: {}, seed: "4127", from, to };
}

/** Members of the small scenario as a task. */
export function oneTask(from: number, to: number, seed = "4127"): OddsTask & { kind: "odds" } {
  const read = readScenario(SMALL);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return { kind: "odds", scenario: read.scenario, surroundings: {}, seed, from, to };
}

/** The small scenario's ensemble. */
export function oneEnsemble(seed = "4127"): PreparedEnsemble {
  const { scenario, surroundings } = oneTask(0, 1);
  const ready = prepareEnsemble(scenario, surroundings, seed);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.ensemble;
}
