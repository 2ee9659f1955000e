import type { PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import type { Box } from "../../../engine/drawing/nameRoom.ts";
import type { Thing } from "./thing.ts";

/** Metres that a plan shows: its middle, and how far it reaches from west to east. */
export interface PlanFrame extends PlanPoint {
  readonly spanM: number;
}

/** A plan to scale: the same px to the metre both ways, north up. */
export interface PlanView {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerM: number;
  x(eastM: number): number;
  y(northM: number): number;
}

const MARGIN_M = 4;
const LEAST_SPAN_M = 12;
const MOST_SPAN_M = 1200;

export function planView(frame: PlanFrame, widthPx: number, heightPx: number): PlanView {
  const pxPerM = widthPx / frame.spanM;
  return {
    widthPx,
    heightPx,
    pxPerM,
    x: (eastM) => widthPx / 2 + (eastM - frame.eastM) * pxPerM,
    y: (northM) => heightPx / 2 - (northM - frame.northM) * pxPerM,
  };
}

/** The frame that shows everything on the site, and a few metres more. */
export function wholeSite(things: readonly Thing[], widthPx: number, heightPx: number): PlanFrame {
  if (things.length === 0) return { eastM: 0, northM: 0, spanM: 40 };
  const reachM = (thing: Thing) => reachOf(thing) + MARGIN_M;
  const west = Math.min(...things.map((thing) => thing.eastM - reachM(thing)));
  const east = Math.max(...things.map((thing) => thing.eastM + reachM(thing)));
  const south = Math.min(...things.map((thing) => thing.northM - reachM(thing)));
  const north = Math.max(...things.map((thing) => thing.northM + reachM(thing)));
  const spanM = Math.max(east - west, ((north - south) * widthPx) / heightPx);
  return { eastM: (west + east) / 2, northM: (south + north) / 2, spanM: heldSpanM(spanM) };
}

/** The frame about the same middle, `times` as wide. */
export function zoomed(frame: PlanFrame, times: number): PlanFrame {
  return { ...frame, spanM: heldSpanM(frame.spanM * times) };
}

function heldSpanM(spanM: number): number {
  return Math.min(MOST_SPAN_M, Math.max(LEAST_SPAN_M, spanM));
}

/** How far a thing reaches from its middle. */
export function reachOf(thing: Thing): number {
  if ("tree" in thing) return thing.tree.crownRadiusM;
  if ("box" in thing) return Math.hypot(thing.box.lengthM, thing.box.widthM) / 2;
  const { lengthM, widthM } = thing.group.module;
  return Math.hypot(lengthM, widthM * thing.group.count) / 2;
}

/** Whether a point lies in view. */
export function isInView(view: PlanView, at: PlanPoint): boolean {
  const x = view.x(at.eastM);
  const y = view.y(at.northM);
  return x >= 8 && x <= view.widthPx - 8 && y >= 8 && y <= view.heightPx - 8;
}

/** Lines of the plan's grid, and those of them that have room for their number at the foot. */
export interface GridLines {
  readonly eastM: readonly number[];
  readonly northM: readonly number[];
  readonly namedEastM: readonly number[];
}

/** Where lines of the grid run: every 10 m, or farther apart where those would be closer than 24 px. */
export function gridLines(frame: PlanFrame, view: PlanView): GridLines {
  const everyM = [10, 50, 100].find((step) => step * view.pxPerM >= 24) ?? 200;
  const lines = (middleM: number, halfM: number) => {
    const found: number[] = [];
    for (let n = Math.ceil((middleM - halfM) / everyM); n * everyM <= middleM + halfM; n++) found.push(n * everyM);
    return found;
  };
  const halfM = frame.spanM / 2;
  const eastM = lines(frame.eastM, halfM);
  const namedM = everyM * Math.max(1, Math.ceil(64 / (everyM * view.pxPerM)));
  return {
    eastM,
    northM: lines(frame.northM, (halfM * view.heightPx) / view.widthPx),
    namedEastM: eastM.filter((at) => at % namedM === 0),
  };
}

/** The plan's ground as a box for labels. */
export function viewBox(view: PlanView): Box {
  return { left: 4, right: view.widthPx - 4, top: 4, bottom: view.heightPx - 4 };
}
