import { contours } from "d3";
import type { SizeReport } from "../../size/sizeReport.ts";
import { allCells } from "../../size/solvedTally.ts";
import { type Box, outside, overlapPx2, turnedRoom } from "./nameRoom.ts";
import type { SizeLayout } from "./sizeLayout.ts";

/** Odds at which lines are drawn, in 100; the target has a line of its own. */
const LINES_IN_100 = [5, 25, 50, 75, 90, 99];
const TOOTH_EVERY_PX = 9;
const TOOTH_PX = 6;

type Point = readonly [number, number];

/** A line of equal odds. */
export interface SizeLine {
  readonly in100: number;
  readonly path: string;
  /** Where its name goes, turned with it; null where the line is too short for one. */
  readonly label: { readonly x: number; readonly y: number; readonly turnDeg: number } | null;
}

export interface SizeContours {
  /** Areas in which at least so many in 100 hold, few first: laid over one another they darken. */
  readonly areas: readonly { readonly in100: number; readonly path: string }[];
  readonly lines: readonly SizeLine[];
  /** The target's line, and its teeth on the side that misses it. */
  readonly target: SizeLine & { readonly teeth: string };
}

/**
 * Lines of equal odds through a map, by marching over its cells. Between cells odds run along the logistic curve, so that a line does not
 * lean to the side where they change little; a cell that meets the target always lies on its good side.
 * @param taken room on the map that names keep off: marks, and what is written beside them
 */
export function sizeContours(report: SizeReport, layout: SizeLayout, taken: readonly Box[] = []): SizeContours {
  const { members, rows, y } = report;
  const cells = rows.map(allCells);
  const across = cells[0]!.map((cell) => cell.x);
  const [columns, height] = [across.length, rows.length];
  const along = (share: number) => Math.log((share * members + 0.5) / (members - share * members + 0.5));
  const values = cells.flatMap((row) => row.map((cell) => along(cell.holds.share)));
  const march = contours().size([columns, height]);
  const ringsAt = (share: number): Ring[] =>
    march
      .contour(values, along(share))
      .coordinates.flat()
      .map((ring) => ring.map(([gx, gy]) => onMap(gx!, gy!)));
  /** From the grid, whose cells' middles lie at halves, to the map; what lies outside is put on the edge. */
  const onMap = (gx: number, gy: number): RingPoint => {
    const isEdge = gx < 0.5 || gy < 0.5 || gx > columns - 0.5 || gy > height - 0.5;
    const px = layout.x(between(across, gx - 0.5));
    const py = layout.y(between(y?.values ?? [0], gy - 0.5));
    return { at: [px, py], isEdge };
  };
  const written = [...outside(layout), ...taken];
  const line = (in100: number, share: number, letters: number, awayPx: number): SizeLine & { pieces: Point[][] } => {
    const pieces = ringsAt(share).flatMap(openPieces);
    const label = labelOf(pieces, letters, awayPx, written);
    if (label !== null) written.push(...turnedRoom(label, letters, awayPx));
    return { in100, path: pieces.map(pathOf).join(""), label, pieces };
  };
  const { pieces, ...target } = line(
    100 * report.targetShare,
    report.targetShare,
    targetName(report.targetShare).length,
    TARGET_AWAY_PX,
  );
  return {
    areas: LINES_IN_100.map((in100) => ({
      in100,
      path: ringsAt(in100 / 100)
        .map((ring) => `${pathOf(ring.map(({ at }) => at))}Z`)
        .join(""),
    })),
    lines: LINES_IN_100.filter((in100) => Math.abs(in100 - target.in100) > 1).map((in100) => {
      const { pieces: _, ...found } = line(in100, in100 / 100, 2, 0);
      return found;
    }),
    target: { ...target, teeth: pieces.map(teethOf).join("") },
  };
}

/** What is written along the target's line: short, so that it finds room on a phone and beside the marks. */
export function targetName(share: number): string {
  return share === 1 ? "target: all" : `target ${Number((100 * share).toPrecision(4))}`;
}

