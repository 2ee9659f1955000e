import { html } from "../../drawing/html.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { OfOne } from "../docShapes.ts";
import type { Tell } from "../kind.ts";
import { missing, picture, table } from "../reportParts.ts";
import { NOT_YET, SLIDE_PX, wide } from "../slideParts.ts";
import { driversOf } from "./ask.ts";
import { driversDrawing } from "./driversDrawing.ts";
import { byWeight, driversSentence, endWords, gainedWords, inHundredths, plusMinus, signed } from "./driversWords.ts";

const SLIDE_LINES = 9;

export const tellDrivers: Tell<OfOne> = {
  section: (page, { scenario }) => {
    const found = driversOf(page, scenario);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const { report } = result;
    const sampled = (of: { value: number; plusMinus: number } | undefined) =>
      of === undefined ? "–" : `${inHundredths(of.value)} ${plusMinus(of.plusMinus)}`;
    return html`${missing([found])}<p class="verdict">${driversSentence(report)}</p>${report.sentences
      .slice(1)
      .map((sentence) => html`<p>${sentence}</p>`)}${picture(driversDrawing(report))}${table(
      "What the lowest charge depends on, and how many of 100 hold with one thing at its low or its high end",
      ["What is drawn", "Alone", "With others", "Low end", "holds", "High end", "holds"],
      byWeight(report).map((line) => ({
        name: line.name,
        figures: [
          sampled(line.margin?.first),
          sampled(line.margin?.total),
          ...[line.low, line.high].flatMap((end) =>
            end === null ? ["–", "–"] : [endWords(line, end.value), inHundred(end.holds)],
          ),
        ],
      })),
    )}${
      report.shedding.length > 0 &&
      table(
        "Switched off for the whole event, one at a time",
        ["Off", "Of 100 hold", "Gained, of 100", "Lowest, points", "Until the reserve"],
        report.shedding.map((line) => ({
          name: line.name,
          figures: [
            inHundred(line.holds),
            `${signed(100 * line.holdsGain.value)} ±${(100 * line.holdsGain.plusMinus).toFixed(1)}`,
            signed(100 * line.marginGain.value),
            gainedWords(line),
          ],
        })),
      )
    }`;
  },
  drawing: (page, { scenario }) => {
    const { result } = driversOf(page, scenario);
    return result === null ? null : driversDrawing(result.report);
  },
  slide: (page, { scenario }) => {
    const { result } = driversOf(page, scenario);
    if (result === null) return NOT_YET;
    return {
      words: [{ text: driversSentence(result.report) }],
      body: wide(driversDrawing(result.report, SLIDE_PX, SLIDE_LINES)),
    };
  },
};
