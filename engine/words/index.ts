/**
 * words: numbers, units and odds as they are written everywhere: on screens, in drawings, reports and the terminal.
 */
export { inUnits, UNIT_SYSTEMS, type UnitSystem } from "./displayUnits.ts";
export { ampHours, energy, figure, hours, percent, THIN, volts } from "./numbers.ts";
export { inHundred, oddsRange } from "./oddsWords.ts";
export type { Words } from "./said.ts";
