/**
 * The smallest of 1…most that reaches something.
 * @param isMonotone whether all above one that reaches it reach it too: then by halving, else one after the other
 * @param about where it is thought to lie; looked at first, and then further and further away
 * @returns null where none does
 */
export async function smallestReaching(
  most: number,
  isMonotone: boolean,
  reaches: (at: number) => Promise<boolean>,
  about?: number,
): Promise<number | null> {
  if (most < 1) return null;
  if (!isMonotone) {
    for (let at = 1; at <= most; at++) if (await reaches(at)) return at;
    return null;
  }
  let misses = 0;
  let hits = Math.min(most, Math.max(1, about ?? most));
  let stride = 1;
  if (await reaches(hits)) {
    while (about !== undefined && hits - misses > 1) {
      const at = Math.max(misses + 1, hits - stride);
      stride *= 2;
      if (await reaches(at)) hits = at;
      else {
        misses = at;
        break;
      }
    }
  } else {
    for (;;) {
      misses = hits;
      if (misses === most) return null;
      hits = Math.min(most, misses + stride);
      stride *= 2;
      if (await reaches(hits)) break;
    }
  }
  while (hits - misses > 1) {
    const middle = (hits + misses) >> 1;
    if (await reaches(middle)) hits = middle;
    else misses = middle;
  }
  return hits;
}
