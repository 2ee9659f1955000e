import { toGrid } from "../grid.ts";
import type { Bank } from "../scenario/bank.ts";
import { acceptance, currentForVolts } from "./acceptance.ts";
import { boxWarmth } from "./boxWarmth.ts";
import { CHEMISTRY_DATA, type ChemistryData } from "./chemistryData.ts";
import { coldOhm } from "./coldOhm.ts";
import { onCurve, onStairs } from "./curve.ts";

/** Steps of the open-circuit table; fine enough that the steep foot of the LFP curve is met within a few millivolts. */
export const CURVE_STEPS = 2048;
/** Charges at which the cold's part in charging is looked at. */
const ACCEPT_LOOKS = 64;
/** Steps of the Peukert table for each multiple of the 20-hour current. */
const PEUKERT_STEPS_PER_UNIT = 32;
/** Largest multiple of the 20-hour current in the Peukert table (3.2 C); beyond it the factor stays. */
const PEUKERT_UNITS = 64;

/** A bank with everything filled in; A, V, Ah, Ω of the whole bank. */
export interface PreparedBank {
  /** Ampere-hours between empty and full, age included. */
  readonly fullAh: number;
  /** Places of the tables below in one ampere-hour, and in one ampere. */
  readonly curveStepsPerAh: number;
  readonly peukertStepsPerA: number;
  readonly startAh: number;
  readonly reserveAh: number;
  /** Whether the curve was typed in: then it may bend as no cell's does, and steps take their volts from `pathV.ts`. */
  readonly hasOwnCurve: boolean;
  /** Open-circuit volts at `CURVE_STEPS + 1` equal steps of charge. */
  readonly openCircuitV: Float64Array;
  /** Watt-hours stored at the same steps. */
  readonly storedWhAt: Float64Array;
  /** At half charge and 25 °C, as stated or by chemistry; what holds in a step is in the tables below. */
  readonly internalOhm: number;
  readonly chargingOhm: number;
  /** What charging adds to the volts besides at 25 °C, V, and the current from which on it adds all of it, A; it rises with `chargingCold`. */
  readonly polarisationV: number;
  readonly polarisationA: number;
  /** What a dead short meets, Ω: never more than the internal resistance. */
  readonly suddenOhm: number;
  /** Electronics and joints, Ω; what the cells add at each charge and 25 °C, drawing and charging; and one value per step: cold over 25 °C. */
  readonly fixedOhm: number;
  readonly internalCellOhm: Float64Array;
  readonly chargingCellOhm: Float64Array;
  readonly internalCold: Float64Array;
  readonly chargingCold: Float64Array;
  /** The most that a load meets at any charge in any step, Ω. */
  readonly mostInternalOhm: number;
  readonly coulombicShare: number;
  readonly absorptionV: number;
  /** Most charging current over one step at the steps of the table above and 25 °C, A; see `acceptance`. */
  readonly acceptA: Float64Array;
  /** One value per step: what the cold leaves of that. */
  readonly acceptShare: Float64Array;
  readonly maxDischargeA: number;
  readonly disconnectV: number;
  readonly reconnectV: number;
  /** Whether drawing fast costs charge (lead). */
  readonly hasPeukert: boolean;
  /** Ampere-hours lost per ampere-hour drawn, against multiples of the 20-hour current. */
  readonly peukertFactor: Float64Array;
  /** One value per step: what the cold leaves out of reach, Ah. */
  readonly floorAh: Float64Array;
  /** One value per step: most charging current at that temperature; 0 while locked by cold. */
  readonly maxChargeA: Float64Array;
  /** One value per step: most current that it gives at that temperature; 0 while the cold locks it. */
  readonly maxDischargeAt: Float64Array;
  /** One value per step: temperature of the bank, °C. */
  readonly tempC: Float64Array;
  /** One value per step: what a pad in its box draws, W; null without one. */
  readonly heaterW: Float64Array | null;
  /** What was assumed, by chemistry or as stated. */
  readonly chemistry: ChemistryData;
}

/**
 * Fills in a bank from its chemistry and lays its temperature limits on the step grid.
 * @param airTempC one value per step; used where the bank is as warm as the air
 */
