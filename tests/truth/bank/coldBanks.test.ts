import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { chargingOhmAt } from "../../../engine/bank/bankOhm.ts";
import { chargingV, openCircuitV, peukertFactorAt } from "../../../engine/bank/bankVoltage.ts";
import { CHEMISTRY_DATA } from "../../../engine/bank/chemistryData.ts";
import { coldOhm } from "../../../engine/bank/coldOhm.ts";
import { prepareBank } from "../../../engine/bank/prepareBank.ts";
import { Bank, type Chemistry } from "../../../engine/scenario/bank.ts";
import { record } from "../record.ts";
import { plainInput, traceInput } from "../run/plainScenario.ts";

type Row = [tempC: number, value: number];
const cold = JSON.parse(readFileSync(new URL("../data/cold-banks.json", import.meta.url), "utf8")) as {
  lfpCell: { source: string; halfC: { currentA: number; cellV: Row[] } };
  lfpThesisCell: {
    source: string;
    ohm: { rows: [share: number, charging: number, at10: number, at25: number, at40: number][] };
  };
  lfpCapacity: { source: string; ranges: [tempC: number, low: number, high: number][] };
  agmSheet: { source: string; ahByHours: [hours: number, ah: number][]; shareByC: Row[] };
  leadSizing: { source: string; shareByC: Row[] };
};

function bank(chemistry: Chemistry, tempC: number, parts: Record<string, unknown> = {}) {
  const written = Bank.parse({ chemistry, blockAh: 100, startShare: 1, reserveShare: 0, ...parts });
  return prepareBank(written, Float64Array.of(tempC), 1 / 6);
}

test("an LFP cell's volts fall in the cold as one measured cell's do", () => {
  const { source, halfC } = cold.lfpCell;
  const rule = CHEMISTRY_DATA.lfp.internalCold;
  const measuredV = (tempC: number) => halfC.cellV.find(([at]) => at === tempC)![1];
  const fallV = (tempC: number) => measuredV(25) - measuredV(tempC);
  // Its resistance at 25 °C is what the fall to −5 °C says; the colder ones are then foretold.
  const warmOhm = fallV(-5) / halfC.currentA / (coldOhm(rule, -5) - 1);
  expect(warmOhm).toBeGreaterThan(0.01);
  expect(warmOhm).toBeLessThan(0.03);
  const errors = [-15, -25].map((tempC) =>
    Math.abs(halfC.currentA * warmOhm * (coldOhm(rule, tempC) - 1) - fallV(tempC)),
  );
  record({
    what: "LFP cell drawn at C/2 at −15 and −25 °C, fall of its volts from 25 °C",
    source,
    tolerance: 0.04,
    why: "a middle between this cell and milder ones of other makes; its own activation energy would give 0.02",
    worst: Math.max(...errors),
    unit: "V a cell",
    n: errors.length,
  });
  expect(Math.max(...errors)).toBeLessThan(0.04);
});

test("an LFP cell's resistance depends on charge and warmth as in print", () => {
  const { source, ohm } = cold.lfpThesisCell;
  const lfp = CHEMISTRY_DATA.lfp;
  const half = ohm.rows.find(([share]) => share === 0.5)!;
  const byCharge = ohm.rows.flatMap(([share, charging, , at25]) => [
    Math.abs(lfp.chargingByCharge(share) - charging / half[1]),
    Math.abs(lfp.internalByCharge(share) - at25 / half[3]),
  ]);
  record({
    what: "LFP resistance by charge over that at half charge, drawing and charging",
    source,
    tolerance: 0.08,
    why: "straight lines through a measured curve that goes up and down by a tenth",
    worst: Math.max(...byCharge),
    unit: "of that at half charge",
    n: byCharge.length,
  });
  expect(Math.max(...byCharge)).toBeLessThan(0.08);
  // The pack as a whole: electronics do not know the cold. The cell's own rise is milder than the one of the cell above.
  const packAt = (tempC: number) => {
    const made = bank("lfp", tempC);
    return made.fixedOhm + made.internalCellOhm[1024]! * made.internalCold[0]!;
  };
  const ratio = packAt(10) / packAt(25);
  const measured = half[2] / half[3];
  record({
    what: "LFP pack's resistance at 10 °C over that at 25 °C, against a cell's",
    source,
    tolerance: 0.3,
    why: "four fifths of a pack's resistance are electronics and joints by its label, and stay",
    worst: Math.abs(ratio - measured),
    unit: "",
    n: 1,
  });
  expect(ratio).toBeGreaterThan(1.1);
  expect(ratio).toBeLessThan(measured);
});

