/** Room that something takes on a drawing, px. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Mean width of a letter of 16 px, px. */
export const LETTER_PX = 8.2;

/** A name that is turned about its middle, `awayPx` off its line: a box for each two letters. */
export function turnedRoom(at: Spot & { readonly turnDeg: number }, letters: number, awayPx: number): Box[] {
  const turn = (at.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const pieces = Math.ceil(letters / 2);
  const [long, high] = [LETTER_PX, 9];
  const halfX = Math.abs(long * cos) + Math.abs(high * sin);
  const halfY = Math.abs(long * sin) + Math.abs(high * cos);
  return Array.from({ length: pieces }, (_, piece) => {
    const alongPx = 2 * LETTER_PX * (piece - (pieces - 1) / 2);
    const [x, y] = [at.x + awayPx * sin + alongPx * cos, at.y - awayPx * cos + alongPx * sin];
    return { left: x - halfX, right: x + halfX, top: y - halfY, bottom: y + halfY };
  });
}

/** All that lies outside a frame: names stay within it. */
export function outside({ left, right, top, bottom }: Box): Box[] {
  const far = 1e4;
  return [
    { left: -far, right: left, top: -far, bottom: far },
    { left: right, right: far, top: -far, bottom: far },
    { left, right, top: -far, bottom: top },
    { left, right, top: bottom, bottom: far },
  ];
}

/** How much of some boxes lies on what is taken, px². */
export function overlapPx2(boxes: readonly Box[], taken: readonly Box[]): number {
  let sum = 0;
  for (const box of boxes) {
    for (const each of taken) {
      const wide = Math.min(box.right, each.right) - Math.max(box.left, each.left);
      const high = Math.min(box.bottom, each.bottom) - Math.max(box.top, each.top);
      if (wide > 0 && high > 0) sum += wide * high;
    }
  }
  return sum;
}
