import type { LimitsReport } from "../../checks/limits.ts";
import type { WiringRun } from "../../checks/wiringRuns.ts";
import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import { stacked } from "../../drawing/stacked.ts";
import { wrappedLines } from "../../words/wrappedLines.ts";
import { amps, fuseWords, isOver, toPutRight, WIRING_COLUMNS, WIRING_NOTE, wiringTitle } from "./wiringWords.ts";

type Wired = Pick<LimitsReport, "wiring" | "rated" | "lines">;

/** As wide as the column of an A4 sheet. */
export const WIRING_PX = 674;
const BOX = { widthPx: 108, heightPx: 52 };
const FUSE = { widthPx: 34, heightPx: 16 };
const RING_PX = 11.5;
/** Where things stand from left to right: controllers, fuses of what charges, the bus that charges; the bar, and from it the branches' fuses and names. */
const X = { controller: 150, chargeFuse: 298, bus: 350, bar: 394, barBehindConverter: 448 };
const FROM_BAR = { fuse: 24, ring: 78, name: 98 };
const ROW_PX = 76;
const BRANCH_PX = 54;
const LETTER_PX = 8.9;

/** The plan's branches on one line each, plain: what charges at the left, the bank below it, what is fed at the right. Numbers tie it to the table. */
export function wiringDiagram({ wiring, rated }: Wired): Drawing {
  const of = (...kinds: WiringRun["kind"][]) => wiring.filter(({ kind }) => kinds.includes(kind));
  const groups = of("panels");
  const sources = of("source");
  const loads = of("station", "gear");
  const chargeRows = groups.length + sources.length;
  const loadPx = loads.length > 8 ? 40 : BRANCH_PX;
  const bankY = Math.max(34 + chargeRows * ROW_PX + 56, 34 + loads.length * loadPx + 10);
  const rowY = (k: number) => 34 + k * ROW_PX;
  const loadY = (k: number) => 34 + k * loadPx;
  const lastY = bankY - 62;
  const barX = wiring.some(({ kind }) => kind === "converterOut") ? X.barBehindConverter : X.bar;
  const charges = [
    ...groups.map((panels, k) => {
      const controller = wiring.find(({ id }) => id === panels.id.replace("panels/", "controller/"))!;
      return html`${line(panels, `M${BOX.widthPx} ${rowY(k)}H${X.controller}`)}${line(controller, `M${X.controller + BOX.widthPx} ${rowY(k)}H${X.bus}`)}${box(panels, 0, rowY(k))}${ring(panels, (BOX.widthPx + X.controller) / 2, rowY(k))}${box(controller, X.controller, rowY(k))}${ring(controller, X.controller + BOX.widthPx + 20, rowY(k))}${fuse(controller, X.chargeFuse, rowY(k))}`;
    }),
    ...sources.map((source, s) => {
      const y = rowY(groups.length + s);
      return html`${line(source, `M${BOX.widthPx} ${y}H${X.bus}`)}${box(source, 0, y, X.controller)}${ring(source, X.controller + BOX.widthPx + 20, y)}${fuse(source, X.chargeFuse, y)}`;
    }),
  ];
  const bus =
    chargeRows > 0 &&
    html`<path class="wiring-line" d="M${X.bus} ${rowY(0)}V${lastY}H${BOX.widthPx + 14}V${bankY}"/>${dot(BOX.widthPx + 14, bankY)}`;
  const barFrom = loads.length > 0 ? loadY(0) - 14 : bankY - 40;
  const barY = bankY + 22;
  const branches = loads.map(
    (run, k) =>
      html`${line(run, `M${barX} ${loadY(k)}h${FROM_BAR.name - 5}`)}${fuse(run, barX + FROM_BAR.fuse, loadY(k))}${ring(run, barX + FROM_BAR.ring, loadY(k))}${label(fitted(run.name, WIRING_PX - barX - FROM_BAR.name), barX + FROM_BAR.name, loadY(k) + 5.5, "start", true)}`,
  );
  const barLabel = rated.distributionA === null ? "bar" : `${amps(rated.distributionA)} bar`;
  return {
    body: html`<g class="wiring" transform="translate(1 0)">${charges}${bus}${mainLine(wiring, rated, bankY)}<path class="wiring-bar" d="M${barX} ${barFrom}V${barY}"/>${label(barLabel, barX, barY + 20, "middle", true)}${branches}</g>`,
    widthPx: WIRING_PX,
    heightPx: barY + (wiring.some(({ kind }) => kind === "string") ? 38 : 30),
    label: `One-line diagram: ${wiringTitle({ wiring })}. Each number is a row of the table.`,
  };
}

