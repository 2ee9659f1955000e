import { zeros } from "../zeros.ts";
import type { PreparedDome } from "./skyDome.ts";

/** The light of members side by side, ready to fall on any plane: one lane's steps after the other's. */
export interface DomeLight {
  /** `DOME_LIGHT_SLOTS` numbers for each step of each lane, in the places named below. */
  readonly rows: Float64Array;
  /** What the horizon's band adds on a plane that stands upright, W/m², below 0 where the horizon is dark; empty except for Perez. */
  readonly horizonWm2: Float64Array;
}

/** On the level, W/m². Where it is 0, the other places hold what stood there before. */
export const GHI_WM2 = 0;
/** From the sun and from beside it, on a plane that faces the sun, W/m². */
export const SUN_WM2 = 1;
/** From the rest of the sky, even all over, on the level, W/m². */
export const EVEN_WM2 = 2;
/** Air about the panels, °C. */
export const AIR_C = 3;
export const DOME_LIGHT_SLOTS = 4;

/**
 * Room for the light of so many steps in so many lanes, all dark.
 * @param spare whose memory is taken where it fits
 */
export function makeDomeLight(
  transposition: PreparedDome["transposition"],
  steps: number,
  lanes: number,
  spare?: DomeLight,
): DomeLight {
  const cells = lanes * steps;
  return {
    rows: zeros(cells * DOME_LIGHT_SLOTS, spare?.rows),
    horizonWm2: zeros(transposition === "perez" ? cells : 0, spare?.horizonWm2),
  };
}
