import { type CopperSize, copperOhmPerM } from "../array/copperOhmPerM.ts";
import type { Cable } from "../scenario/cable.ts";
import { WIRE_GAUGES } from "../scenario/cable.ts";
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

/**
 * The thinnest wire that is sold with which a run drops no more than it may and carries what it must. Given in gauges for a
 * run given in gauges, else in mm².
 * @param mostDropV most volts that may be lost at `currentA`
 * @param carriesA what the wire must carry
 * @param airC warmest air about it
 * @returns null if none of the sizes does
 */
export function smallestSize(
  cable: Cable,
  currentA: number,
  mostDropV: number,
  carriesA: number,
  airC: number,
): CopperSize | null {
  const sizes = sizesLike(cable);
  const isEnough = (size: CopperSize) =>
    cableDropV(cable, currentA, size) <= mostDropV && (ampacityA(size, airC) ?? 0) >= carriesA;
  return sizes.find(isEnough) ?? null;
}

/** The thinnest wire that is sold, in the measure of `cable`, that may stand behind a fuse; null if none may. */
export function smallestBehind(fuseA: number, cable: CopperSize, airC: number): CopperSize | null {
  return sizesLike(cable).find((size) => (largestFuseA(size, airC) ?? 0) >= fuseA) ?? null;
}

function sizesLike({ awg }: CopperSize): readonly CopperSize[] {
  return awg !== undefined ? WIRE_GAUGES.map((gauge) => ({ awg: gauge })) : SECTIONS_MM2.map((mm2) => ({ mm2 }));
}

/** "8 AWG" or "10 mm²". */
export function sizeInWords(size: CopperSize): string {
  return size.awg !== undefined ? `${size.awg} AWG` : `${size.mm2} mm²`;
}
