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
 * `even × SKY_SHARE + horizon × HORIZON_SHARE + ghi × GROUND_SHARE`.
 * @param perStep,at where the moment's values begin
 * @see B. Liu & R. Jordan, Solar Energy 7 (1963) 53–74
 */
export function setPlane(moment: PlaneMoment, perStep: Float64Array, at: number): void {
  const cosTilt = Math.cos(moment.tiltDeg * RAD_PER_DEG);
  perStep[at + COS_INCIDENCE] = toGrid(Math.max(0, moment.cosIncidence));
  perStep[at + SKY_SHARE] = toGrid(((1 + cosTilt) / 2) * moment.skyViewShare);
  perStep[at + GROUND_SHARE] = toGrid((moment.albedoShare * (1 - cosTilt)) / 2);
}

/** What a plane takes of the horizon's band: the sine of its tilt, obstacles taken off. */
export function horizonShare({ tiltDeg, skyViewShare }: PlaneMoment): number {
  return toGrid(Math.sin(tiltDeg * RAD_PER_DEG) * skyViewShare);
}
