/** A rectangle of the drawing, px. */
export interface LabelBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A name that wants to stand at a point, `clearPx` away from it. */
export interface WantedLabel {
  readonly text: string;
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
  readonly box: LabelBox;
}

/** Width of a letter of 16 px text at 88 % width, on average and then a little, and the room that its line takes. */
const LETTER_PX = 8;
const ABOVE_FOOT_PX = 15;
const BELOW_FOOT_PX = 5;

export function meets(a: LabelBox, b: LabelBox): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/**
 * Sets names one after another where they cover neither one another nor what is taken nor leave the frame: first to the
 * right of their point, then left, below, above, then farther off.
 * @returns one for each wanted name, null where there is no room: the thing still says its name to those who ask it
 */
export function placeLabels(
  wanted: readonly WantedLabel[],
  frame: LabelBox,
  taken: readonly LabelBox[] = [],
): (PlacedLabel | null)[] {
  const boxes = [...taken];
  return wanted.map((label) => {
    for (const farPx of [0, 12, 24, 40]) {
      const place = around(label, label.clearPx + farPx).find(
        ({ box }) =>
          box.left >= frame.left &&
          box.right <= frame.right &&
          box.top >= frame.top &&
          box.bottom <= frame.bottom &&
          !boxes.some((other) => meets(box, other)),
      );
      if (place === undefined) continue;
      boxes.push(place.box);
      return place;
    }
    return null;
  });
}

function around({ text, x, y }: WantedLabel, clear: number): PlacedLabel[] {
  const width = text.length * LETTER_PX;
  const at = (anchor: PlacedLabel["anchor"], atX: number, footY: number): PlacedLabel => {
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
