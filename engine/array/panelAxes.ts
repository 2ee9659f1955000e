import { RAD_PER_DEG } from "../angle.ts";

/** A panel's three directions, each a unit vector east, north, up. */
export interface PanelAxes {
  /** Out of the glass. */
  readonly normal: readonly [number, number, number];
  /** Up the slope, along the modules' length; on a level panel against its bearing. */
  readonly lengthwise: readonly [number, number, number];
  /** Level, along the modules' width and the row. */
  readonly widthwise: readonly [number, number, number];
}

/**
 * @param tiltDeg from level
 * @param azimuthDeg where the panel faces, clockwise from true north; for a level panel the bearing of its length
 */
export function panelAxes(tiltDeg: number, azimuthDeg: number): PanelAxes {
  const sinTilt = Math.sin(tiltDeg * RAD_PER_DEG);
  const cosTilt = Math.cos(tiltDeg * RAD_PER_DEG);
  const east = Math.sin(azimuthDeg * RAD_PER_DEG);
  const north = Math.cos(azimuthDeg * RAD_PER_DEG);
  return {
    normal: [sinTilt * east, sinTilt * north, cosTilt],
    lengthwise: [-cosTilt * east, -cosTilt * north, sinTilt],
    widthwise: [north, -east, 0],
  };
}
