import { html } from "../../drawing/html.ts";
import type { ReachRow, ReachWay } from "../../reach/reachReport.ts";
import { nameOf } from "../answersPage.ts";
import type { Tell } from "../kind.ts";
import { columnsTable, missing, picture, saidWords } from "../reportParts.ts";
import { NOT_YET, SLIDE_PX, wide } from "../slideParts.ts";
import { type ReachDoc, reachOf } from "./ask.ts";
import { reachDrawing } from "./reachDrawing.ts";
import { reachSentence } from "./reachWords.ts";
import { ALONE, prices, SPARE, TOGETHER } from "./rows.ts";

const SLIDE_ROWS = 9;

export const tellReach: Tell<ReachDoc> = {
  section: (page, doc) => {
    const found = reachOf(page, doc);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const { report } = result;
    const said = reachSentence(report, nameOf(page, doc.scenario), page.look(doc.scenario));
    return html`${missing([found])}<p class="verdict">${saidWords(said)}</p>${picture(reachDrawing(report, said))}${
      report.alone.length > 0 &&
      columnsTable(
        "One thing alone: the smallest that reaches the target, or the most of it",
        [ALONE.name, ALONE.words, ALONE.holds, ALONE.next, ...prices<ReachRow>(), ALONE.lock, ALONE.why],
        report.alone,
      )
    }${ways("Two together", report.pairs)}${ways("Three together", report.threes)}${
      report.spare.length > 0 &&
      columnsTable(
        "What can stay at home, and what may not",
        [SPARE.name, SPARE.words, SPARE.holds, SPARE.next, ...prices<ReachRow>()],
        report.spare,
      )
    }`;
  },
  drawing: (page, doc) => {
    const { result } = reachOf(page, doc);
    if (result === null) return null;
    return reachDrawing(
      result.report,
      reachSentence(result.report, nameOf(page, doc.scenario), page.look(doc.scenario)),
    );
  },
  slide: (page, doc) => {
    const { result } = reachOf(page, doc);
    if (result === null) return NOT_YET;
    const said = reachSentence(result.report, nameOf(page, doc.scenario), page.look(doc.scenario));
    return { words: said, body: wide(reachDrawing(result.report, said, SLIDE_PX, SLIDE_ROWS)) };
  },
};

const ways = (title: string, rows: readonly ReachWay[]) =>
  rows.length > 0 &&
  columnsTable(title, [{ ...TOGETHER.name, head: title }, TOGETHER.holds, ...prices<ReachWay>()], rows);
