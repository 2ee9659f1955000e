/** answers/limits: wires, fuses and volts against their limits. What other folders may take of it. */
export { type LimitsPicture, limitsOf } from "./ask.ts";
export { LimitsDoc } from "./doc.ts";
export { limitsKind } from "./kind.ts";
export { limitsCsv } from "./limitsCsv.ts";
export {
  basisWords,
  briefQuantity,
  cautionsBeside,
  chargeFromWords,
  coldFromWords,
  limitsMore,
  limitsSentence,
  limitWords,
  linesOf,
  marginWords,
  rulesOf,
  VERDICTS,
  valueWords,
} from "./limitsWords.ts";
export { type ChainRow, voltChain } from "./voltChain.ts";
export { wiringDiagram, wiringDrawing } from "./wiringDrawing.ts";
export { wiringSheet } from "./wiringSheet.ts";
export { isOver, WIRING_COLUMNS, WIRING_NOTE, wiringTitle } from "./wiringWords.ts";