/** Share of the ampere-hours that a full default bank gives before its disconnect opens, drawn at a constant power. */
function givenShare(chemistry: Chemistry, tempC: number, perAh: number, disconnectV: number): number {
  const { record: run, prepared } = traceInput(
    plainInput({
      time: { start: "2026-06-12T00:00", end: "2026-06-14T00:00", stepMinutes: 5 },
      bank: {
        chemistry,
        blockAh: 100,
        startShare: 1,
        reserveShare: 0,
        temperature: tempC,
        disconnectV,
        reconnectV: 20,
      },
      gear: [{ id: "load", name: "load", working: { drawW: 1280 * perAh }, use: { when: "always" } }],
    }),
  );
  return 1 - run.storedAh.at(-1)! / prepared.bank.fullAh;
}

test("an LFP pack gives in the cold what sheets say, and below −20 °C nothing", () => {
  const { source, ranges } = cold.lfpCapacity;
  const found = ranges.map(([tempC]) => givenShare("lfp", Math.max(-19.9, tempC), 0.33, 8));
  const errors = ranges.map(([, low, high], k) => Math.abs(found[k]! - (low + high) / 2));
  record({
    what: "LFP pack drawn at C/3 to 8 V at 25, 0 and −20 °C: capacity given",
    source,
    tolerance: 0.1,
    why: "the ranges in print are 0.1 and 0.26 wide",
    worst: Math.max(...errors),
    unit: "of the capacity",
    n: errors.length,
  });
  ranges.forEach(([, low, high], k) => {
    expect(found[k]!).toBeGreaterThan(low - 0.01);
    expect(found[k]!).toBeLessThan(high + 0.01);
  });
  for (const tempC of [-20, -25, -39]) expect(givenShare("lfp", tempC, 0.33, 8), `${tempC} °C`).toBe(0);
});

test("lead gives in the cold and in a hurry what sheets say", () => {
  const { source, ahByHours, shareByC } = cold.agmSheet;
  const shareAt = (chemistry: Chemistry, tempC: number) => 1 - bank(chemistry, tempC).floorAh[0]! / 100;
  const agm = shareByC.map(([tempC, share]) => Math.abs(shareAt("agm", tempC) - share));
  record({
    what: "AGM at 30, 25, 10 and −10 °C: capacity within reach",
    source,
    tolerance: 0.06,
    why: "one sheet against the middle of several; nothing is added above 25 °C",
    worst: Math.max(...agm),
    unit: "of the capacity",
    n: agm.length,
  });
  expect(Math.max(...agm)).toBeLessThan(0.06);
  const block = bank("agm", 25, { blockAh: 40 });
  const rates = ahByHours.map(([hours, ah]) => {
    const amps = ah / hours;
    return Math.abs(40 / peukertFactorAt(block, amps) - ah) / 40;
  });
  record({
    what: "AGM drawn in 20, 10, 5 and 1 h: ampere-hours given",
    source,
    tolerance: 0.19,
    why: "the sheet's hour rate asks for an exponent of 1.18; 1.1 is the middle of the trade's range and within 0.04 down to 5 h",
    worst: Math.max(...rates),
    unit: "of the capacity",
    n: rates.length,
  });
  expect(Math.max(...rates)).toBeLessThan(0.19);
  expect(Math.max(...rates.slice(0, 3))).toBeLessThan(0.04);
  const flooded = cold.leadSizing.shareByC.map(([tempC, share]) => Math.abs(shareAt("flooded", tempC) - share));
  record({
    what: "flooded at 15.6, 4.4 and −6.7 °C: capacity within reach",
    source: cold.leadSizing.source,
    tolerance: 0.12,
    why: "those multipliers size stationary banks for the whole of their life and leave room; sheets of blocks say more",
    worst: Math.max(...flooded),
    unit: "of the capacity",
    n: flooded.length,
  });
  expect(Math.max(...flooded)).toBeLessThan(0.12);
});

