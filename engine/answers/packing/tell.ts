import { html } from "../../drawing/html.ts";
import type { Tell } from "../kind.ts";
import { columnsTable, list, missing, picture, saidWords } from "../reportParts.ts";
import { NOT_YET, SLIDE_PX, wide } from "../slideParts.ts";
import { type PackingDoc, packingOf } from "./ask.ts";
import { listMarkup } from "./listMarkup.ts";
import { packingDrawing } from "./packingDrawing.ts";
import { packingNotes, packingSentence } from "./packingWords.ts";
import { frontierColumns, frontierRows } from "./rows.ts";

const SLIDE_HEIGHT_PX = 380;

export const tellPacking: Tell<PackingDoc> = {
  section: (page, doc) => {
    const found = packingOf(page, doc);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const said = packingSentence(result);
    const rows = frontierRows(result);
    return html`${missing([found])}<p class="verdict">${saidWords(said)}</p>${picture(packingDrawing(result.report, said))}${
      rows.length > 0 && columnsTable("None is less in every respect than these", frontierColumns(result), rows)
    }${list(packingNotes(result))}${result.list !== null && listMarkup(result.list)}`;
  },
  drawing: (page, doc) => {
    const { result } = packingOf(page, doc);
    return result === null ? null : packingDrawing(result.report, packingSentence(result));
  },
  slide: (page, doc) => {
    const { result } = packingOf(page, doc);
    if (result === null) return NOT_YET;
    const said = packingSentence(result);
    return { words: said, body: wide(packingDrawing(result.report, said, SLIDE_PX, SLIDE_HEIGHT_PX)) };
  },
};
