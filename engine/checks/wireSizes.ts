import { type CopperSize, copperOhmPerM } from "../array/copperOhmPerM.ts";
import { type Cable, WIRE_GAUGES } from "../scenario/cable.ts";
import { ampacityA, largestFuseA } from "./ampacityA.ts";

/** Sections that are sold, mm² (IEC 60228). */
const SECTIONS_MM2: readonly number[] = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120];

/** Resistance of a run, out and back, Ω. */
export function runOhm(cable: Cable, size: CopperSize = cable): number {
  return 2 * cable.oneWayM * copperOhmPerM(size, cable.tempC);
}

/** Volts that a current loses in a run, out and back: E = I · 2 L · r(T). */
export function cableDropV(cable: Cable, currentA: number, size: CopperSize = cable): number {
  return currentA * runOhm(cable, size);
}

/** What is asked of a wire. */
export interface WireAsked {
  readonly dropA: number;
  /** Most volts that may be lost at that current. */
  readonly mostDropV: number;
  /** What the wire must carry, A. */
  readonly carriesA: number;
  /** The fuse that it stands behind; 0 for none. */
  readonly fuseA?: number;
  /** Warmest air about it, °C. */
  readonly airC: number;
}

/** Whether a size over a run's length does all that is asked of it. */
export function isEnough(cable: Cable, { dropA, mostDropV, carriesA, fuseA = 0, airC }: WireAsked, size: CopperSize) {
  return (
    cableDropV(cable, dropA, size) <= mostDropV * (1 + ROUNDING) &&
    (ampacityA(size, airC) ?? 0) >= carriesA * (1 - ROUNDING) &&
    (largestFuseA(size, airC) ?? 0) >= fuseA
  );
}

/**
 * The thinnest wire that is sold which does all that is asked. Given in gauges for a run given in gauges, else in mm².
 * @returns null if none of the sizes does
 */
export function smallestSize(cable: Cable, asked: WireAsked): CopperSize | null {
  return sizesLike(cable).find((size) => isEnough(cable, asked, size)) ?? null;
}

/** What equals a limit except for the last bits is within it. */
const ROUNDING = 1e-9;

function sizesLike({ awg }: CopperSize): readonly CopperSize[] {
  return awg !== undefined ? WIRE_GAUGES.map((gauge) => ({ awg: gauge })) : SECTIONS_MM2.map((mm2) => ({ mm2 }));
}

/** "8 AWG" or "10 mm²". */
export function sizeInWords(size: CopperSize): string {
  return size.awg !== undefined ? `${size.awg} AWG` : `${size.mm2} mm²`;
}
