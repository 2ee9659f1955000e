import { RAD_PER_DEG } from "../angle.ts";
import { toGrid } from "../grid.ts";
import { COS_INCIDENCE, GROUND_SHARE, SKY_SHARE } from "./slots.ts";

/** What the light on a plane depends on besides the sky, at one moment with the sun up. */
export interface PlaneMoment {
  readonly cosIncidence: number;
  readonly tiltDeg: number;
  readonly albedoShare: number;
  /** Share of the sky's light that gets past obstacles. They are taken to leave the light from the ground alone. */
  readonly skyViewShare: number;
}

/**
 * Writes what a plane takes of the dome's light: `sun × COS_INCIDENCE` is its beam, the rest
 * `(even + horizon × horizonPerSky) × SKY_SHARE + ghi × GROUND_SHARE`.
 * @param perStep,at where the moment's values begin
 * @see B. Liu & R. Jordan, Solar Energy 7 (1963) 53–74
 */
export function setPlane(moment: PlaneMoment, perStep: Float64Array, at: number): void {
  const cosTilt = Math.cos(moment.tiltDeg * RAD_PER_DEG);
  perStep[at + COS_INCIDENCE] = toGrid(Math.max(0, moment.cosIncidence));
  perStep[at + SKY_SHARE] = toGrid(((1 + cosTilt) / 2) * moment.skyViewShare);
  perStep[at + GROUND_SHARE] = toGrid((moment.albedoShare * (1 - cosTilt)) / 2);
}

/**
 * What a plane takes of the horizon's band over what it takes of even sky light: sin tilt ÷ ((1 + cos tilt) ÷ 2), which is 2 tan (tilt ÷ 2).
 * So obstacles and crowns take of the one what they take of the other.
 * @param tiltDeg 0…90
 */
export function horizonPerSky(tiltDeg: number): number {
  return toGrid(2 * Math.tan((tiltDeg / 2) * RAD_PER_DEG));
}