export function prepareBank(bank: Bank, airTempC: Float64Array, stepH: number): PreparedBank {
  const chemistry = CHEMISTRY_DATA[bank.chemistry];
  const in12V = bank.nominalV / 12;
  const ratedAh = bank.blockAh * bank.inParallel;
  const fullAh = ratedAh * bank.healthShare;
  const cells = chemistry.cellsPer12V * in12V;
  const curve = bank.openCircuitCurve?.map((point) => [point.share, point.cellV] as const) ?? chemistry.openCircuit;
  const openCircuitV = new Float64Array(CURVE_STEPS + 1).map((_, k) => toGrid(cells * onCurve(curve, k / CURVE_STEPS)));
  const inBox = bank.box === undefined ? null : boxWarmth(bank, bank.box, airTempC, stepH);
  const tempC =
    inBox?.tempC ?? (bank.temperature === "air" ? airTempC : airTempC.map(() => bank.temperature as number));
  const coulombicShare = bank.coulombicEfficiencyShare ?? chemistry.coulombicEfficiencyShare;
  const perMissingAh = bank.acceptancePerH ?? chemistry.acceptancePerH;
  const per100Ah = (100 / ratedAh) * in12V;
  const internalOhm = bank.internalResistanceOhm ?? chemistry.internalOhmPer100Ah * per100Ah;
  // Peukert's law is for lead; lithium gives its rated charge at any rate that its electronics allow.
  const peukertExponent = bank.chemistry === "lfp" ? 1 : (bank.peukertExponent ?? chemistry.peukertExponent);
  const chargingOhm = bank.chargingResistanceOhm ?? Math.max(internalOhm, chemistry.chargingOhmPer100Ah * per100Ah);
  // A stated charging resistance has the polarisation in it.
  const isOwn = bank.chargingResistanceOhm !== undefined;
  const polarisationV = isOwn ? 0 : chemistry.polarisationVPer12V * in12V;
  const polarisationA = isOwn ? 0 : chemistry.polarisationPerAh * ratedAh;
  // A stated resistance is made of electronics and cells as that of its chemistry is.
  const fixedShare = chemistry.fixedOhmPer100Ah / chemistry.internalOhmPer100Ah;
  const fixedOhm = Math.min(fixedShare * internalOhm, chargingOhm);
  // Sums, products and quotients alone, which every engine rounds alike: no grid, which a large bank's microohms would not stand.
  const byCharge = (ohm: number, shape: (share: number) => number) =>
    new Float64Array(CURVE_STEPS + 1).map((_, k) => (ohm - fixedOhm) * shape(k / CURVE_STEPS));
  const internalCellOhm = byCharge(internalOhm, chemistry.internalByCharge);
  const chargingCellOhm = byCharge(chargingOhm, chemistry.chargingByCharge);
  const internalCold = tempC.map((temp) => toGrid(coldOhm(chemistry.internalCold, temp)));
  const chargingCold = tempC.map((temp) => toGrid(coldOhm(chemistry.chargingCold, temp)));
  const absorptionV = bank.absorptionV ?? chemistry.absorptionVPer12V * in12V;
  const lockC = bank.coldChargeLockC === undefined ? chemistry.coldChargeLockC : bank.coldChargeLockC;
  const maxChargeA = bank.maxChargeA ?? chemistry.maxChargePerAh * ratedAh;
  const maxDischargeA = bank.maxDischargeA ?? chemistry.maxDischargePerAh * ratedAh;
  const gateC = bank.coldDischargeLockC === undefined ? chemistry.coldDischargeLockC : bank.coldDischargeLockC;
  const warm = { openCircuitV, absorptionV, fixedOhm, chargingCellOhm, polarisationV, polarisationA };
  const coldest = chemistry.chargePerAhAgainstC[0]![1];
  return {
    fullAh,
    curveStepsPerAh: CURVE_STEPS / fullAh,
    peukertStepsPerA: PEUKERT_STEPS_PER_UNIT / (ratedAh / 20),
    startAh: fullAh * bank.startShare,
    reserveAh: fullAh * bank.reserveShare,
    hasOwnCurve: bank.openCircuitCurve !== undefined,
    openCircuitV,
    storedWhAt: storedWhAt(openCircuitV, fullAh),
    internalOhm,
    chargingOhm,
    polarisationV,
    polarisationA,
    suddenOhm: Math.min(internalOhm, chemistry.suddenOhmPer100Ah * per100Ah),
    coulombicShare,
    absorptionV,
    fixedOhm,
    mostInternalOhm: fixedOhm + greatest(internalCellOhm) * greatest(internalCold),
    internalCellOhm,
    chargingCellOhm,
    internalCold,
    chargingCold,
    acceptA: acceptance({
      fullAh,
      openCircuitV,
      absorptionV,
      chargingOhm: chargingCellOhm.map((ohm) => fixedOhm + ohm),
      polarisationV,
      polarisationA,
      perMissingAh,
      coulombicShare,
      stepH,
    }),
    acceptShare: chargingCold.map((cold) => toGrid(acceptShare(cold, warm))),
    maxDischargeA,
    disconnectV: bank.disconnectV ?? chemistry.disconnectVPer12V * in12V,
    reconnectV: bank.reconnectV ?? chemistry.reconnectVPer12V * in12V,
    hasPeukert: peukertExponent > 1,
    peukertFactor: peukertFactor(peukertExponent),
    floorAh: tempC.map((temp) => toGrid(fullAh * (1 - Math.min(1, onCurve(chemistry.capacityAgainstC, temp))))),
    maxChargeA: tempC.map((temp) => {
      if (lockC !== null && temp <= lockC) return 0;
      return toGrid(
        Math.min(
          maxChargeA,
          ratedAh *
            // Below the first stair only a lock that somebody set lower, or took away, lets charge in: as slowly as on it.
            onStairs(chemistry.chargePerAhAgainstC, temp, coldest),
        ),
      );
    }),
    maxDischargeAt: tempC.map((temp) => {
      if (gateC !== null && temp <= gateC) return 0;
      if (bank.maxDischargeA !== undefined) return toGrid(maxDischargeA);
      return toGrid(Math.min(maxDischargeA, ratedAh * onStairs(chemistry.dischargePerAhAgainstC, temp, 0)));
    }),
    tempC,
    heaterW: bank.box?.heater === undefined ? null : inBox!.heaterW,
    chemistry,
  };
}

