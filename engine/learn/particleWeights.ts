/** Exponentials differ in their last bit from one JavaScript engine to the next; rounded to this they do not. */
const GRID = 2 ** 40;

/**
 * Weights of particles from the logarithms of their likelihoods, adding up to 1. The largest is taken out first, so that
 * the least likely set still has weights.
 * @param logLikelihood one value per particle
 * @param power 1 takes the likelihood as it is, less tempers it
 */
export function particleWeights(logLikelihood: Float64Array, power = 1): Float64Array {
  const most = logLikelihood.reduce((best, value) => Math.max(best, value), Number.NEGATIVE_INFINITY);
  const weights = logLikelihood.map((value) => Math.round(Math.exp(power * (value - most)) * GRID) / GRID);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

/**
 * Effective sample size, 1 / Σw²: as many equal particles would say as much.
 * @param weights adding up to 1
 * @see A. Kong, J. S. Liu and W. H. Wong, Journal of the American Statistical Association 89 (1994) 278–288 (from memory)
 */
export function effectiveMembers(weights: Float64Array): number {
  return 1 / weights.reduce((sum, weight) => sum + weight * weight, 0);
}

/**
 * The power, at most 1, to which a likelihood is taken so that the effective sample size does not fall below a wanted one.
 * @param wanted 1…number of particles
 */
export function temperedPower(logLikelihood: Float64Array, wanted: number): number {
  if (effectiveMembers(particleWeights(logLikelihood)) >= wanted) return 1;
  let low = 0;
  let high = 1;
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (effectiveMembers(particleWeights(logLikelihood, middle)) >= wanted) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Systematic resampling: which particle each of the new ones copies, in proportion to the weights and with the least
 * scatter that one even draw allows.
 * @param weights adding up to 1
 * @param unit one even draw, 0…1
 * @see G. Kitagawa, Journal of Computational and Graphical Statistics 5 (1996) 1–25 (from memory)
 */
export function systematicResample(weights: Float64Array, unit: number): Int32Array {
  const count = weights.length;
  const parents = new Int32Array(count);
  let sum = weights[0]!;
  let parent = 0;
  for (let k = 0; k < count; k++) {
    const wanted = (k + unit) / count;
    while (sum < wanted && parent < count - 1) sum += weights[++parent]!;
    parents[k] = parent;
  }
  return parents;
}
