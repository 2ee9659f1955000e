import { max, scaleLinear } from "d3";
import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import type { PackDot, PackingReport } from "../../packing/packingReport.ts";
import { displayUnit, toDisplay } from "../../words/displayUnits.ts";
import { figure, THIN } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";

const LEFT_PX = 62;
const RIGHT_PX = 24;
const TOP_PX = 38;
const BOTTOM_PX = 34;
const TOOTH_PX = 8;
const TICKS = 5;
/** Room on top of the greatest value. */
const SLACK = 1.06;

interface Scales {
  readonly x: (kg: number) => number;
  /** The same for a mass in the unit that is shown. */
  readonly xShown: (mass: number) => number;
  readonly y: (minutes: number) => number;
  readonly kgTicks: readonly number[];
  readonly minuteTicks: readonly number[];
  readonly rightPx: number;
  readonly bottomPx: number;
}

function scalesOf({ dots, limits }: PackingReport, widthPx: number, heightPx: number): Scales {
  const most = (values: readonly number[], limit: number | null) => SLACK * Math.max(1, max(values) ?? 1, limit ?? 0);
  const shown = (kg: number) => toDisplay(kg, "kg");
  const rightPx = widthPx - RIGHT_PX;
  const bottomPx = heightPx - BOTTOM_PX;
  const kg = scaleLinear()
    .domain([
      0,
      shown(
        most(
          dots.map(({ massKg }) => massKg),
          mostSaid(limits.mass, dots, "massKg"),
        ),
      ),
    ])
    .range([LEFT_PX, rightPx]);
  const minutes = scaleLinear()
    .domain([
      0,
      most(
        dots.map((dot) => dot.minutes),
        mostSaid(limits.minutes, dots, "minutes"),
      ),
    ])
    .range([bottomPx, TOP_PX]);
  return {
    x: (value) => kg(shown(value)),
    xShown: kg,
    y: minutes,
    kgTicks: kg.ticks(TICKS),
    minuteTicks: minutes.ticks(TICKS),
    rightPx,
    bottomPx,
  };
}

/** A limit far beyond all sets is not drawn: it would push them together in a corner. */
const FAR = 1.6;
function mostSaid(limit: number | null, dots: readonly PackDot[], of: "massKg" | "minutes"): number | null {
  return limit !== null && limit <= FAR * (max(dots, (dot) => dot[of]) ?? 0) ? limit : null;
}

/** Every set over what it weighs and how long it takes to set up; the limits with teeth on the side beyond; the frontier numbered. */
export function packingDrawing(report: PackingReport, said: readonly Words[], widthPx = 560, heightPx = 400): Drawing {
  const scales = scalesOf(report, widthPx, heightPx);
  return {
    body: html`${axes(report, scales)}${limitLines(report, scales)}${report.dots.map((dot) => mark(dot, scales))}${stairs(report, scales)}${numbers(report, scales)}`,
    widthPx,
    heightPx,
    label: said.map(({ text }) => text).join(""),
  };
}

function axes(
  { all, targetShare }: PackingReport,
  { xShown, y, kgTicks, minuteTicks, rightPx, bottomPx }: Scales,
): Markup {
  return html`<text class="bar-name" x="${LEFT_PX}" y="18">All ${figure(all)} sets. Dot: reaches ${figure(100 * targetShare, 1)}; open: with a generator; dash: fails</text>${minuteTicks.map(
    (value, k) =>
      html`<path class="pack-grid" d="M${LEFT_PX} ${y(value)}H${rightPx}"/><text class="axis-value" x="${LEFT_PX - 8}" y="${y(value) + 5}" text-anchor="end">${figure(value)}${k === minuteTicks.length - 1 ? `${THIN}min` : ""}</text>`,
  )}${kgTicks.map(
    (value, k) =>
      html`<text class="axis-value" x="${xShown(value)}" y="${bottomPx + 22}" text-anchor="middle">${figure(value)}${k === kgTicks.length - 1 ? `${THIN}${displayUnit("kg")}` : ""}</text>`,
  )}`;
}

