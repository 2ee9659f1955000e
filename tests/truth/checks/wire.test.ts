import { expect, test } from "vitest";
import { ampacityA, largestFuseA } from "../../../engine/checks/ampacityA.ts";
import { designA, fuseFor } from "../../../engine/checks/fuseFor.ts";
import { cableDropV, smallestSize } from "../../../engine/checks/wireSizes.ts";
import { WIRE_GAUGES } from "../../../engine/scenario/cable.ts";
import { record } from "../record.ts";

const M_PER_FT = 0.3048;
/** Room air, where no wire is derated. */
const AIR_C = 25;

/** Area of each gauge in circular mils: the square of its diameter in thousandths of an inch (ASTM B258). */
const CIRCULAR_MILS: Readonly<Record<string, number>> = {
  "18": 1620,
  "16": 2580,
  "14": 4110,
  "12": 6530,
  "10": 10380,
  "8": 16510,
  "6": 26240,
  "4": 41740,
  "2": 66360,
  "1/0": 105600,
  "2/0": 133100,
  "4/0": 211600,
};

test("drop by the marine formula", () => {
  // ABYC E-11: E = 10.75 · I · L / CM, L out and back in feet. Its 10.75 is copper at about 30 °C.
  let worst = 0;
  for (const [awg, circularMils] of Object.entries(CIRCULAR_MILS)) {
    const published = (10.75 * 20 * 40) / circularMils;
    const cable = { awg: awg as "8", oneWayM: 20 * M_PER_FT, tempC: 30 };
    worst = Math.max(worst, Math.abs(cableDropV(cable, 20) / published - 1));
  }
  record({
    what: "drop in a run of cable, twelve gauges",
    source: "ABYC E-11, CM = 10.75 I L / E",
    tolerance: 0.043,
    why: "the formula has one round resistivity for solid and stranded; 18 AWG of the code's table is 4 hundredths off it",
    worst,
    unit: "of the drop",
    n: Object.keys(CIRCULAR_MILS).length,
  });
  expect(worst).toBeLessThan(0.043);
});

test("smallest gauge for a target drop, as the marine formula finds it", () => {
  // 20 A, 20 ft out and back, 12 V: 3 % asks for 11,944 circular mils, 8 AWG; 10 % for 3,583, 14 AWG. The others by the same formula.
  const rows = [
    { amps: 20, loopFt: 20, share: 0.03, awg: "8" },
    { amps: 20, loopFt: 20, share: 0.1, awg: "14" },
    { amps: 10, loopFt: 20, share: 0.03, awg: "12" },
    { amps: 25, loopFt: 30, share: 0.03, awg: "6" },
    { amps: 50, loopFt: 20, share: 0.03, awg: "4" },
    { amps: 5, loopFt: 10, share: 0.03, awg: "18" },
  ] as const;
  for (const { amps, loopFt, share, awg } of rows) {
    const needed = (10.75 * amps * loopFt) / (12 * share);
    const byFormula = Object.entries(CIRCULAR_MILS)
      .sort((a, b) => a[1] - b[1])
      .find(([, circularMils]) => circularMils >= needed)![0];
    expect(byFormula).toBe(awg);
    const cable = { awg: "18" as const, oneWayM: (loopFt / 2) * M_PER_FT, tempC: 30 };
    expect(
      smallestSize(cable, { dropA: amps, mostDropV: share * 12, carriesA: 0, airC: AIR_C }),
      `${amps} A, ${loopFt} ft, ${share}`,
    ).toEqual({ awg });
  }
  // What the wire carries binds where the drop does not: 40 A over a foot is 8 AWG by ampacity.
  const short = { awg: "18" as const, oneWayM: 0.3, tempC: 30 };
  expect(smallestSize(short, { dropA: 40, mostDropV: 1, carriesA: 40, airC: AIR_C })).toEqual({ awg: "8" });
  expect(
    smallestSize({ mm2: 1, oneWayM: 0.3, tempC: 30 }, { dropA: 40, mostDropV: 1, carriesA: 40, airC: AIR_C }),
  ).toEqual({ mm2: 6 });
  expect(
    smallestSize({ awg: "18", oneWayM: 200, tempC: 30 }, { dropA: 100, mostDropV: 0.1, carriesA: 100, airC: AIR_C }),
  ).toBeNull();
});

