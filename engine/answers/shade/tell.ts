import { html, type Markup } from "../../drawing/html.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Tell } from "../kind.ts";
import { columnsTable, missing, picture, saidWords, table } from "../reportParts.ts";
import { runOf } from "../run/ask.ts";
import { NOT_YET, onRuler, SLIDE_ROOM, wide } from "../slideParts.ts";
import { type ShadeDoc, spotsOf } from "./ask.ts";
import { headingDrawing } from "./headingDrawing.ts";
import { lightOf } from "./lightOf.ts";
import { SHADE_HEADS, shadeRows } from "./shadeRows.ts";
import { shadeVerdict } from "./shadeWords.ts";
import { spotsDrawing } from "./spotsDrawing.ts";
import { SPOT, spotRows } from "./spotsRows.ts";
import { ofWhichSky, spotsSentence } from "./spotsWords.ts";
import { sunDrawing } from "./sunDrawing.ts";

/** A map on a slide is as high as its place, and no wider. */
const SLIDE_MAP_PX = [420, 300] as const;

export const tellShade: Tell<ShadeDoc> = {
  section: (page, doc) => {
    const light = lightOf(page, doc.scenario);
    if (light === null)
      return html`${missing([runOf(page, doc.scenario)]) ?? html`<p class="wrong">Not worked out yet.</p>`}`;
    return html`<p class="verdict">${shadeVerdict(light)}</p>${picture(sunDrawing(light))}${table(
      "Hours of sun of each panel group on each day of the event, under a clear sky",
      ["Panels", ...SHADE_HEADS],
      shadeRows(light),
    )}${doc.spots !== undefined && spotsSection(page, doc)}`;
  },
  drawing: (page, doc) => {
    if (doc.spots !== undefined) {
      const { result } = spotsOf(page, doc);
      return result === null ? null : spotsDrawing(result);
    }
    const light = lightOf(page, doc.scenario);
    return light === null ? null : sunDrawing(light);
  },
  slide: (page, doc) => {
    if (doc.spots !== undefined) {
      const { result } = spotsOf(page, doc);
      if (result === null) return NOT_YET;
      return { words: spotsSentence(result), body: wide(spotsDrawing(result, SLIDE_MAP_PX)) };
    }
    const light = lightOf(page, doc.scenario);
    if (light === null) return NOT_YET;
    return { words: [{ text: shadeVerdict(light) }], chart: onRuler(sunDrawing(light, SLIDE_ROOM), light) };
  },
};

function spotsSection(page: AnswersPage, doc: ShadeDoc): Markup {
  const found = spotsOf(page, doc);
  const { result } = found;
  if (result === null) return html`${missing([found])}`;
  const heading = headingDrawing(result.report);
  return html`${missing([found])}<p class="verdict">${saidWords(spotsSentence(result))}</p><p>Watt-hours a day at every spot: ${ofWhichSky(result)}.</p>${picture(spotsDrawing(result))}${columnsTable("Spots", Object.values(SPOT), spotRows(result.report))}${
    heading !== null &&
    html`<p>Over the heading of the vehicle, Wh a day, nose towards each bearing:</p>${picture(heading)}`
  }`;
}
