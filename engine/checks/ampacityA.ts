import type { CopperSize } from "../array/copperOhmPerM.ts";

/** Amperes that copper with 75 °C insulation carries in 30 °C air, up to three conductors together; 18 and 16 AWG by 240.4(D). */
const AWG_A: Readonly<Record<string, number>> = {
  "18": 7,
  "16": 10,
  "14": 20,
  "12": 25,
  "10": 35,
  "8": 50,
  "6": 65,
  "4": 85,
  "3": 100,
  "2": 115,
  "1": 130,
  "1/0": 150,
  "2/0": 175,
  "3/0": 200,
  "4/0": 230,
};
/** Largest fuse for a small conductor, A (NEC 240.4(D), as printed by tradehub.tools; 14 to 10 AWG also by Encore Wire's size table). */
const SMALL_CONDUCTOR_A: Readonly<Record<string, number>> = { "18": 7, "16": 10, "14": 15, "12": 20, "10": 30 };
/** Copper with 70 °C insulation in 30 °C air, two loaded conductors in conduit (method B1): mm² and A. */
const MM2_A: readonly (readonly [mm2: number, amps: number])[] = [
  [1, 13.5],
  [1.5, 17.5],
  [2.5, 24],
  [4, 32],
  [6, 41],
  [10, 57],
  [16, 76],
  [25, 101],
  [35, 125],
  [50, 151],
  [70, 192],
  [95, 232],
  [120, 269],
];
const TABLE_AIR_C = 30;

/**
 * What a conductor carries for ever, A: the table's, less in hot air by √((T − air)/(T − 30 °C)), never more in cool air. A
 * section between two of the table counts as the smaller.
 * @param airC warmest air about it
 * @returns null for a wire thinner than the tables know, or with no room left in the heat
 * @see NFPA 70 (NEC) table 310.16, copper, 75 °C column, as printed by ask-the-electrician.com and wiresizes.com (2023 edition); in hot air table
 *   310.15(B)(1) as adopted in the Residential Code of Colorado 2021, table E3705.2 (up.codes), which the root law meets to two decimals
 * @see BS 7671 table 4D1A, two cables, d.c., reference method B, as printed by a cable maker and by TiSoft: the British print of IEC 60364-5-52
 *   table B.52.2, method B1. The IEC's own text could not be found in public; a compressor maker's tables after it (methods B2 and C, 30 to
 *   55 °C) follow the root law within a hundredth or two
 */
export function ampacityA(size: CopperSize, airC: number): number | null {
  const isAwg = size.awg !== undefined;
  const table = isAwg ? AWG_A[size.awg!] : MM2_A.findLast(([mm2]) => mm2 <= size.mm2! + 1e-9)?.[1];
  if (table === undefined) return null;
  const insulationC = isAwg ? 75 : 70;
  const roomShare = (insulationC - Math.max(TABLE_AIR_C, airC)) / (insulationC - TABLE_AIR_C);
  return roomShare > 0 ? table * Math.sqrt(roomShare) : null;
}

/** The largest fuse that a conductor may stand behind, A: its ampacity, and less for small conductors. */
export function largestFuseA(size: CopperSize, airC: number): number | null {
  const amps = ampacityA(size, airC);
  const cap = size.awg === undefined ? undefined : SMALL_CONDUCTOR_A[size.awg];
  return amps === null ? null : Math.min(amps, cap ?? amps);
}
