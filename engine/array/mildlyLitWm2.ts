/** Most that the mild-shade rule can add, and how far under the mean light half of it is reached. */
const MILD_SHADE_MOST = 0.3;
const MILD_SHADE_HALF = 0.2;

/**
 * Light that stands for a section's current by the mild-shade rule (`models.sectionRule`): the k-th brightest rule never
 * gives more than a real string, and up to 0.13 of full power less when the shade is mild. This one adds what a real string
 * wins when its current falls below that of its brighter cells: they move up their curve, towards open voltage and
 * short-circuit current. Fitted to single-diode strings with one dim cell at the power point (within 0.01 of full power); up
 * to 0.06 too much when a whole section is evenly dim.
 * @param evenWm2 light of the section that holds the string back; @param meanWm2 light of the whole group, not below 0
 * @memberLoop
 */
export function mildlyLitWm2(evenWm2: number, meanWm2: number): number {
  const under = meanWm2 > 0 ? Math.max(0, 1 - evenWm2 / meanWm2) : 0;
  return evenWm2 * (1 + (MILD_SHADE_MOST * under) / (MILD_SHADE_HALF + under));
}
