import { type Box, overlapPx2, turnedRoom } from "./nameRoom.ts";

export type Point = readonly [number, number];

/** Where a name goes on a line, turned with it. */
export interface NameOnLine {
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number;
}

/** A corner of a ring that a contour makes, and whether it lies on the edge of what was marched over. */
export interface RingPoint {
  readonly at: Point;
  readonly isEdge: boolean;
}
export type Ring = readonly RingPoint[];

/** The parts of a ring that run inside the map and not along its edge, in the ring's direction. */
export function openPieces(ring: Ring): Point[][] {
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

export const pathOf = (points: readonly Point[]) =>
  points.map(([x, y], k) => `${k === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");

/** Points every so many px along a line, with its direction there. */
export function pacedOut(points: readonly Point[], everyPx: number): { at: Point; along: Point }[] {
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

const LABEL_ROOM_PX = 56;
/** How far along the longest piece a name may stand, best first. */
const NAME_AT = Array.from({ length: 23 }, (_, k) => 0.06 + 0.04 * k).sort(
  (a, b) => Math.abs(a - 0.5) - Math.abs(b - 0.5),
);

/** The first place along the longest piece that keeps off what is taken; the freest where none does. */
export function nameOnLine(
  pieces: readonly Point[][],
  letters: number,
  awayPx: number,
  taken: readonly Box[],
): NameOnLine | null {
  const paced = pieces.map((piece) => pacedOut(piece, 4));
  const longest = paced.reduce<(typeof paced)[number]>((most, each) => (each.length > most.length ? each : most), []);
  if (longest.length * 4 < LABEL_ROOM_PX) return null;
  const places = NAME_AT.map((share) => upright(longest[Math.floor(longest.length * share)]!));
  const covered = places.map((place) => overlapPx2(turnedRoom(place, letters, awayPx), taken));
  return places[covered.indexOf(Math.min(...covered))]!;
}

function upright({ at, along: [dx, dy] }: { at: Point; along: Point }): NameOnLine {
  const turned = (Math.atan2(dy, dx) * 180) / Math.PI;
  // Upright, whichever way the line runs.
  const turnDeg = turned > 90 ? turned - 180 : turned < -90 ? turned + 180 : turned;
  return { x: at[0], y: at[1], turnDeg };
}
