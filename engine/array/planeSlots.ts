/**
 * Where the numbers that `stepPlane` works out for a step stand in a group's plane rows, and how many there are.
 * The first four are the choice of conducting sections: the free one, until `stepGroup` finds that the bank's volts
 * forbid it and writes its own.
 */

/** Power of the best choice at the far end of the tracked cable, before the losses, W while set out. */
export const BEST_W = 0;
/** Volts and current of the strings at that choice, and how many sections of each conduct. */
export const BEST_V = 1;
export const BEST_A = 2;
export const BEST_K = 3;
/** Beam behind the glass, all else on the plane, and all light on the plane after shade, W/m². */
export const GLASS_BEAM_WM2 = 4;
export const DIFFUSE_WM2 = 5;
export const PLANE_WM2 = 6;
/** Cells' temperature, °C. */
export const CELL_C = 7;

export const PLANE_SLOTS = 8;

/**
 * Notes the choice of sections of a step.
 * @memberLoop
 */
export function noteChoice(
  plane: Float64Array,
  to: number,
  bestW: number,
  bestV: number,
  bestA: number,
  bestK: number,
): void {
  plane[to + BEST_W] = bestW;
  plane[to + BEST_V] = bestV;
  plane[to + BEST_A] = bestA;
  plane[to + BEST_K] = bestK;
}

/**
 * Notes the light of a step.
 * @memberLoop
 */
export function noteLight(
  plane: Float64Array,
  to: number,
  glassBeamWm2: number,
  diffuseWm2: number,
  planeWm2: number,
  cellC: number,
): void {
  plane[to + GLASS_BEAM_WM2] = glassBeamWm2;
  plane[to + DIFFUSE_WM2] = diffuseWm2;
  plane[to + PLANE_WM2] = planeWm2;
  plane[to + CELL_C] = cellC;
}

/**
 * Notes a step without light: cells are as warm as the air.
 * @memberLoop
 */
export function noteDark(plane: Float64Array, to: number, airC: number): void {
  noteChoice(plane, to, 0, 0, 0, 0);
  noteLight(plane, to, 0, 0, 0, airC);
}
