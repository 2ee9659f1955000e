import { expect, test } from "vitest";
import { copperOhmPerM } from "../../../engine/array/copperOhmPerM.ts";
import { WIRE_GAUGES } from "../../../engine/scenario/cable.ts";
import { record } from "../record.ts";

const M_PER_FT = 0.3048;

test("voltage drops of the code table", () => {
  // NEC chapter 9, table 8, stranded uncoated; 50 ft one way at 10 A.
  const rows = [
    { awg: "12", tempC: 75, dropV: 1.98 },
    { awg: "12", tempC: 25, dropV: 1.66 },
    { awg: "10", tempC: 75, dropV: 1.24 },
  ];
  let worst = 0;
  for (const { awg, tempC, dropV } of rows) {
    worst = Math.max(worst, Math.abs(2 * 50 * M_PER_FT * copperOhmPerM({ awg }, tempC) * 10 - dropV));
  }
  const source = "NEC chapter 9, table 8, worked example";
  record({ what: "drop in 50 ft of cable", source, tolerance: 0.005, why: "two decimals", worst, unit: "V", n: 3 });
  expect(worst).toBeLessThan(0.005);
});

test("loss on the long run from sun to trailer", () => {
  // 5.5 A at 18 V over 50 ft one way, 75 °C.
  const rows = [
    { awg: "12", percent: 6.0 },
    { awg: "10", percent: 3.8 },
    { awg: "8", percent: 2.4 },
  ];
  let worst = 0;
  for (const { awg, percent } of rows) {
    const ohm = 2 * 50 * M_PER_FT * copperOhmPerM({ awg }, 75);
    worst = Math.max(worst, Math.abs((100 * 5.5 * ohm) / 18 - percent));
  }
  const source = "NEC chapter 9, table 8, worked example";
  record({ what: "loss in 50 ft at 18 V", source, tolerance: 0.06, why: "one decimal", worst, unit: "%", n: 3 });
  expect(worst).toBeLessThan(0.06);
});

test("every gauge has the code's resistance, and round wire's with stranding", () => {
  // NEC chapter 9, table 8, stranded uncoated copper at 75 °C, ohm per 1000 ft, as printed by sfasoft.com, "Conductor Properties".
  const printed = {
    "18": 7.95,
    "16": 4.99,
    "14": 3.14,
    "12": 1.98,
    "10": 1.24,
    "8": 0.778,
    "6": 0.491,
    "4": 0.308,
    "3": 0.245,
    "2": 0.194,
    "1": 0.154,
    "1/0": 0.122,
    "2/0": 0.0967,
    "3/0": 0.0766,
    "4/0": 0.0608,
  };
  expect(Object.keys(printed).length).toBe(WIRE_GAUGES.length);
  let worst = 0;
  for (const awg of WIRE_GAUGES) {
    expect(1000 * M_PER_FT * copperOhmPerM({ awg }, 75), awg).toBeCloseTo(printed[awg], 9);
    // ASTM B258: each gauge is 92^(1/39) thinner than the one before, 4/0 is 0.46 inch. IEC 60028: 1/58 Ω mm²/m at 20 °C, 0.393 % a kelvin.
    const gauge = awg.endsWith("/0") ? 1 - Number(awg[0]) : Number(awg);
    const mm = 25.4 * 0.005 * 92 ** ((36 - gauge) / 39);
    const solid = ((1 / 58) * (1 + 0.00393 * 55)) / ((Math.PI / 4) * mm * mm);
    worst = Math.max(worst, Math.abs(copperOhmPerM({ awg }, 75) / (1.02 * solid) - 1));
  }
  record({
    what: "resistance of every gauge against round wire, stranded",
    source: "ASTM B258 and IEC 60028:1925, 2 % for stranding (common practice)",
    tolerance: 0.01,
    why: "the code's table has three digits, and stranding from 2 to 3 %",
    worst,
    unit: "",
    n: WIRE_GAUGES.length,
  });
  expect(worst).toBeLessThan(0.01);
});

test("a gauge has the resistance of bare copper of its section", () => {
  // ASTM B258 sections of round wire: what the gauge means in mm².
  const sections = {
    "18": 0.823,
    "14": 2.08,
    "12": 3.31,
    "10": 5.26,
    "8": 8.37,
    "6": 13.3,
    "4": 21.2,
    "2": 33.6,
    "4/0": 107,
  };
  let worst = 0;
  for (const [awg, mm2] of Object.entries(sections)) {
    for (const tempC of [25, 75]) {
      worst = Math.max(
        worst,
        Math.abs(copperOhmPerM({ awg }, tempC) / ((1 / 58 / mm2) * (1 + 0.00393 * (tempC - 20))) - 1),
      );
    }
  }
  const why = "stranding adds two to three hundredths, which bare resistivity leaves out";
  const source = "IEC 60028:1925 and ASTM B258";
  record({ what: "gauge against mm²", source, tolerance: 0.035, why, worst, unit: "", n: 18 });
  expect(worst).toBeLessThan(0.035);
});

test("flexible metric wire has its standard's resistance and not that of solid copper", () => {
  // IEC 60228:2004, table 3, class 5, plain wires at 20 °C, mΩ/m (from memory); copper gains 0.393 % a kelvin: 2.5 mm² at 25 °C has 8.14.
  const standard = {
    0.75: 26,
    1.5: 13.3,
    2.5: 7.98,
    4: 4.95,
    6: 3.3,
    10: 1.91,
    16: 1.21,
    25: 0.78,
    50: 0.386,
    95: 0.206,
  };
  for (const [mm2, milliohm] of Object.entries(standard)) {
    expect(copperOhmPerM({ mm2: Number(mm2) }, 20), mm2).toBeCloseTo(milliohm / 1000, 9);
  }
  expect(1000 * copperOhmPerM({ mm2: 2.5 }, 25)).toBeCloseTo(8.14, 2);
  // Between sections and beyond them: more copper, less resistance, never below that of the solid metal (1/58 Ω mm²/m at 20 °C, IEC 60028).
  let before = Number.POSITIVE_INFINITY;
  for (let mm2 = 0.25; mm2 <= 300; mm2 *= 1.01) {
    const ohm = copperOhmPerM({ mm2 }, 20);
    expect(ohm, String(mm2)).toBeGreaterThan(1 / 58 / mm2);
    expect(ohm, String(mm2)).toBeLessThan(before * 1.03);
    before = ohm;
  }
});

test("every gauge that a scenario may name is known, and thinner wire resists more", () => {
  const ohms = WIRE_GAUGES.map((awg) => copperOhmPerM({ awg }, 25));
  for (let i = 1; i < ohms.length; i++) expect(ohms[i]!).toBeLessThan(ohms[i - 1]!);
});

test("an unknown gauge is refused by name", () => {
  expect(() => copperOhmPerM({ awg: "7" }, 25)).toThrow("awg must be one of 18, 16, 14");
  expect(() => copperOhmPerM({}, 25)).toThrow("or give mm2 instead");
  expect(() => copperOhmPerM({ mm2: 0 }, 25)).toThrow("mm2 must be more than 0, got 0");
});