/** Limits as ruled lines, their teeth on the bad side. */
function limitLines({ limits, dots }: PackingReport, { x, y, rightPx, bottomPx }: Scales): Markup {
  const kg = mostSaid(limits.mass, dots, "massKg");
  const minutes = mostSaid(limits.minutes, dots, "minutes");
  const endX = kg === null ? rightPx : x(kg);
  const topY = minutes === null ? TOP_PX : y(minutes);
  const along = (from: number, to: number) =>
    Array.from({ length: Math.max(0, Math.floor((to - from) / TOOTH_PX)) }, (_, k) => from + (k + 0.5) * TOOTH_PX);
  return html`${(kg !== null || minutes !== null) && html`<path class="pack-within" d="M${LEFT_PX} ${topY}H${endX}V${bottomPx}H${LEFT_PX}z"/>`}${
    minutes !== null &&
    html`<path class="pack-limit" d="M${LEFT_PX} ${topY}H${endX}${along(LEFT_PX, endX)
      .map((at) => `M${at} ${topY}v-5`)
      .join("")}"/><text class="bar-name" x="${LEFT_PX + 6}" y="${topY - 9}">${figure(minutes)}${THIN}min</text>`
  }${
    kg !== null &&
    html`<path class="pack-limit" d="M${endX} ${topY}V${bottomPx}${along(topY, bottomPx)
      .map((at) => `M${endX} ${at}h5`)
      .join(
        "",
      )}"/><text class="bar-name" x="${endX + 10 > rightPx - 60 ? endX - 8 : endX + 10}" y="${bottomPx - 8}" text-anchor="${endX + 10 > rightPx - 60 ? "end" : "start"}">${figure(toDisplay(kg, "kg"))}${THIN}${displayUnit("kg")}</text>`
  }`;
}

function mark({ massKg, minutes, outcome, hasSource }: PackDot, { x, y }: Scales): Markup {
  const [cx, cy] = [x(massKg), y(minutes)];
  if (outcome === "fails") return html`<path class="pack-fails" d="M${cx - 4} ${cy}h8"/>`;
  if (outcome === "beaten") return html`<path class="pack-beaten" d="M${cx} ${cy - 1}v2"/>`;
  return html`<circle class="${hasSource ? "pack-reaches pack-source" : "pack-reaches"}" cx="${cx}" cy="${cy}" r="4.5"/>`;
}

/** From each set of the frontier to the next lighter or quicker one, in steps. */
function stairs({ frontier, isWithin }: PackingReport, { x, y }: Scales): Markup | null {
  if (!isWithin) return null;
  const corners = frontier
    .map(({ totals }) => ({ kg: totals.mass.sum, minutes: totals.minutes.sum }))
    .sort((a, b) => a.kg - b.kg || a.minutes - b.minutes);
  // What is dearer and lighter lies behind the line of what is least in these two.
  const lowest = corners.filter((corner, k) => corners.slice(0, k).every(({ minutes }) => corner.minutes < minutes));
  const steps = lowest.map(({ kg, minutes }, k) => (k === 0 ? `M${x(kg)} ${y(minutes)}` : `H${x(kg)}V${y(minutes)}`));
  return html`<path class="pack-stairs" d="${steps.join("")}"/>`;
}

const MOST_NUMBERED = 9;
/** Room that a number takes beside its odds. */
const BESIDE_PX = 46;
const LINE_PX = 16;

function numbers({ frontier }: PackingReport, { x, y }: Scales): Markup {
  const shown = frontier
    .slice(0, MOST_NUMBERED)
    .map((set, k) => ({ set, k, cx: x(set.totals.mass.sum), cy: y(set.totals.minutes.sum) }));
  // The odds stand on the left of a number, or on its right where another number or its odds are in the way.
  const isFree = (one: (typeof shown)[number]) =>
    shown.every(
      (other) =>
        other === one ||
        other.cx > one.cx + LINE_PX ||
        one.cx - other.cx > BESIDE_PX ||
        Math.abs(other.cy - one.cy) > LINE_PX,
    );
  // The proposal is drawn last, on top.
  return html`${[...shown].reverse().map((one) => {
    const { set, k, cx, cy } = one;
    const left = isFree(one);
    return html`<circle class="${k === 0 ? "pack-first" : "pack-other"}" cx="${cx}" cy="${cy}" r="12"/><text class="${k === 0 ? "pack-number pack-number-first" : "pack-number"}" x="${cx}" y="${cy + 5.5}" text-anchor="middle">${k + 1}</text>${
      set.holds !== null &&
      html`<text class="axis-value" x="${left ? cx - 17 : cx + 17}" y="${cy + 5.5}" text-anchor="${left ? "end" : "start"}">${inHundred(set.holds)}</text>`
    }`;
  })}`;
}
