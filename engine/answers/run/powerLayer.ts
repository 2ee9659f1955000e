import { html, type Markup } from "../../drawing/html.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import { endMs } from "../../ruler/readingTime.ts";
import { incomingParts, loadParts, type Part } from "./parts.ts";
import { innerLabels } from "./runLabels.ts";
import type { RunPicture } from "./runPicture.ts";
import type { StrataLayout, Stratum } from "./strataLayout.ts";
import { powerArea, powerEdge, voltsPath } from "./strataPaths.ts";

/** What comes in and goes out, and volts where a radio drops out: all that does not move with the reserve. */
export function powerLayer(picture: RunPicture, layout: StrataLayout, scale: TimeScale): Markup {
  const { stack, spilled, shade } = incomingParts(picture);
  const inner = innerLabels(picture, layout, scale).map(
    ({ x, y, text }) => html`<text class="inner data" x="${x}" y="${y}" text-anchor="middle">${text}</text>`,
  );
  return html`<g class="data">${powers([...stack, spilled], picture, layout.incoming, scale)}<path class="contour contour-shade" d="${powerEdge(picture, layout.incoming, scale, shade.highW)}"/></g><g class="data">${powers(loadParts(picture), picture, layout.load, scale)}</g>${
    layout.volts !== null && html`<g class="data">${volts(picture, layout.volts, scale)}</g>`
  }${inner}`;
}

/** Powers stacked upon one another, each in its own pattern. */
function powers(parts: readonly Part[], picture: RunPicture, stratum: Stratum, scale: TimeScale): Markup[] {
  return parts.map(
    (part) =>
      html`<path class="part part-${part.look}" d="${powerArea(picture, stratum, scale, part.lowW, part.highW)}"/>`,
  );
}

/** Volts at the radios that drop out on their own peaks; apart from energy, because charging does not help. */
function volts(picture: RunPicture, stratum: Stratum, scale: TimeScale): Markup[] {
  const [from, to] = [scale.x(picture.startMs), scale.x(endMs(picture))];
  return picture.radios.map((radio) => {
    const y = stratum.y(radio.minimumV);
    return html`<line class="radio-least" x1="${from}" x2="${to}" y1="${y}" y2="${y}"/><path class="radio-volts" d="${voltsPath(picture, stratum, scale, radio)}"/>`;
  });
}
