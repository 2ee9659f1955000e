/** Finest step of prepared numbers: 2^-20. */
const GRID = 2 ** 20;

/**
 * Rounds a prepared number to a fixed grid. Sines and exponentials differ in their last bit from one JavaScript engine to
 * the next; rounded tables do not, so that a run gives the same bits everywhere.
 */
export function toGrid(value: number): number {
  return Math.round(value * GRID) / GRID;
}