const greatest = (values: Float64Array) => values.reduce((most, each) => Math.max(most, each), 0);

/**
 * What the cold leaves of the charging current at 25 °C, at the charge where it leaves least: so no charge meets more than the absorption volts.
 * @param cold resistance over that at 25 °C; under 1 in the heat, in which a bank takes no more than at 25 °C
 */
function acceptShare(
  cold: number,
  warm: Pick<
    PreparedBank,
    "openCircuitV" | "absorptionV" | "fixedOhm" | "chargingCellOhm" | "polarisationV" | "polarisationA"
  >,
): number {
  const { openCircuitV, absorptionV, fixedOhm, chargingCellOhm, polarisationV, polarisationA } = warm;
  let least = 1;
  for (let k = 0; k < CURVE_STEPS; k += CURVE_STEPS / ACCEPT_LOOKS) {
    const headroomV = absorptionV - openCircuitV[k]!;
    if (headroomV <= 0) break;
    const cellOhm = chargingCellOhm[k]!;
    const coldA = currentForVolts(headroomV, fixedOhm + cellOhm * cold, polarisationV * cold, polarisationA);
    least = Math.min(least, coldA / currentForVolts(headroomV, fixedOhm + cellOhm, polarisationV, polarisationA));
  }
  return least;
}

/** Watt-hours up to each step of the table: the exact integral of the piecewise-linear voltage. */
function storedWhAt(openCircuitV: Float64Array, fullAh: number): Float64Array {
  const stored = new Float64Array(openCircuitV.length);
  const ahPerStep = fullAh / (openCircuitV.length - 1);
  for (let k = 1; k < stored.length; k++) {
    stored[k] = stored[k - 1]! + (ahPerStep * (openCircuitV[k - 1]! + openCircuitV[k]!)) / 2;
  }
  return stored;
}

/**
 * Peukert's law as bookkeeping: drawing I amperes takes I·(I/I20)^(k−1) out of the bank, and never less than I.
 * @see W. Peukert, Elektrotechnische Zeitschrift 20 (1897); form for a capacity rated at 20 h
 */
function peukertFactor(exponent: number): Float64Array {
  const table = new Float64Array(PEUKERT_UNITS * PEUKERT_STEPS_PER_UNIT + 1);
  return table.map((_, k) => toGrid(Math.max(1, (k / PEUKERT_STEPS_PER_UNIT) ** (exponent - 1))));
}
