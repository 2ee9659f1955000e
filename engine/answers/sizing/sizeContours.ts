import { contours } from "d3";
import {
  type NameOnLine,
  nameOnLine,
  openPieces,
  type Point,
  pacedOut,
  pathOf,
  type Ring,
  type RingPoint,
} from "../../drawing/contourLines.ts";
import { type Box, outside, turnedRoom } from "../../drawing/nameRoom.ts";
import type { SizeReport } from "../../size/sizeReport.ts";
import { allCells } from "../../size/solvedTally.ts";
import type { SizeLayout } from "./sizeLayout.ts";

/** Odds at which lines are drawn, in 100; the target has a line of its own. */
const LINES_IN_100 = [5, 25, 50, 75, 90, 99];
const TOOTH_EVERY_PX = 9;
const TOOTH_PX = 6;

/** A line of equal odds. */
export interface SizeLine {
  readonly in100: number;
  readonly path: string;
  /** Where its name goes, turned with it; null where the line is too short for one. */
  readonly label: NameOnLine | null;
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
    const label = nameOnLine(pieces, letters, awayPx, written);
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

/** The value at a place between two of a list. */
function between(values: readonly number[], place: number): number {
  const held = Math.min(values.length - 1, Math.max(0, place));
  const k = Math.min(values.length - 2, Math.floor(held));
  if (k < 0) return values[0]!;
  return values[k]! + (held - k) * (values[k + 1]! - values[k]!);
}

/** Rings run so that the better side lies on their right as seen with y upwards: teeth point to the other one. */
function teethOf(points: readonly Point[]): string {
  return pacedOut(points, TOOTH_EVERY_PX)
    .map(({ at: [x, y], along: [dx, dy] }) => {
      return `M${x.toFixed(1)} ${y.toFixed(1)}l${(TOOTH_PX * dy).toFixed(1)} ${(-TOOTH_PX * dx).toFixed(1)}`;
    })
    .join("");
}

/** The name stands above its line. */
const TARGET_AWAY_PX = 14;
