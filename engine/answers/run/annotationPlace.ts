/** A box in the drawing, px. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const TEXT_PX = 22;
/** Steps from the ring to the text, nearest first: down-left, up-right and so on. */
const DIRECTIONS = [
  [-1, 1],
  [1, 1],
  [-1, -1],
  [1, -1],
] as const;

function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/**
 * Finds empty ground for a text near a ring: a place inside the chart where it covers neither the lines nor what is
 * already written, and where its leader does not run through any of that either.
 * @param lineYs for an x, the heights of the lines that run through there
 * @returns the baseline's start or end (`anchor`), or null when there is no room
 */
export function annotationPlace(
  ring: { x: number; y: number },
  widthPx: number,
  chart: Box,
  taken: readonly Box[],
  lineYs: (x: number) => readonly number[],
): { x: number; y: number; anchor: "start" | "end"; box: Box; leader: Box } | null {
  for (const away of [28, 44, 64, 88, 116, 148]) {
    for (const [right, down] of DIRECTIONS) {
      const x = ring.x + right * 24;
      const y = ring.y + down * away;
      const box = {
        left: right > 0 ? x : x - widthPx,
        right: right > 0 ? x + widthPx : x,
        top: y - TEXT_PX / 2,
        bottom: y + TEXT_PX / 2,
      };
      if (box.left < chart.left || box.right > chart.right || box.top < chart.top || box.bottom > chart.bottom)
        continue;
      // Up or down from the ring, which itself is taken.
      const leader = {
        left: ring.x - 3,
        right: ring.x + 3,
        top: down > 0 ? ring.y + 8 : y,
        bottom: down > 0 ? y : ring.y - 8,
      };
      if (taken.some((other) => overlaps(box, other) || overlaps(leader, other))) continue;
      if (crosses(box, lineYs)) continue;
      return { x, y: y + 5, anchor: right > 0 ? "start" : "end", box, leader };
    }
  }
  return null;
}

function crosses(box: Box, lineYs: (x: number) => readonly number[]): boolean {
  for (let x = box.left - 4; x <= box.right + 4; x += 4) {
    if (lineYs(x).some((y) => y > box.top - 3 && y < box.bottom + 3)) return true;
  }
  return false;
}
