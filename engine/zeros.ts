/**
 * So many zeros: in memory that nobody needs any more where that is as long, else in fresh memory, which takes longer to get than to fill.
 * @param spare written over
 */
export function zeros(length: number, spare?: Float64Array): Float64Array {
  return spare?.length === length ? spare.fill(0) : new Float64Array(length);
}
