import { contours, range, tickStep } from "d3";
import { type NameOnLine, nameOnLine, openPieces, pathOf, type RingPoint } from "../../drawing/contourLines.ts";
import { type Box, outside, turnedRoom } from "../../drawing/nameRoom.ts";
import type { SpotsReport } from "../../spots/spotsReport.ts";
import type { SpotsLayout } from "./spotsLayout.ts";

/** Lines of equal watt-hours that a map has room for, about. */
const LINES = 7;

/** A line of equal watt-hours, and the area in which it is that many at least: laid over one another areas darken. */
export interface SpotsLine {
  readonly wh: number;
  readonly area: string;
  readonly line: string;
  /** Null where the line is too short for its name. */
  readonly name: NameOnLine | null;
}

/** @param taken room that names keep off: marks, and what is written beside them */
export function spotsContours(
  { grid, dayWh }: Pick<SpotsReport, "grid" | "dayWh">,
  layout: SpotsLayout,
  taken: readonly Box[],
): SpotsLine[] {
  const [least, most] = [Math.min(...dayWh), Math.max(...dayWh)];
  const { columns, rows, stepM, westM, southM } = grid;
  if (!(most > least) || columns < 2 || rows < 2) return [];
  const step = tickStep(least, most, LINES);
  const march = contours().size([columns, rows]);
  // From the grid, whose spots lie at halves, to the map; what lies outside is put on the map's edge.
  const onMap = (gx: number, gy: number): RingPoint => {
    const isEdge = gx < 0.5 || gy < 0.5 || gx > columns - 0.5 || gy > rows - 0.5;
    const x = gx < 0.5 ? 0 : gx > columns - 0.5 ? layout.widthPx : layout.x(westM + (gx - 0.5) * stepM);
    const y = gy < 0.5 ? layout.heightPx : gy > rows - 0.5 ? 0 : layout.y(southM + (gy - 0.5) * stepM);
    return { at: [x, y], isEdge };
  };
  const frame = { left: 4, right: layout.widthPx - 4, top: 4, bottom: layout.heightPx - 4 };
  const written = [...outside(frame), ...taken];
  return range(Math.ceil(least / step) * step, most, step)
    .filter((wh) => wh > least)
    .map((wh) => {
      const rings = march
        .contour([...dayWh], wh)
        .coordinates.flat()
        .map((ring) => ring.map(([gx, gy]) => onMap(gx!, gy!)));
      const pieces = rings.flatMap(openPieces);
      const letters = String(wh).length;
      const name = nameOnLine(pieces, letters, 0, written);
      if (name !== null) written.push(...turnedRoom(name, letters, 0));
      return {
        wh,
        area: rings.map((ring) => `${pathOf(ring.map(({ at }) => at))}Z`).join(""),
        line: pieces.map(pathOf).join(""),
        name,
      };
    });
}