/** What warmth does to the volts that charging adds (Copetti et al. 1993, from memory). */
const warmth = (tempC: number) => 1 - 0.025 * (tempC - 25);

/**
 * Volts of a 12 V flooded bank on charge: Schiffer et al., J. Power Sources 168 (2007) 66–78, Shepherd's equation with their parameters (2.1 V
 * full at rest from memory); it knows no temperature, so that of the other law.
 */
const schifferV = (share: number, perAh: number, tempC: number) =>
  6 * (2.1 - 0.076 * (1 - share) + 0.42 * perAh * (1 + (0.888 * share) / (1.001 - share)) * warmth(tempC));

/** The same, Copetti, Lorenzo & Chenlo, Progress in Photovoltaics 1 (1993) 283–292, 100 Ah (from memory). */
const copettiV = (share: number, perAh: number, tempC: number) =>
  6 *
  (2 + 0.16 * share + perAh * (6 / (1 + (100 * perAh) ** 0.86) + 0.48 / (1 - share) ** 1.2 + 0.036) * warmth(tempC));

/** And drawn, by Copetti et al. */
const copettiDrawnV = (share: number, perAh: number, tempC: number) =>
  6 *
  (2.085 -
    0.12 * (1 - share) -
    perAh * (4 / (1 + (100 * perAh) ** 1.3) + 0.27 / share ** 1.5 + 0.02) * (1 - 0.007 * (tempC - 25)));

/** Volts of our default bank of 100 Ah, held at its absorption volts. */
function chargedV(chemistry: Chemistry, share: number, perAh: number, tempC: number): number {
  const made = bank(chemistry, tempC);
  const addedV = chargingV(
    100 * perAh,
    chargingOhmAt(made, 100 * share, 0),
    made.polarisationV * made.chargingCold[0]!,
    made.polarisationA,
  );
  return Math.min(made.absorptionV, openCircuitV(made, 100 * share) + addedV);
}

const CHARGES = [0.5, 0.6, 0.7, 0.8, 0.9];
const RATES = [0.05, 0.1];

test("lead on charge shows volts between two published laws, and reaches its absorption volts at solar currents", () => {
  const errors = CHARGES.flatMap((share) =>
    RATES.flatMap((perAh) =>
      [25, 10, 0].map((tempC) => {
        const middleV =
          (Math.min(14.6, schifferV(share, perAh, tempC)) + Math.min(14.6, copettiV(share, perAh, tempC))) / 2;
        return Math.abs(chargedV("flooded", share, perAh, tempC) - middleV);
      }),
    ),
  );
  record({
    what: "flooded bank charged at C/20 and C/10 at 25, 10 and 0 °C, from half charge to 0.9: volts",
    source:
      "middle of Schiffer et al., J. Power Sources 168 (2007) 66–78, and Copetti et al., Progress in Photovoltaics 1 (1993) 283–292 (from memory), held at 14.6 V",
    tolerance: 0.36,
    why: "the two laws lie up to 1 V apart; at 25 °C 0.16 V",
    worst: Math.max(...errors),
    unit: "V",
    n: errors.length,
  });
  expect(Math.max(...errors)).toBeLessThan(0.36);
  // Common practice, no source: C/10 into AGM or flooded ends in absorption at 0.8 to 0.9; a tenth of that never does.
  for (const chemistry of ["agm", "flooded"] as const) {
    expect(chargedV(chemistry, 0.92, 0.1, 25)).toBe(14.6);
    expect(chargedV(chemistry, 0.7, 0.1, 25)).toBeLessThan(14.2);
    expect(chargedV(chemistry, 0.87, 0.1, 25)).toBeGreaterThan(13.9);
    expect(chargedV(chemistry, 0.87, 0.01, 25)).toBeLessThan(13.2);
  }
});

