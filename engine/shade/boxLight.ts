import { RAD_PER_DEG } from "../angle.ts";
import type { Box } from "../scenario/obstacle.ts";

/** A box with the sine and cosine of its heading taken once. */
export interface PreparedBox {
  readonly eastM: number;
  readonly northM: number;
  readonly baseM: number;
  readonly topM: number;
  /** Radius of the upright cylinder that holds the whole box. */
  readonly reachM: number;
  readonly halfLengthM: number;
  readonly halfWidthM: number;
  readonly sinHeading: number;
  readonly cosHeading: number;
}

/** @throws RangeError if the box has no height, length or width */
export function prepareBox(box: Box): PreparedBox {
  if (!(box.heightM > box.baseM)) {
    throw new RangeError(`heightM of box ${box.id} must be above its baseM (${box.baseM} m), got ${box.heightM}`);
  }
  for (const name of ["lengthM", "widthM"] as const) {
    if (!(box[name] > 0)) throw new RangeError(`${name} of box ${box.id} must be more than 0 m, got ${box[name]}`);
  }
  return {
    eastM: box.eastM,
    northM: box.northM,
    baseM: box.baseM,
    topM: box.heightM,
    reachM: Math.hypot(box.lengthM, box.widthM) / 2,
    halfLengthM: box.lengthM / 2,
    halfWidthM: box.widthM / 2,
    sinHeading: Math.sin(box.headingDeg * RAD_PER_DEG),
    cosHeading: Math.cos(box.headingDeg * RAD_PER_DEG),
  };
}

/** Below this a ray counts as leaving the face it starts on, so that a panel lying on a roof is not shaded by it. */
const TOUCH_M = 1e-9;

/**
 * Share of a ray's light that a box lets through: 0 when the ray meets it, else 1.
 * @param eastM,northM,upM where the ray starts
 * @param dirEast,dirNorth,dirUp unit vector towards the sun, level or upwards
 * @see T. Kay & J. Kajiya, Ray Tracing Complex Scenes, SIGGRAPH 1986 (a box is where three slabs overlap)
 */
export function boxLight(
  box: PreparedBox,
  eastM: number,
  northM: number,
  upM: number,
  dirEast: number,
  dirNorth: number,
  dirUp: number,
): number {
  const east = eastM - box.eastM;
  const north = northM - box.northM;
  const along = east * box.sinHeading + north * box.cosHeading;
  const across = east * box.cosHeading - north * box.sinHeading;
  const dirAlong = dirEast * box.sinHeading + dirNorth * box.cosHeading;
  const dirAcross = dirEast * box.cosHeading - dirNorth * box.sinHeading;

  let enterM = 0;
  let leaveM = Number.POSITIVE_INFINITY;

  if (dirAlong !== 0) {
    const first = (-box.halfLengthM - along) / dirAlong;
    const second = (box.halfLengthM - along) / dirAlong;
    enterM = Math.max(enterM, Math.min(first, second));
    leaveM = Math.min(leaveM, Math.max(first, second));
  } else if (Math.abs(along) >= box.halfLengthM) return 1;

  if (dirAcross !== 0) {
    const first = (-box.halfWidthM - across) / dirAcross;
    const second = (box.halfWidthM - across) / dirAcross;
    enterM = Math.max(enterM, Math.min(first, second));
    leaveM = Math.min(leaveM, Math.max(first, second));
  } else if (Math.abs(across) >= box.halfWidthM) return 1;

  if (dirUp !== 0) {
    const first = (box.baseM - upM) / dirUp;
    const second = (box.topM - upM) / dirUp;
    enterM = Math.max(enterM, Math.min(first, second));
    leaveM = Math.min(leaveM, Math.max(first, second));
  } else if (upM <= box.baseM || upM >= box.topM) return 1;

  return leaveM > enterM + TOUCH_M ? 0 : 1;
}
