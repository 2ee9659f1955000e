import type { SkySpan } from "./crownOutline.ts";
import type { SunPath } from "./sunPath.ts";

/** A window on the sky: bearings along, elevations up, each to its own scale. */
export interface SkyView {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly centreDeg: number;
  /** How far it reaches to either side, and up. */
  readonly halfDeg: number;
  readonly topDeg: number;
  /** @param bearingDeg not wrapped: 10 and 370 are a whole turn apart */
  x(bearingDeg: number): number;
  y(elevationDeg: number): number;
}

const SIDE_DEG = 15;
const ABOVE_DEG = 20;

/** Brings a bearing to within half a turn of another. */
export function nearBearing(bearingDeg: number, centreDeg: number): number {
  return centreDeg + ((((bearingDeg - centreDeg + 180) % 360) + 360) % 360) - 180;
}

/** The window that holds the sun's ways, centred on where the sun stands highest. */
export function skyView(paths: readonly SunPath[], widthPx: number, heightPx: number): SkyView {
  let centreDeg = 180;
  let highestDeg = 0;
  for (const path of paths) {
    path.elevationDeg.forEach((elevationDeg, i) => {
      if (elevationDeg <= highestDeg) return;
      highestDeg = elevationDeg;
      centreDeg = path.bearingDeg[i]!;
    });
  }
  centreDeg = Math.round(centreDeg / 5) * 5;
  let sideDeg = 45;
  for (const path of paths) {
    for (const bearingDeg of path.bearingDeg) {
      sideDeg = Math.max(sideDeg, Math.abs(nearBearing(bearingDeg, centreDeg) - centreDeg));
    }
  }
  const halfDeg = Math.min(180, sideDeg + SIDE_DEG);
  const topDeg = Math.min(90, Math.max(30, Math.ceil((highestDeg + ABOVE_DEG) / 15) * 15));
  return {
    widthPx,
    heightPx,
    centreDeg,
    halfDeg,
    topDeg,
    x: (bearingDeg) => ((bearingDeg - centreDeg + halfDeg) / (2 * halfDeg)) * widthPx,
    y: (elevationDeg) => heightPx * (1 - elevationDeg / topDeg),
  };
}

/** What the window shows of an outline, as a path; the ground hides what is below the horizon. */
export function spanPath(view: SkyView, spans: readonly SkySpan[]): string {
  if (spans.length === 0) return "";
  const turns = [-360, 0, 360].filter((turn) => {
    const from = view.x(spans[0]!.bearingDeg + turn);
    const to = view.x(spans.at(-1)!.bearingDeg + turn);
    return to > 0 && from < view.widthPx;
  });
  const above = (deg: number) => Math.max(0, deg);
  return turns
    .map((turn) => {
      const at = (span: SkySpan, deg: number) =>
        `${view.x(span.bearingDeg + turn).toFixed(1)} ${view.y(above(deg)).toFixed(1)}`;
      const over = spans.map((span) => at(span, span.highDeg));
      const under = [...spans].reverse().map((span) => at(span, span.lowDeg));
      return `M${[...over, ...under].join("L")}Z`;
    })
    .join("");
}

const POINTS = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];

/** "SW" of 225: the nearest of the eight points. */
export function compassPoint(bearingDeg: number): string {
  return POINTS[Math.round((((bearingDeg % 360) + 360) % 360) / 45) % 8]!;
}

/** The compass points that the window holds. */
export function compassMarks(view: SkyView): { readonly name: string; readonly bearingDeg: number }[] {
  const marks = [];
  for (let at = Math.ceil((view.centreDeg - view.halfDeg) / 45) * 45; at <= view.centreDeg + view.halfDeg; at += 45) {
    marks.push({ name: compassPoint(at), bearingDeg: at });
  }
  return marks;
}