/** From the bank to the bar: strings, main fuse, switch and converter, as far as there are any. */
function mainLine(wiring: readonly WiringRun[], rated: Wired["rated"], y: number): Markup {
  const at = (id: string) => wiring.find((run) => run.id === id);
  const main = at("main")!;
  const strings = at("string-lead");
  const [into, out] = [at("converter-in"), at("converter-out")];
  const first = strings ?? main;
  const from = BOX.widthPx;
  const switchX = into === undefined ? 270 : 202;
  const afterSwitch = switchX + 46;
  const pieces: (Markup | null)[] = [line(main, `M${from} ${y}H${switchX}`), box(first, 0, y)];
  // What comes before the main fuse hangs below the box: it is as many times as there are strings.
  if (strings !== undefined) pieces.push(ring(strings, 14, y + 44), fuse(strings, 36, y + 44, true));
  pieces.push(
    fuse(main, into === undefined ? 144 : 130, y),
    ring(main, into === undefined ? 208 : 182, y),
    theSwitch(switchX, y, rated.switchA, into !== undefined),
  );
  if (into === undefined || out === undefined) return html`${pieces}${line(main, `M${afterSwitch} ${y}H${X.bar}`)}`;
  const converterX = afterSwitch + 32;
  pieces.push(
    line(into, `M${afterSwitch} ${y}H${converterX}`),
    ring(into, afterSwitch + 16, y),
    line(out, `M${converterX + 92} ${y}H${X.barBehindConverter}`),
    box(out, converterX, y, 92),
    fuse(out, converterX + 96, y),
    ring(out, converterX + 146, y),
  );
  return html`${pieces}`;
}

const strokeOf = (run: WiringRun) => (isOver(run) ? "wiring-line wiring-heavy" : "wiring-line");
const line = (run: WiringRun, path: string) => html`<path class="${strokeOf(run)}" d="${path}"/>`;
const dot = (x: number, y: number) => html`<circle class="wiring-dot" cx="${x}" cy="${y}" r="4.5"/>`;

function label(text: string, x: number, y: number, anchor: "start" | "middle" | "end", isStrong = false): Markup {
  return html`<text x="${x}" y="${y}" text-anchor="${anchor}"${isStrong ? html` class="wiring-strong"` : ""}>${text}</text>`;
}

function box({ box: words }: WiringRun, x: number, y: number, widthPx = BOX.widthPx): Markup {
  const { title, detail } = words!;
  const middle = x + widthPx / 2;
  const titleY = detail === "" ? y + 5.5 : y - 3;
  return html`<rect class="wiring-box" x="${x}" y="${y - BOX.heightPx / 2}" width="${widthPx}" height="${BOX.heightPx}"/>${label(fitted(title, widthPx - 8), middle, titleY, "middle", true)}${detail !== "" && label(fitted(detail, widthPx - 8), middle, y + 18, "middle")}`;
}

function ring(run: WiringRun, x: number, y: number): Markup {
  return html`<circle class="wiring-ring${isOver(run) ? " wiring-tint" : ""}" cx="${x}" cy="${y}" r="${RING_PX}"/>${label(String(run.number), x, y + 5.5, "middle", true)}`;
}

