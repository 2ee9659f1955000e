import type { QuantityFacts } from "../../engine/scenario/quantity.ts";

/** A slip of a decimal point, a thousand (kW for W), or a sign. */
const SLIPS = [0.1, 0.01, 10, 0.001, 1000, -1, 100];

/**
 * The number that somebody probably meant by one that is out of range; null when nothing is likelier than the rest.
 * @param usual what stood there before or stands in the base; the guess has to be of its size
 */
export function likelyMeant(value: number, facts: QuantityFacts, usual: number | null): number | null {
  if (!Number.isFinite(value) || (value >= facts.low && value <= facts.high)) return null;
  const candidates = SLIPS.map((slip) => Number((value * slip).toPrecision(12))).filter(
    (guess) => guess >= facts.low && guess <= facts.high,
  );
  const away = (guess: number, from: number) =>
    guess * from > 0 ? Math.abs(Math.log(guess / from)) : Number.POSITIVE_INFINITY;
  if (usual !== null && usual !== 0) {
    const [best] = candidates.sort((a, b) => away(a, usual) - away(b, usual));
    return best !== undefined && away(best, usual) < Math.log(4) ? best : null;
  }
  const { typical } = facts;
  if (typical === undefined) return candidates[0] ?? null;
  return candidates.find((guess) => guess >= typical[0] && guess <= typical[1]) ?? null;
}
