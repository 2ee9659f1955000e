const PER_UNIT = 2 ** 20;

/**
 * Rounds a prepared value to a millionth (2⁻²⁰). Engines differ in the last bit of a sine or an exponential; rounded
 * away here, the difference never reaches the steps.
 */
export function roundToGrid(value: number): number {
  return Math.round(value * PER_UNIT) / PER_UNIT;
}
