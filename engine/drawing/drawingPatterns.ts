import { html } from "./html.ts";

const pattern = (id: string, px: number, turnDeg: number, body: ReturnType<typeof html>) =>
  html`<pattern id="${id}" width="${px}" height="${px}" patternUnits="userSpaceOnUse" patternTransform="rotate(${turnDeg})">${body}</pattern>`;

/** Dot, line, slope and hatch: what tells parts apart where colour cannot. Once in each document that has drawings. */
export const drawingPatterns = html`<defs>${[
  pattern(
    "sun-dots",
    5,
    0,
    html`<rect class="sun-dim" width="5" height="5"/><circle class="sun-mark" cx="1.6" cy="1.6" r="1.05"/>`,
  ),
  pattern("sun-lines", 5, 0, html`<rect class="sun-dim" width="5" height="5"/><path class="sun-stroke" d="M0 2.5H5"/>`),
  pattern("sun-slope", 6, -45, html`<rect class="sun-dim" width="6" height="6"/><path class="sun-stroke" d="M0 3H6"/>`),
  pattern("source", 5, 0, html`<rect class="leaf-fill" width="5" height="5"/><path class="leaf-stroke" d="M2.5 0V5"/>`),
  pattern(
    "spilled",
    7,
    45,
    html`<rect class="sheet-fill" width="7" height="7"/><path class="sun-stroke" d="M0 3.5H7"/>`,
  ),
  pattern(
    "load-dots",
    5,
    0,
    html`<rect class="load-fill" width="5" height="5"/><circle class="load-mark" cx="1.6" cy="1.6" r="1"/>`,
  ),
  pattern("load-lines", 4.5, 0, html`<path class="load-stroke" d="M0 2.2H4.5"/>`),
  pattern("load-slope", 5, -45, html`<path class="load-stroke" d="M0 2.5H5"/>`),
  pattern("unserved", 7, 45, html`<path class="warn-stroke" d="M0 3.5H7"/>`),
  pattern("short", 9, 45, html`<path class="warn-stroke" d="M0 4.5H9"/>`),
  pattern("shade-part", 5, -45, html`<path class="sun-stroke" d="M0 0V5"/>`),
  // Bands of scenarios after the first: hatched, dotted, and hatched the other way.
  pattern("hatch-second-wide", 9, 45, html`<g class="hatch-second"><path d="M0 4.5H9"/></g>`),
  pattern("hatch-second-close", 4.5, 45, html`<g class="hatch-second"><path d="M0 2.2H4.5"/></g>`),
  pattern("hatch-third-wide", 8, 45, html`<g class="hatch-third"><circle cx="4" cy="4" r="0.9"/></g>`),
  pattern("hatch-third-close", 4.5, 45, html`<g class="hatch-third"><circle cx="2.2" cy="2.2" r="0.9"/></g>`),
  pattern("hatch-fourth-wide", 9, -45, html`<g class="hatch-fourth"><path d="M0 4.5H9"/></g>`),
  pattern("hatch-fourth-close", 4.5, -45, html`<g class="hatch-fourth"><path d="M0 2.2H4.5"/></g>`),
]}</defs>`;
