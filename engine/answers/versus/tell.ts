import { html } from "../../drawing/html.ts";
import { stacked } from "../../drawing/stacked.ts";
import { changesInWords } from "../../fields/changesInWords.ts";
import { type AnswersPage, nameOf } from "../answersPage.ts";
import type { Tell } from "../kind.ts";
import { list, missing, picture, saidWords, table } from "../reportParts.ts";
import { NOT_YET, shortened, wide } from "../slideParts.ts";
import { type VersusDoc, versusOf } from "./ask.ts";
import { oddsDrawing } from "./oddsDrawing.ts";
import { pairedDrawing } from "./pairedDrawing.ts";
import { versusRows } from "./rows.ts";
import { tallyDrawing } from "./tallyDrawing.ts";
import { burdenWords, versusSentence } from "./versusWords.ts";

export const tellVersus: Tell<VersusDoc> = {
  section: (page, doc) => {
    const found = versusOf(page, doc.first, doc.second);
    const names = namesOf(page, doc);
    const differs = differences(page, doc);
    const { result } = found;
    return html`${missing([found])}${
      result !== null &&
      html`<p class="verdict">${saidWords(versusSentence(result, names.first, names.second))}</p><div class="versus"><div><h3>What differs</h3>${list(differs.length === 0 ? ["nothing"] : differs)}<p>${burdenWords(result)}</p>${table(
        "Both in figures",
        ["Of both", names.second.name, names.first.name],
        versusRows(result).map((row) => ({ name: row.name, figures: [row.second, row.first] })),
      )}</div><div>${picture(oddsDrawing(result, names))}${picture(tallyDrawing(result, names))}</div></div>${picture(pairedDrawing(result, names.second.look))}`
    }`;
  },
  drawing: (page, doc) => {
    const { result } = versusOf(page, doc.first, doc.second);
    if (result === null) return null;
    const names = namesOf(page, doc);
    const paired = pairedDrawing(result, names.second.look);
    return stacked([oddsDrawing(result, names), tallyDrawing(result, names), ...(paired === null ? [] : [paired])]);
  },
  slide: (page, doc) => {
    const { result } = versusOf(page, doc.first, doc.second);
    if (result === null) return NOT_YET;
    const names = namesOf(page, doc);
    return {
      words: versusSentence(result, names.first, names.second),
      body: html`<div class="slide-pair"><div>${list(shortened(differences(page, doc)))}<p>${burdenWords(result)}</p></div>${wide(tallyDrawing(result, names))}</div>`,
    };
  },
};

const namesOf = (page: AnswersPage, { first, second }: VersusDoc) => ({
  first: { name: nameOf(page, first), look: page.look(first) },
  second: { name: nameOf(page, second), look: page.look(second) },
});

function differences(page: AnswersPage, { first, second }: VersusDoc): readonly string[] {
  const [from, to] = [page.document(first), page.document(second)];
  return from === null || to === null ? [] : changesInWords([], from, to);
}
