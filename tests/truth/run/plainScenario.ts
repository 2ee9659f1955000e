import { type Trace, trace } from "../../../engine/run/trace.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** The barest valid scenario: a bank and nothing else, two June days, mild air; parts are laid over it. */
export function plainInput(parts: Partial<ScenarioInput> = {}): ScenarioInput {
  return {
    format: "duskline-scenario",
    version: 1,
    name: "Plain",
    place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, zone: "Etc/UTC" },
    time: { start: "2026-06-12T00:00", end: "2026-06-14T00:00" },
    weather: { kind: "clear", air: { maxC: 25, minC: 25 } },
    bank: { chemistry: "lfp", blockAh: 100, startShare: 1, reserveShare: 0.2, temperature: 25 },
    ...parts,
  };
}

/** @throws Error with the problems if the scenario is not valid */
export function readPlain(input: ScenarioInput): Scenario {
  const read = readScenario(input);
  if (!read.ok) throw new Error(read.problems.map((problem) => problem.message).join("\n"));
  return read.scenario;
}

/** Runs an input that must be right. */
export function traceInput(input: ScenarioInput): Trace {
  const result = trace(readPlain(input));
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join("\n"));
  return result.trace;
}

/** A load that draws the same current from the bank whatever else happens, as far as the voltage stands near 12.8 V. */
export function steadyLoad(drawA: number, atV: number) {
  return { id: "steady", name: "steady load", working: { drawA, atV }, use: { when: "always" as const } };
}
