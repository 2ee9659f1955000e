import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import { reserveTeeth } from "../../drawing/reserveTeeth.ts";
import { type DrawingRoom, rulerDrawing, SHEET_ROOM } from "../../drawing/rulerDrawing.ts";
import { type TimeScale, timeScale } from "../../drawing/timeScale.ts";
import { type ChargeNotesOf, chargeNotes } from "./chargeNotes.ts";
import { incomingParts, loadParts, type Part } from "./parts.ts";
import { reserveNamePlace } from "./reserveNamePlace.ts";
import { endLabels, innerLabels } from "./runLabels.ts";
import type { RunPicture } from "./runPicture.ts";
import { strataAxis } from "./strataAxis.ts";
import { type Stratum, strataLayout } from "./strataLayout.ts";
import { chargePath, endMs, powerArea, powerEdge, shortfallPath, voltsPath } from "./strataPaths.ts";

/** One run: charge, what comes in, what goes out, and volts where a radio drops out; or its charge alone. */
export function runDrawing(
  picture: RunPicture,
  room: DrawingRoom = SHEET_ROOM,
  { chargePx, isChargeAlone }: { readonly chargePx: number; readonly isChargeAlone: boolean } = {
    chargePx: 196,
    isChargeAlone: false,
  },
): Drawing {
  const layout = strataLayout(picture, chargePx);
  const scale = timeScale(picture.ruler, room.daysPx);
  const axis = strataAxis(picture, layout, room.isShort);
  const labels = endLabels(picture, null, layout, scale);
  const { stack, spilled, shade } = incomingParts(picture);
  const inner = innerLabels(picture, layout, scale).map(
    ({ x, y, text }) => html`<text class="inner" x="${x}" y="${y}" text-anchor="middle">${text}</text>`,
  );
  const power = html`${powers([...stack, spilled], picture, layout.incoming, scale)}<path class="contour contour-shade" d="${powerEdge(picture, layout.incoming, scale, shade.highW)}"/>${powers(loadParts(picture), picture, layout.load, scale)}${
    layout.volts !== null && volts(picture, layout.volts, scale)
  }${inner}`;
  return rulerDrawing({
    time: picture,
    scale,
    room,
    heightPx: isChargeAlone ? layout.charge.bottom + 12 : layout.heightPx,
    axis: isChargeAlone ? axis.slice(0, 1) : axis,
    labels: isChargeAlone ? labels.filter(({ y }) => y <= layout.charge.bottom) : labels,
    label: `Charge, sun and loads over time. ${picture.verdict.sentences.join(" ")}`,
    body: html`${!isChargeAlone && power}${charge(picture, layout.charge, scale)}`,
  });
}

function powers(parts: readonly Part[], picture: RunPicture, stratum: Stratum, scale: TimeScale): Markup[] {
  return parts.map(
    (part) =>
      html`<path class="part part-${part.look}" d="${powerArea(picture, stratum, scale, part.lowW, part.highW)}"/>`,
  );
}

function volts(picture: RunPicture, stratum: Stratum, scale: TimeScale): Markup[] {
  const [from, to] = [scale.x(picture.startMs), scale.x(endMs(picture))];
  return picture.radios.map((radio) => {
    const y = stratum.y(radio.minimumV);
    return html`<line class="radio-least" x1="${from}" x2="${to}" y1="${y}" y2="${y}"/><path class="radio-volts" d="${voltsPath(picture, stratum, scale, radio)}"/>`;
  });
}

function charge(picture: RunPicture, stratum: Stratum, scale: TimeScale): Markup {
  const { reserveShare } = picture;
  const [from, to] = [scale.x(picture.startMs), scale.x(endMs(picture))];
  const reserveName = reserveNamePlace(picture, stratum, scale, reserveShare, from);
  const of: ChargeNotesOf = { picture, before: null, stratum, scale, reserveShare, reserveName, spelledOut: true };
  const notes = chargeNotes(of).map(
    ({ ring, text, place }) =>
      html`<g class="annotation">${
        place !== null &&
        html`<path class="leader" d="M${place.x} ${place.y - 5}H${ring.x}V${ring.y}"/><text x="${place.x + (place.anchor === "start" ? 4 : -4)}" y="${place.y}" text-anchor="${place.anchor}">${text}</text>`
      }<circle class="ring" cx="${ring.x}" cy="${ring.y}" r="5"/></g>`,
  );
  const path = chargePath(picture, stratum, scale);
  return html`<path class="shortfall" d="${shortfallPath(picture, stratum, scale, reserveShare)}"/><path class="charge-halo" d="${path}"/><path class="charge" d="${path}"/><g class="reserve" transform="translate(0 ${stratum.y(reserveShare)})"><line x1="${from}" x2="${to}" y1="0" y2="0"/><path d="${reserveTeeth(from, to)}"/><text x="${reserveName.x}" y="${reserveName.above ? -9 : 21}">${reserveName.text}</text></g>${notes}`;
}
