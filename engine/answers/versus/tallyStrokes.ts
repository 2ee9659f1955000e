import type { VersusPicture } from "./versusPicture.ts";
import { tallyOf100 } from "./versusWords.ts";

const LOOKS = ["both", "second", "first", "neither"] as const;
const STROKE_PX = 16;
const ROW_PX = 26;

export const TALLY_PX = { width: 20 * STROKE_PX, height: 5 * ROW_PX };

/** A hundred strokes in five rows of twenty, by fives. */
export function tallyStrokes(picture: VersusPicture) {
  const looks = tallyOf100(picture).flatMap((count, k) => Array.from({ length: count }, () => LOOKS[k]!));
  return looks.map((look, i) => ({
    look,
    x: (i % 20) * STROKE_PX + Math.floor((i % 20) / 5) * 1.5 + 1,
    y: Math.floor(i / 20) * ROW_PX + 2,
  }));
}

/** What each kind of stroke stands for, with its number. */
export function tallyWords(picture: VersusPicture, names: { first: string; second: string }) {
  const [both, second, first, neither] = tallyOf100(picture);
  return [
    { look: "both", text: `${both} hold either way` },
    { look: "second", text: `${second} only with ${names.second}` },
    ...(first > 0 ? [{ look: "first", text: `${first} only with ${names.first}` }] : []),
    { look: "neither", text: `${neither} fail either way` },
  ];
}
