/**
 * Guards at the engine's doors: the call is wrong, so the programmer hears of it. Problems in a user's document are
 * never thrown; `readScenario` returns them.
 */

/** @throws RangeError if a named value is not a finite number within [low, high] */
export function requireRange(named: Record<string, number>, low: number, high: number): void {
  for (const [name, value] of Object.entries(named)) {
    if (!(value >= low && value <= high)) throw new RangeError(`${name} must lie in ${low}…${high}, got ${value}`);
  }
}

/** @throws RangeError if the named arrays differ in length */
export function requireSameLength(named: Record<string, ArrayLike<number>>): void {
  const [first, ...others] = Object.entries(named);
  for (const [name, values] of others) {
    if (first && values.length !== first[1].length) {
      throw new RangeError(
        `${name} must have as many values as ${first[0]} (${first[1].length}), got ${values.length}`,
      );
    }
  }
}
