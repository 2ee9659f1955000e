/**
 * words: numbers, units and odds as they are written everywhere: on screens, in drawings, reports and the terminal.
 */
export {
  differenceInUnits,
  displayUnit,
  fromDisplay,
  fromTyped,
  inUnits,
  showUnits,
  toDisplay,
  UNIT_SYSTEMS,
  type UnitSystem,
} from "./displayUnits.ts";
export { LOOK_WORDS, LOOKS, type Look } from "./look.ts";
export { ampHours, energy, figure, hours, percent, THIN, volts, watts } from "./numbers.ts";
export { inHundred, oddsRange, withoutWords } from "./oddsWords.ts";
export { problemSentences } from "./problemSentences.ts";
export type { Words } from "./said.ts";
export { wrappedLines } from "./wrappedLines.ts";
