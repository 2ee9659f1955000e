import { html } from "../../drawing/html.ts";
import type { OfOne } from "../docShapes.ts";
import type { Tell } from "../kind.ts";
import { columnsTable, missing, picture } from "../reportParts.ts";
import { NOT_YET, SLIDE_PX, wide } from "../slideParts.ts";
import { driversOf } from "./ask.ts";
import { driversDrawing } from "./driversDrawing.ts";
import { byWeight, driversSentence } from "./driversWords.ts";
import { HIGH_END, LOW_END, SHARES, SHEDDING } from "./rows.ts";

const SLIDE_LINES = 9;

export const tellDrivers: Tell<OfOne> = {
  section: (page, { scenario }) => {
    const found = driversOf(page, scenario);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const { report } = result;
    return html`${missing([found])}<p class="verdict">${driversSentence(report)}</p>${report.sentences
      .slice(1)
      .map((sentence) => html`<p>${sentence}</p>`)}${picture(driversDrawing(report))}${columnsTable(
      "What the lowest charge depends on, and how many of 100 hold with one thing at its low or its high end",
      [SHARES.name, SHARES.alone, SHARES.together, LOW_END.value, LOW_END.holds, HIGH_END.value, HIGH_END.holds],
      byWeight(report),
    )}${
      report.shedding.length > 0 &&
      columnsTable(
        "Switched off for the whole event, one at a time",
        [SHEDDING.name, SHEDDING.holds, SHEDDING.gained, SHEDDING.margin, SHEDDING.later],
        report.shedding,
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
