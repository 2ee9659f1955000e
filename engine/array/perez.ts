/**
 * The numbers of Perez's sky. Arithmetic only: they may run inside the member loop.
 * @see R. Perez, P. Ineichen, R. Seals, J. Michalsky, R. Stewart, Solar Energy 44 (1990) 271–289, table 6, all sites
 */

/** Clearness from which each bin holds, then F11, F12, F13, F21, F22, F23. */
const BINS = Float64Array.of(
  ...[1.0, -0.008, 0.588, -0.062, -0.06, 0.072, -0.022],
  ...[1.065, 0.13, 0.683, -0.151, -0.019, 0.066, -0.029],
  ...[1.23, 0.33, 0.487, -0.221, 0.055, -0.064, -0.026],
  ...[1.5, 0.568, 0.187, -0.295, 0.109, -0.152, -0.014],
  ...[1.95, 0.873, -0.392, -0.362, 0.226, -0.462, 0.001],
  ...[2.8, 1.132, -1.237, -0.412, 0.288, -0.823, 0.056],
  ...[4.5, 1.06, -1.6, -0.359, 0.264, -1.127, 0.131],
  ...[6.2, 0.678, -0.327, -0.25, 0.156, -1.377, 0.251],
);
const BIN_WIDTH = 7;

/**
 * Where the bin of a sky's clearness begins.
 * @param kappaZ3 1.041 × the sun's angle from the zenith in radians, cubed
 * @param dhiWm2 above 0
 * @memberLoop
 */
export function perezBin(kappaZ3: number, dniWm2: number, dhiWm2: number): number {
  const clearness = ((dhiWm2 + dniWm2) / dhiWm2 + kappaZ3) / (1 + kappaZ3);
  let bin = BINS.length - BIN_WIDTH;
  while (bin > 0 && clearness < BINS[bin]!) bin -= BIN_WIDTH;
  return bin;
}

/**
 * F1: share of sky light that comes from beside the sun.
 * @param brightness sky light × air mass ÷ the light above the air
 * @memberLoop
 */
export function perezSunShare(bin: number, brightness: number, zenithRad: number): number {
  return Math.max(0, BINS[bin + 1]! + BINS[bin + 2]! * brightness + BINS[bin + 3]! * zenithRad);
}

/**
 * F2: what the horizon's band adds on an upright plane, as a share of sky light; negative when the horizon is dark.
 * @memberLoop
 */
export function perezHorizonShare(bin: number, brightness: number, zenithRad: number): number {
  return BINS[bin + 4]! + BINS[bin + 5]! * brightness + BINS[bin + 6]! * zenithRad;
}
