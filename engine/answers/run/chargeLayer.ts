import { html, type Markup } from "../../drawing/html.ts";
import { reserveTeeth } from "../../drawing/reserveTeeth.ts";
import { endMs } from "../../ruler/readingTime.ts";
import type { Box } from "./annotationPlace.ts";
import type { ChargeNotesOf, chargeNotes } from "./chargeNotes.ts";
import { chargePath, shortfallPath } from "./strataPaths.ts";

/** Room that a reading's value takes beside its line. */
const VALUE_PX = 130;

/** Charge in the bank, dotted as it was before an edit, and the reserve with its teeth on the bad side. */
export function chargeLayer({
  picture,
  before,
  look,
  stratum,
  scale,
  reserveShare,
  reserveName,
}: ChargeNotesOf): Markup {
  const [from, to] = [scale.x(picture.startMs), scale.x(endMs(picture))];
  const path = chargePath(picture, stratum, scale);
  return html`<g class="data series-${look}"><path class="shortfall" d="${shortfallPath(picture, stratum, scale, reserveShare)}"/>${
    before !== null && html`<path class="before" d="${chargePath(before, stratum, scale)}"/>`
  }<path class="charge-halo" d="${path}"/><path class="charge" d="${path}"/></g><g class="reserve" transform="translate(0 ${stratum.y(reserveShare)})"><line x1="${from}" x2="${to}" y1="0" y2="0"/><path d="${reserveTeeth(from, to)}"/><text x="${reserveName.x}" y="${reserveName.above ? -9 : 21}">${reserveName.text}</text></g>`;
}

/**
 * The two moments that matter: a ring each, and words.
 * @param readingX where an instant is being read: words that its values would cover stand back
 */
export function notesLayer(notes: ReturnType<typeof chargeNotes>, readingX: number | null = null): Markup {
  return html`${notes.map(
    ({ ring, text, place }) =>
      html`<g class="annotation">${
        place !== null &&
        !isCovered(place.box, readingX) &&
        html`<path class="leader" d="M${place.x} ${place.y - 5}H${ring.x}V${ring.y}"/><text x="${place.x + (place.anchor === "start" ? 4 : -4)}" y="${place.y}" text-anchor="${place.anchor}">${text}</text>`
      }<circle class="ring" cx="${ring.x}" cy="${ring.y}" r="5"/></g>`,
  )}`;
}

function isCovered(box: Box, readingX: number | null): boolean {
  return readingX !== null && box.left - VALUE_PX < readingX && readingX < box.right + VALUE_PX;
}
