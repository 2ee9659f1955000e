import { html } from "../../drawing/html.ts";
import { RULER_PX } from "../../drawing/rulerPx.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import { endMs } from "../../ruler/readingTime.ts";
import { moment } from "../../ruler/rulerClock.ts";
import type { Look } from "../../words/look.ts";
import { percent } from "../../words/numbers.ts";
import { nameOf } from "../answersPage.ts";
import type { OfOne } from "../docShapes.ts";
import type { Tell } from "../kind.ts";
import { foldedTable, missing, picture, saidWords, table } from "../reportParts.ts";
import type { SlideChart } from "../slide.ts";
import { NOT_YET, SLIDE_CHARGE_PX, SLIDE_ROOM } from "../slideParts.ts";
import { runOf } from "./ask.ts";
import { hourHeads, hourRows } from "./hourRows.ts";
import { readingAt } from "./readingAt.ts";
import { runAnswer } from "./runAnswer.ts";
import { runDrawing } from "./runDrawing.ts";
import type { RunPicture } from "./runPicture.ts";
import { strataLayout } from "./strataLayout.ts";

const CHARGE_PX = SLIDE_CHARGE_PX + 40;

export const tellRun: Tell<OfOne> = {
  section: (page, { scenario }) => {
    const found = runOf(page, scenario);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const { sentence, more } = runAnswer(result, [nameOf(page, scenario)], page.look(scenario));
    return html`${missing([found])}<p class="verdict">${saidWords(sentence)}</p><p class="more">${more.join(" ")}</p>${picture(runDrawing(result, page.look(scenario)))}${foldedTable(
      "Hours in figures",
      table(
        "Charge at the start of each hour, powers as means over it, volts as the least in it",
        ["Hour from", ...hourHeads(result)],
        hourRows(result).map(({ ms, figures }) => ({ name: moment(result.ruler, ms), figures })),
      ),
    )}`;
  },
  drawing: (page, { scenario }) => {
    const { result } = runOf(page, scenario);
    return result === null ? null : runDrawing(result, page.look(scenario));
  },
  slide: (page, { scenario }) => {
    const { result } = runOf(page, scenario);
    if (result === null) return NOT_YET;
    return {
      words: runAnswer(result, [nameOf(page, scenario)], page.look(scenario)).sentence,
      chart: runChart(result, page.look(scenario)),
    };
  },
};

function runChart(run: RunPicture, look: Look): SlideChart {
  const { y } = strataLayout(run, CHARGE_PX).charge;
  return {
    drawing: runDrawing(run, look, SLIDE_ROOM, { chargePx: CHARGE_PX, isChargeAlone: true }),
    time: run,
    scale: timeScale(run.ruler, SLIDE_ROOM.daysPx),
    leftPx: SLIDE_ROOM.axisPx,
    marks: (ms) => {
      if (ms > endMs(run)) return [];
      const { chargeShare } = readingAt(run, ms);
      return [{ y: RULER_PX + y(chargeShare), text: percent(chargeShare), look }];
    },
  };
}