test("ampacity is the code's table", () => {
  // NEC table 310.16 (2023), copper, 75 °C column, as printed by wiresizes.com; BS 7671 table 4D1A, two cables, d.c., method B (IEC's B1).
  const awgA = { "14": 20, "12": 25, "10": 35, "8": 50, "6": 65, "4": 85, "3": 100, "2": 115 };
  const largerA = { "1": 130, "1/0": 150, "2/0": 175, "3/0": 200, "4/0": 230 };
  for (const [awg, amps] of Object.entries({ ...awgA, ...largerA })) expect(ampacityA({ awg }, AIR_C), awg).toBe(amps);
  const mm2A = [
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
  ] as const;
  for (const [mm2, amps] of mm2A) expect(ampacityA({ mm2 }, AIR_C), String(mm2)).toBe(amps);
  expect(ampacityA({ mm2: 9.9 }, AIR_C)).toBe(41); // between two sections the smaller counts
  expect(ampacityA({ mm2: 0.5 }, AIR_C)).toBeNull();
  expect(ampacityA({ awg: "8" }, -20)).toBe(50); // cold air is no bonus
  expect(ampacityA({ awg: "8" }, 75)).toBeNull();
});

test("ampacity in hot air by the tables of correction factors", () => {
  // NEC table 310.15(B)(1), 75 °C column, as adopted in the Residential Code of Colorado 2021, table E3705.2 (up.codes); IEC 60364-5-52 table
  // B.52.14, PVC (from memory).
  const nec = { 35: 0.94, 40: 0.88, 45: 0.82, 50: 0.75, 55: 0.67, 60: 0.58, 65: 0.47, 70: 0.33 };
  const iec = { 35: 0.94, 40: 0.87, 45: 0.79, 50: 0.71, 55: 0.61, 60: 0.5 };
  const off = (table: object, size: { awg?: string; mm2?: number }, cool: number) =>
    Object.entries(table).map(([airC, factor]) => Math.abs(ampacityA(size, Number(airC))! / cool - factor));
  const errors = [...off(nec, { awg: "8" }, 50), ...off(iec, { mm2: 10 }, 57)];
  const worst = Math.max(...errors);
  record({
    what: "how much less a wire carries in hot air",
    source: "NEC table 310.15(B)(1) (Colorado 2021, E3705.2); IEC 60364-5-52 table B.52.14 (from memory)",
    tolerance: 0.0051,
    why: "two decimals",
    worst,
    unit: "",
    n: errors.length,
  });
  expect(worst).toBeLessThan(0.0051);
});

test("fuses: small conductors have their own cap, sizes are those that are sold", () => {
  // NEC 240.4(D): 18 AWG 7 A, 16: 10, 14: 15, 12: 20, 10: 30 (as printed by tradehub.tools); from 8 AWG on the ampacity counts.
  const caps = { "18": 7, "16": 10, "14": 15, "12": 20, "10": 30, "8": 50 };
  for (const [awg, amps] of Object.entries(caps)) expect(largestFuseA({ awg }, AIR_C), awg).toBe(amps);
  // Radio of 20 A on 10 AWG: a 20 A fuse is at its rating on every peak, so 25 A; on 14 AWG (15 A) none. NEC 240.6(A) has no 22 A fuse, the next is 25.
  expect(fuseFor(20, 0, 30)).toBe(25);
  expect(fuseFor(19.9, 0, 30)).toBe(20);
  expect(fuseFor(20, 0, 15)).toBeNull();
  expect(fuseFor(22, 0, 30)).toBe(25);
  expect(fuseFor(22, 0, null)).toBe(25);
  // 16 A for hours ask for 20 A: a fuse may be as large as that.
  expect(fuseFor(10, 16, null)).toBe(20);
  expect(fuseFor(10, 16.1, null)).toBe(25);
  // NEC 215.3: a quarter more for what lasts: 40 A continuous asks for 50 A, below a 60 A peak it does not count.
  expect(designA(40, 40)).toBe(50);
  expect(designA(60, 40)).toBe(60);
});

test("thicker wire carries more", () => {
  const amps = WIRE_GAUGES.map((awg) => ampacityA({ awg }, AIR_C)!);
  for (let i = 1; i < amps.length; i++) expect(amps[i]!).toBeGreaterThan(amps[i - 1]!);
});
