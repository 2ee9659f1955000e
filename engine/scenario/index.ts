/**
 * scenario: what a person writes down. JSON text ─► readScenario (migrate, validate, fill in, cross-check) ─► Scenario,
 * or a list of problems in sentences. timeGrid turns its local times into equal steps of universal time; changes turn
 * one scenario into another.
 */
export { applyChanges } from "./applyChanges.ts";
export { CHEMISTRIES, type Chemistry } from "./bank.ts";
export type { Change } from "./change.ts";
export { checkedScenario, type ReadResult } from "./checkedScenario.ts";
export { type Difference, differenceInWords, differences } from "./differences.ts";
export { drawnW } from "./draw.ts";
export type { Problem } from "./problem.ts";
export { readScenario, readVariant } from "./readScenario.ts";
export { SCENARIO_VERSION, Scenario, type ScenarioInput } from "./scenario.ts";
export { type TimeGrid, timeGrid } from "./timeGrid.ts";
export { SKY_WORD_NAMES, type SkyWord } from "./weather.ts";
export { withZone, zoneAt } from "./withZone.ts";
export { zoneOf } from "./zoneOf.ts";
