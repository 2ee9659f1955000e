import type { Box } from "./nameRoom.ts";

/** A name that wants to stand at a point, `clearPx` away from it. */
export interface WantedLabel {
  readonly text: string;
  /** What will do where the text has no room beside its point. */
  readonly short?: string;
  /** Where it stands best: beside a spot, or under the top of something that it may cover. */
  readonly best: "beside" | "under";
  readonly x: number;
  readonly y: number;
  readonly clearPx: number;
}

/** Where it stands; `y` is the text's foot. */
export interface PlacedLabel {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  readonly box: Box;
  /** From the point to the text where it stands away from its point; empty where it needs none. */
  readonly leader: string;
}

/** Width of a letter of 16 px text at 88 % width, on average and then a little, and the room that its line takes. */
const LETTER_PX = 8;
const ABOVE_FOOT_PX = 15;
const BELOW_FOOT_PX = 5;

export function meets(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/**
 * Sets names one after another where they cover neither one another nor what is taken nor leave the frame: best where
 * they want to be, else anywhere about their point, else farther off.
 * @returns one for each wanted name, null where there is no room: the thing still says its name to those who ask it
 */
export function placeLabels(
  wanted: readonly WantedLabel[],
  frame: Box,
  taken: readonly Box[] = [],
): (PlacedLabel | null)[] {
  const boxes = [...taken];
  const isFree = ({ box }: Spot) =>
    box.left >= frame.left &&
    box.right <= frame.right &&
    box.top >= frame.top &&
    box.bottom <= frame.bottom &&
    !boxes.some((other) => meets(box, other));
  return wanted.map((label) => {
    const near = first(label).find(isFree);
    const place = near ?? later(label).find(isFree) ?? null;
    if (place === null) return null;
    boxes.push(place.box);
    return { ...place, leader: near === undefined ? leaderTo(label, place.box) : "" };
  });
}

const FAR_PX = [0, 12, 24, 40];
type Spot = Omit<PlacedLabel, "leader">;

const textsOf = ({ text, short }: WantedLabel) => (short === undefined ? [text] : [text, short]);

function first(label: WantedLabel): Spot[] {
  const best = label.best === "beside" ? [0, 1, 4, 5, 6, 7] : [2];
  return textsOf(label).flatMap((text) => {
    const about = around(text, label.x, label.y, label.clearPx);
    return best.map((i) => about[i]!);
  });
}

function later(label: WantedLabel): Spot[] {
  return FAR_PX.flatMap((farPx) => around(label.short ?? label.text, label.x, label.y, label.clearPx + farPx));
}

function leaderTo({ x, y }: WantedLabel, box: Box): string {
  const held = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  return `M${x} ${y}L${held(x, box.left + 4, box.right - 4)} ${held(y, box.top + 4, box.bottom - 4)}`;
}

/** Right, left, under, over, and the four between. */
function around(text: string, x: number, y: number, clear: number): Spot[] {
  const width = text.length * LETTER_PX;
  const at = (anchor: PlacedLabel["anchor"], atX: number, footY: number): Spot => {
    const left = anchor === "start" ? atX : anchor === "end" ? atX - width : atX - width / 2;
    return {
      text,
      x: atX,
      y: footY,
      anchor,
      box: { left, right: left + width, top: footY - ABOVE_FOOT_PX, bottom: footY + BELOW_FOOT_PX },
    };
  };
  return [
    at("start", x + clear, y + 5),
    at("end", x - clear, y + 5),
    at("middle", x, y + clear + ABOVE_FOOT_PX),
    at("middle", x, y - clear - BELOW_FOOT_PX),
    at("start", x + clear * 0.7, y + clear * 0.7 + ABOVE_FOOT_PX),
    at("end", x - clear * 0.7, y + clear * 0.7 + ABOVE_FOOT_PX),
    at("start", x + clear * 0.7, y - clear * 0.7 - BELOW_FOOT_PX),
    at("end", x - clear * 0.7, y - clear * 0.7 - BELOW_FOOT_PX),
  ];
}
