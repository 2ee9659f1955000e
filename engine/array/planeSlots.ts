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
