import { html } from "../../drawing/html.ts";
import type { OfOne } from "../docShapes.ts";
import type { Tell } from "../kind.ts";
import { missing, picture, table } from "../reportParts.ts";
import { runOf } from "../run/ask.ts";
import { NOT_YET, onRuler, SLIDE_ROOM } from "../slideParts.ts";
import { lightOf } from "./lightOf.ts";
import { SHADE_HEADS, shadeRows } from "./shadeRows.ts";
import { shadeVerdict } from "./shadeWords.ts";
import { sunDrawing } from "./sunDrawing.ts";

export const tellShade: Tell<OfOne> = {
  section: (page, { scenario }) => {
    const light = lightOf(page, scenario);
    if (light === null)
      return html`${missing([runOf(page, scenario)]) ?? html`<p class="wrong">Not worked out yet.</p>`}`;
    return html`<p class="verdict">${shadeVerdict(light)}</p>${picture(sunDrawing(light))}${table(
      "Hours of sun of each panel group on each day of the event, under a clear sky",
      ["Panels", ...SHADE_HEADS],
      shadeRows(light),
    )}`;
  },
  drawing: (page, { scenario }) => {
    const light = lightOf(page, scenario);
    return light === null ? null : sunDrawing(light);
  },
  slide: (page, { scenario }) => {
    const light = lightOf(page, scenario);
    if (light === null) return NOT_YET;
    return { words: [{ text: shadeVerdict(light) }], chart: onRuler(sunDrawing(light, SLIDE_ROOM), light) };
  },
};
