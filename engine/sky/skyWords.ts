import { toGrid } from "../grid.ts";

/** One word for the sky, and what it does to the light on the level. */
export interface SkyWord {
  readonly word: "clear" | "fair" | "mixed" | "cloudy" | "overcast";
  /** Eighths of the sky under cloud. */
  readonly okta: number;
  /** What it means, in the terms of a weather observer. */
  readonly meaning: string;
  /** Light on the level as a share of a cloudless sky's, 0…1. */
  readonly clearIndexShare: number;
}

/**
 * Light on the level under N eighths of cloud, as a share of a cloudless sky's: 1 − 0.75 (N/8)^3.4. A mean over years of
 * hours at Hamburg; single hours stray from it by 0.1 to 0.2, most under broken cloud (from memory).
 * @param okta 0…8
 * @see F. Kasten and G. Czeplak, Solar Energy 24 (1980) 177–189
 */
export function clearIndexShareOfOkta(okta: number): number {
  return toGrid(1 - 0.75 * (okta / 8) ** 3.4);
}

/** The five words, clearest first; oktas in the bands of a weather report (few, scattered, broken, overcast). */
export const SKY_WORDS: readonly SkyWord[] = [
  { word: "clear", okta: 0, meaning: "no cloud", clearIndexShare: clearIndexShareOfOkta(0) },
  { word: "fair", okta: 4, meaning: "half the sky under cloud", clearIndexShare: clearIndexShareOfOkta(4) },
  { word: "mixed", okta: 6, meaning: "broken cloud", clearIndexShare: clearIndexShareOfOkta(6) },
  { word: "cloudy", okta: 7, meaning: "nearly covered", clearIndexShare: clearIndexShareOfOkta(7) },
  { word: "overcast", okta: 8, meaning: "covered", clearIndexShare: clearIndexShareOfOkta(8) },
];
