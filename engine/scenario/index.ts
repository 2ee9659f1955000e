/**
 * scenario: what a person writes down. JSON text ─► readScenario (migrate, validate, fill in, cross-check) ─► Scenario,
 * or a list of problems in sentences. timeGrid turns its local times into equal steps of universal time; changes turn
 * one scenario into another.
 */
export { applyChanges } from "./applyChanges.ts";
export { Bank, type BankBox, CHEMISTRIES, type Chemistry } from "./bank.ts";
export { Bring } from "./bring.ts";
export { Cable, panelCableOf, radioLeadOf, USUAL_PANEL_CABLE, USUAL_RADIO_LEAD, WIRE_GAUGES } from "./cable.ts";
export { SURENESS_WORDS, Sureness, type SurenessWord } from "./chanceFields.ts";
export { Change } from "./change.ts";
export { checkedScenario, type ReadResult } from "./checkedScenario.ts";
export { ClockTime, clockMinute } from "./clockTime.ts";
export { ClockWindow, hoursIn, windowShare } from "./clockWindow.ts";
export { coolingOf } from "./coolingOf.ts";
export { crossCheck } from "./crossCheck.ts";
export { type Difference, differenceInWords, differences } from "./differences.ts";
export { Draw, drawnW } from "./draw.ts";
export type { ChangeCases } from "./fieldMeta.ts";
export { Gear } from "./gear.ts";
export type { Lead } from "./lead.ts";
export { eventLeafShare, leafShareOf } from "./leafShareOf.ts";
export { lossesOf } from "./lossesOf.ts";
export { Models } from "./models.ts";
export { type Box, type Horizon, Obstacle, type Tree } from "./obstacle.ts";
export { PanelGroup } from "./panelGroup.ts";
export { plainExpectation } from "./plainExpectation.ts";
export { presentShare } from "./presence.ts";
export type { Problem } from "./problem.ts";
export { listedProblems, makeProblemList, type ProblemList } from "./problemList.ts";
export { problemsFrom } from "./problemsFrom.ts";
export { count, id, type QuantityFacts, quantity, share, text, word } from "./quantity.ts";
export { readScenario, readVariant } from "./readScenario.ts";
export { Scenario, type ScenarioInput } from "./scenario.ts";
export { type SchemaNode, scenarioInputSchema } from "./scenarioSchema.ts";
export { clipped } from "./shown.ts";
export { type Generator, Source } from "./source.ts";
export { type Mode, Station } from "./station.ts";
export { type TimeGrid, timeGrid } from "./timeGrid.ts";
export { SKY_WORD_NAMES, Weather } from "./weather.ts";
export { withZone, zoneAt } from "./withZone.ts";
export { zoneOf } from "./zoneOf.ts";
