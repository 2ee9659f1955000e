import { distance } from "fastest-levenshtein";

/** No name is nearly as long; a longer one is no slip of the pen. */
const LONGEST_SLIP = 60;

/**
 * The name that somebody probably meant by one that is not known: the fewest letters away, and no more than a third of them or `slack`.
 * @param slack letters that short names may differ in
 * @returns null where none is near
 */
export function nearestName(name: string, names: readonly string[], slack = 2): string | null {
  if (name.length > LONGEST_SLIP) return null;
  const ranked = names.map((known) => ({ known, steps: distance(name.toLowerCase(), known.toLowerCase()) }));
  ranked.sort((a, b) => a.steps - b.steps);
  const best = ranked[0];
  return best !== undefined && best.steps <= Math.max(slack, name.length / 3) ? best.known : null;
}
