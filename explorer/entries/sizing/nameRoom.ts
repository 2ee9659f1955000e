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
const LETTER_PX = 8.2;

/** A triangle with its name beneath it. */
export function stationRoom({ x, y }: Spot, name: string): Box[] {
  const half = (name.length * LETTER_PX) / 2;
  return [
    { left: x - 14, right: x + 14, top: y - 14, bottom: y + 12 },
    { left: x - half, right: x + half, top: y + 12, bottom: y + 38 },
  ];
}

/** A ring with a number in it. */
export function optionRoom({ x, y }: Spot): Box {
  return { left: x - 13, right: x + 13, top: y - 13, bottom: y + 13 };
}

/** A name that is turned about its middle, `awayPx` off its line. */
export function turnedRoom(at: Spot & { readonly turnDeg: number }, letters: number, awayPx: number): Box {
  const turn = (at.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [x, y] = [at.x + awayPx * sin, at.y - awayPx * cos];
  const [long, high] = [(letters * LETTER_PX) / 2, 9];
  const halfX = Math.abs(long * cos) + Math.abs(high * sin);
  const halfY = Math.abs(long * sin) + Math.abs(high * cos);
  return { left: x - halfX, right: x + halfX, top: y - halfY, bottom: y + halfY };
}

/** How much of a box lies on what is taken, px². */
export function overlapPx2(box: Box, taken: readonly Box[]): number {
  return taken.reduce((sum, each) => {
    const wide = Math.min(box.right, each.right) - Math.max(box.left, each.left);
    const high = Math.min(box.bottom, each.bottom) - Math.max(box.top, each.top);
    return wide > 0 && high > 0 ? sum + wide * high : sum;
  }, 0);
}