test("lead takes less charge in the cold, and less the colder it is", () => {
  for (const chemistry of ["agm", "flooded"] as const) {
    const taken = [25, 10, 0, -10].map((tempC) => {
      const made = bank(chemistry, tempC);
      return Math.min(made.maxChargeA[0]!, made.acceptA[1700]! * made.acceptShare[0]!);
    });
    for (let k = 1; k < taken.length; k++) expect(taken[k]!, chemistry).toBeLessThan(taken[k - 1]!);
    // 2.5 % a kelvin: at 0 °C no more than 1 ÷ 1.625, and not nothing.
    expect(taken[2]! / taken[0]!).toBeLessThan(0.62);
    expect(taken[2]! / taken[0]!).toBeGreaterThan(0.3);
  }
});

test("flooded lead drawn at three temperatures shows the volts of a published law", () => {
  const errors = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9].flatMap((share) =>
    RATES.flatMap((perAh) =>
      [25, 0, -15].map((tempC) => {
        const made = bank("flooded", tempC);
        const ohm = made.fixedOhm + made.internalCellOhm[Math.floor(2048 * share)]! * made.internalCold[0]!;
        return Math.abs(openCircuitV(made, 100 * share) - 100 * perAh * ohm - copettiDrawnV(share, perAh, tempC));
      }),
    ),
  );
  record({
    what: "flooded bank drawn at C/20 and C/10 at 25, 0 and −15 °C, charge 0.4 to 0.9: volts",
    source: "Copetti et al., Progress in Photovoltaics 1 (1993) 283–292 (from memory)",
    tolerance: 0.42,
    why: "its resistance doubles from half charge to 0.3, where our rest volts fall instead; above 0.6 within 0.3 V",
    worst: Math.max(...errors),
    unit: "V",
    n: errors.length,
  });
  expect(Math.max(...errors)).toBeLessThan(0.42);
});

test("limits that somebody typed are obeyed, above and below those of the chemistry", () => {
  // A pack whose maker lets it charge down to −20 °C takes what an LFP pack takes at its coldest, C/10, and no more than was typed.
  expect(bank("lfp", -10, { coldChargeLockC: -20 }).maxChargeA[0]).toBe(10);
  expect(bank("lfp", -10, { coldChargeLockC: -20, maxChargeA: 4 }).maxChargeA[0]).toBe(4);
  expect(bank("lfp", -20, { coldChargeLockC: -20 }).maxChargeA[0]).toBe(0);
  expect(bank("lfp", 4, { coldChargeLockC: 5 }).maxChargeA[0]).toBe(0);
  expect(bank("lfp", -10, { coldChargeLockC: null }).maxChargeA[0]).toBe(10);
  // Below freezing half of the rated current comes out where nobody says otherwise, nothing from −20 °C on down.
  expect(bank("lfp", 5).maxDischargeAt[0]).toBe(100);
  expect(bank("lfp", -5).maxDischargeAt[0]).toBe(50);
  expect(bank("lfp", -5, { maxDischargeA: 80 }).maxDischargeAt[0]).toBe(80);
  expect(bank("lfp", -20).maxDischargeAt[0]).toBe(0);
  expect(bank("lfp", -39, { coldDischargeLockC: null }).maxDischargeAt[0]).toBe(50);
  expect(bank("lfp", -5, { coldDischargeLockC: 0 }).maxDischargeAt[0]).toBe(0);
  expect(bank("agm", -30).maxDischargeAt[0]).toBe(300);
  // Its reach at −40 °C is a third, not what it was at −20 °C.
  expect(1 - bank("lfp", -40, { coldDischargeLockC: null }).floorAh[0]! / 100).toBeCloseTo(0.33, 5);
});