interface RingPoint {
  readonly at: Point;
  readonly isEdge: boolean;
}
type Ring = readonly RingPoint[];

/** The value at a place between two of a list. */
function between(values: readonly number[], place: number): number {
  const held = Math.min(values.length - 1, Math.max(0, place));
  const k = Math.min(values.length - 2, Math.floor(held));
  if (k < 0) return values[0]!;
  return values[k]! + (held - k) * (values[k + 1]! - values[k]!);
}

/** The parts of a ring that run inside the map and not along its edge, in the ring's direction. */
function openPieces(ring: Ring): Point[][] {
  // The last point is the first once more; begin behind an edge, so that no piece is cut in two.
  const points = ring.slice(0, -1);
  const start = points.findIndex(({ isEdge }) => isEdge);
  const turned = start < 0 ? ring : [...points.slice(start), ...points.slice(0, start)];
  const pieces: Point[][] = [[]];
  for (const { at, isEdge } of turned) {
    if (isEdge) pieces.push([]);
    else pieces.at(-1)!.push(at);
  }
  return pieces.filter((piece) => piece.length > 1);
}

const pathOf = (points: readonly Point[]) =>
  points.map(([x, y], k) => `${k === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");

/** Points every so many px along a line, with its direction there. */
function pacedOut(points: readonly Point[], everyPx: number): { at: Point; along: Point }[] {
  const found: { at: Point; along: Point }[] = [];
  let due = everyPx / 2;
  for (let k = 1; k < points.length; k++) {
    const [[x0, y0], [x1, y1]] = [points[k - 1]!, points[k]!];
    const length = Math.hypot(x1 - x0, y1 - y0);
    if (length === 0) continue;
    const along: Point = [(x1 - x0) / length, (y1 - y0) / length];
    for (; due <= length; due += everyPx) found.push({ at: [x0 + along[0] * due, y0 + along[1] * due], along });
    due -= length;
  }
  return found;
}

/** Rings run so that the better side lies on their right as seen with y upwards: teeth point to the other one. */
function teethOf(points: readonly Point[]): string {
  return pacedOut(points, TOOTH_EVERY_PX)
    .map(({ at: [x, y], along: [dx, dy] }) => {
      return `M${x.toFixed(1)} ${y.toFixed(1)}l${(TOOTH_PX * dy).toFixed(1)} ${(-TOOTH_PX * dx).toFixed(1)}`;
    })
    .join("");
}

const LABEL_ROOM_PX = 56;
/** The name stands above its line. */
const TARGET_AWAY_PX = 14;
/** How far along the longest piece a name may stand, best first. */
const NAME_AT = Array.from({ length: 23 }, (_, k) => 0.06 + 0.04 * k).sort(
  (a, b) => Math.abs(a - 0.5) - Math.abs(b - 0.5),
);

/** The first place along the longest piece that keeps off what is taken; the freest where none does. */
function labelOf(
  pieces: readonly Point[][],
  letters: number,
  awayPx: number,
  taken: readonly Box[],
): SizeLine["label"] {
  const paced = pieces.map((piece) => pacedOut(piece, 4));
  const longest = paced.reduce<(typeof paced)[number]>((most, each) => (each.length > most.length ? each : most), []);
  if (longest.length * 4 < LABEL_ROOM_PX) return null;
  const places = NAME_AT.map((share) => upright(longest[Math.floor(longest.length * share)]!));
  const covered = places.map((place) => overlapPx2(turnedRoom(place, letters, awayPx), taken));
  return places[covered.indexOf(Math.min(...covered))]!;
}

function upright({ at, along: [dx, dy] }: { at: Point; along: Point }): NonNullable<SizeLine["label"]> {
  const turned = (Math.atan2(dy, dx) * 180) / Math.PI;
  // Upright, whichever way the line runs.
  const turnDeg = turned > 90 ? turned - 180 : turned < -90 ? turned + 180 : turned;
  return { x: at[0], y: at[1], turnDeg };
}
