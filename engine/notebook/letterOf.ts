/** "A" to "Z", then "AA". */
export function letterOf(index: number): string {
  return index < 26
    ? String.fromCharCode(65 + index)
    : `${letterOf(Math.floor(index / 26) - 1)}${letterOf(index % 26)}`;
}
