import { readFileSync } from "node:fs";
import type { Scenario } from "../../../engine/index.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";

/** The walnut grove, checked. */
export function exampleScenario(): Scenario {
  const read = readScenario(readFileSync("scenarios/walnut-grove.json", "utf8"));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join("\n"));
  return read.scenario;
}
