import { html, type Markup } from "../../drawing/html.ts";
import { readingWords } from "../../learn/readingWords.ts";
import { type AnswersPage, nameOf } from "../answersPage.ts";
import type { Tell } from "../kind.ts";
import { columnsTable, foldedTable, list, missing, picture, saidWords, table } from "../reportParts.ts";
import { onRuler, SLIDE_ROOM } from "../slideParts.ts";
import { learnedOf } from "./ask.ts";
import type { ReadingsDoc } from "./doc.ts";
import { learnedDrawing } from "./learnedDrawing.ts";
import { LEARNED_COLUMNS, learnedRows } from "./learnedRows.ts";
import { LESSON_HEADS, learnedMore, learnedSentence, lessonRows, lessonWords, roughWords } from "./learnedWords.ts";
import { timeWords } from "./localTime.ts";

const ROWS_MS = 3 * 3_600_000;

export const tellReadings: Tell<ReadingsDoc> = {
  section: readingsSection,
  drawing: (page, doc) => {
    const { result } = learnedOf(page, doc);
    return result === null ? null : learnedDrawing(result, nameOf(page, doc.scenario), page.look(doc.scenario));
  },
  slide: (page, doc) => {
    const { result } = learnedOf(page, doc);
    if (result === null) return { body: readingsSection(page, doc) };
    return {
      words: learnedSentence(result, nameOf(page, doc.scenario), page.look(doc.scenario)),
      chart: onRuler(
        learnedDrawing(result, nameOf(page, doc.scenario), page.look(doc.scenario), SLIDE_ROOM),
        result.time,
      ),
    };
  },
};

/** What was read, what it made of the forecast, and what could still be done. */
function readingsSection(page: AnswersPage, doc: ReadingsDoc): Markup {
  const read = list(
    [...doc.readings]
      .sort((a, b) => a.at.localeCompare(b.at))
      .map((reading) => {
        const by = reading.by === undefined ? "" : `, read by ${reading.by}`;
        return `${timeWords(reading.at)}: ${readingWords(reading)}${by}`;
      }),
  );
  if (doc.readings.length === 0) return html`<p>Nothing has been read yet.</p>`;
  const found = learnedOf(page, doc);
  const { result } = found;
  if (result === null) return html`${missing([found])}${read}`;
  const name = nameOf(page, doc.scenario);
  const lessons = lessonWords(result);
  return html`${missing([found])}<p class="verdict">${saidWords(learnedSentence(result, name, page.look(doc.scenario)))}</p>${result.report.wrong.map(
    ({ sentence }) => html`<p class="wrong">${sentence}</p>`,
  )}<p class="more">${[learnedMore(result), ...roughWords(result)].join(" ")}</p>${picture(learnedDrawing(result, nameOf(page, doc.scenario), page.look(doc.scenario)))}<h3>What has been learned</h3>${list(
    lessons.length > 0 ? lessons : ["Nothing that stands out of the noise."],
  )}${foldedTable("Every figure, before and after", table("Figures before and after", LESSON_HEADS, lessonRows(result)))}${foldedTable(
    "The bands in figures, every three hours",
    columnsTable("Charge from the last reading to the end", LEARNED_COLUMNS, learnedRows(result, ROWS_MS)),
  )}<h3>What can still be done</h3>${list(
    (result.helps ?? []).map(
      ({ sentence, takes, caution }) => `${sentence} Takes: ${takes}.${caution === null ? "" : ` Caution: ${caution}`}`,
    ),
  )}<h3>Readings</h3>${read}`;
}
