/** answers/reach: what it would take: the least of each lever that reaches a target. What other folders may take of it. */
export { ReachDoc, reachOf } from "./ask.ts";
export { reachKind } from "./kind.ts";
export { lane, lanePx, targetLine } from "./reachDrawing.ts";
export type { ReachPicture } from "./reachPicture.ts";
export {
  besideWords,
  ORDER_WORDS,
  openRows,
  partWords,
  priceCell,
  priceFigure,
  priceHead,
  reachSentence,
  wayWords,
} from "./reachWords.ts";
export { ALONE, prices, reachCsv, SPARE, TOGETHER } from "./rows.ts";
