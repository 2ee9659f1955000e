import { html } from "../../drawing/html.ts";
import type { OfOne } from "../docShapes.ts";
import type { Tell } from "../kind.ts";
import { columnsTable, missing, picture } from "../reportParts.ts";
import { runOf } from "../run/ask.ts";
import { NOT_YET, SLIDE_PX, wide } from "../slideParts.ts";
import { ledgerDrawing } from "./ledgerDrawing.ts";
import { ledgerWords } from "./ledgerWords.ts";
import { LOADS } from "./rows.ts";

const SLIDE_LINES = 9;

export const tellLedger: Tell<OfOne> = {
  section: (page, { scenario }) => {
    const found = runOf(page, scenario);
    const { result } = found;
    return html`${missing([found])}${
      result !== null &&
      html`<p class="verdict">${ledgerWords(result)}.</p>${picture(ledgerDrawing(result))}${columnsTable(
        "What each load got over the whole event, largest first",
        [LOADS.name, LOADS.always, LOADS.used, LOADS.total, LOADS.share],
        result.ledger.loads,
      )}`
    }`;
  },
  drawing: (page, { scenario }) => {
    const { result } = runOf(page, scenario);
    return result === null ? null : ledgerDrawing(result);
  },
  slide: (page, { scenario }) => {
    const { result } = runOf(page, scenario);
    if (result === null) return NOT_YET;
    return {
      words: [{ text: `${ledgerWords(result)}.` }],
      body: wide(ledgerDrawing(result, SLIDE_PX, SLIDE_LINES)),
    };
  },
};
