/**
 * The share of a standard normal distribution that lies below `z`; relative error under 1.2e-7 in either tail. Prepare only.
 * @see W. H. Press et al., Numerical Recipes, 2nd ed., 1992, section 6.2, erfcc (coefficients from memory)
 */
export function normalShare(z: number): number {
  const x = Math.abs(z) * Math.SQRT1_2;
  const t = 1 / (1 + 0.5 * x);
  const series =
    -1.26551223 +
    t *
      (1.00002368 +
        t *
          (0.37409196 +
            t *
              (0.09678418 +
                t *
                  (-0.18628806 +
                    t * (0.27886807 + t * (-1.13520398 + t * (1.48851587 + t * (-0.82215223 + t * 0.17087277))))))));
  const tail = 0.5 * t * Math.exp(-x * x + series);
  return z < 0 ? tail : 1 - tail;
}
