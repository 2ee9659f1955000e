/** answers/note: words of the notebook's own, with figures of its answers in them. What other folders may take of it. */
export { noteKind } from "./kind.ts";
export {
  figuresIn,
  figureWords,
  type NoteFigure,
  ODDS_FIGURES,
  plainNote,
  RUN_FIGURES,
  VERSUS_FIGURES,
} from "./noteFigures.ts";
export { noteHtml, type SayFigure } from "./noteHtml.ts";
export { whyNoteTooLong } from "./notePieces.ts";
