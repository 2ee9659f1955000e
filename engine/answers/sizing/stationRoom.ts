import { type Box, LETTER_PX } from "../../drawing/nameRoom.ts";

interface Spot {
  readonly x: number;
  readonly y: number;
}

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