/** A fuse with its rating over it, or beside it; dashed where none is stated, and nothing where none is needed. */
function fuse(run: WiringRun, x: number, y: number, isBeside = false): Markup | null {
  if (!run.needsFuse) return null;
  const isStated = run.fuseA !== null;
  const at = isBeside ? [x + FUSE.widthPx + 6, y + 5.5] : [x + FUSE.widthPx / 2, y - 13];
  return html`<rect class="wiring-box${isStated ? "" : " wiring-none"}" x="${x}" y="${y - FUSE.heightPx / 2}" width="${FUSE.widthPx}" height="${FUSE.heightPx}"/>${isStated && html`<path class="wiring-line" d="M${x} ${y}h${FUSE.widthPx}"/>`}${label(fuseWords(run), at[0]!, at[1]!, isBeside ? "start" : "middle", true)}`;
}

function theSwitch(x: number, y: number, ratedA: number | null, isNarrow: boolean): Markup {
  const rating = ratedA === null ? (isNarrow ? "?" : "switch not stated") : amps(ratedA);
  return html`<path class="wiring-line" d="M${x} ${y}L${x + 42} ${y - 22}"/><circle class="wiring-ring" cx="${x}" cy="${y}" r="4"/><circle class="wiring-ring" cx="${x + 46}" cy="${y}" r="4"/>${label(rating, x + 23, y + 24, "middle", ratedA !== null)}`;
}

/** A name that has no room ends in an ellipsis: the table has it whole. */
function fitted(text: string, widthPx: number): string {
  const letters = Math.floor(widthPx / LETTER_PX);
  return text.length <= letters ? text : `${text.slice(0, letters - 1).trimEnd()}…`;
}

const TABLE_ROW_PX = 28;
/** Right ends of the columns after the name; what is over is tinted and heavy. */
const COLUMN_PX = [342, 402, 454, 534, 596, 640, WIRING_PX];
const NAME_PX = 262;

/** The table of the wiring sheet as a drawing, so that a file has both. */
function wiringRows({ wiring, lines }: Wired): Drawing {
  const [, ...columns] = WIRING_COLUMNS;
  const words = [
    WIRING_NOTE,
    ...toPutRight({ wiring, lines }).map(({ where, change }) => `${where}: ${change}`),
  ].flatMap((text) => wrappedLines(text, Math.floor(WIRING_PX / (LETTER_PX - 1.3))));
  const bottomY = (wiring.length + 1) * TABLE_ROW_PX;
  return {
    body: html`<g class="wiring">${columns.map(({ head }, c) => label(head, COLUMN_PX[c]!, 18, "end"))}<path class="wiring-head" d="M0 ${TABLE_ROW_PX - 1}H${WIRING_PX}"/>${wiring.map(
      (run, k) => {
        const y = (k + 1) * TABLE_ROW_PX;
        const strong = isOver(run);
        return html`${strong && html`<rect class="wiring-tint" x="0" y="${y}" width="${WIRING_PX}" height="${TABLE_ROW_PX}"/>`}${label(String(run.number), 4, y + 19.5, "start", true)}${label(fitted(run.name, NAME_PX), 32, y + 19.5, "start", strong)}${columns.map(({ cell }, c) => label(cell(run), COLUMN_PX[c]!, y + 19.5, "end", strong))}<path class="wiring-hair" d="M0 ${y + TABLE_ROW_PX}H${WIRING_PX}"/>`;
      },
    )}${words.map((text, k) => label(text, 0, bottomY + 24 + 22 * k, "start"))}</g>`,
    widthPx: WIRING_PX,
    heightPx: bottomY + 30 + 22 * words.length,
    label: "Every run with its currents, fuse, wire, length and drop, and what to put right.",
  };
}

/** Diagram and table as one picture: what is saved as a file. */
export const wiringDrawing = (report: Wired): Drawing => stacked([wiringDiagram(report), wiringRows(report)])!;
