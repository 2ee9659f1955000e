/**
 * How the current of a string in uneven light is found.
 * - `kthBrightest`: k sections carry what the k-th brightest gives. Never more than a real string, up to 0.13 of full
 *   power less when the shade is mild.
 * - `mildShade`: the same, raised by what a real string wins when its current falls below that of its brighter cells:
 *   they move up their curve, towards open voltage and short-circuit current. Fitted to single-diode strings with one
 *   dim cell (within 0.01 of full power); up to 0.06 too much when a whole section is evenly dim.
 */
export type SectionRule = "kthBrightest" | "mildShade";

/** Most that the mild-shade rule can add, and how far under the mean light half of it is reached. */
export const MILD_SHADE_MOST = 0.3;
export const MILD_SHADE_HALF = 0.2;
