import type { Chemistry } from "../scenario/bank.ts";

/** One point of a piecewise-linear curve. */
export type CurvePoint = readonly [x: number, y: number];

/** What is known of a chemistry; rates are per ampere-hour of rated capacity, resistances per 12 V block of 100 Ah. */
export interface ChemistryData {
  /** Cells in a nominal 12 V. */
  readonly cellsPer12V: number;
  /** Open-circuit voltage of one cell against share of charge. */
  readonly openCircuit: readonly CurvePoint[];
  readonly coulombicEfficiencyShare: number;
  readonly peukertExponent: number;
  readonly internalOhmPer100Ah: number;
  readonly chargingOhmPer100Ah: number;
  readonly absorptionVPer12V: number;
  readonly acceptancePerH: number;
  readonly maxChargePerAh: number;
  readonly maxDischargePerAh: number;
  readonly disconnectVPer12V: number;
  readonly reconnectVPer12V: number;
  readonly coldChargeLockC: number | null;
  /** Share of capacity that can be drawn against temperature, °C. */
  readonly capacityAgainstC: readonly CurvePoint[];
  /** Most charging current per Ah against temperature, °C; steps down at each point's temperature going colder. */
  readonly chargePerAhAgainstC: readonly CurvePoint[];
}

/** Voltage at rest of a 12 V lead-acid battery against charge: charge-controller manuals, as collected in trade handbooks. */
const LEAD_REST_V: readonly CurvePoint[] = [
  [0, 10.5],
  [0.1, 11.31],
  [0.2, 11.58],
  [0.3, 11.75],
  [0.4, 11.9],
  [0.5, 12.06],
  [0.6, 12.2],
  [0.7, 12.32],
  [0.8, 12.42],
  [0.9, 12.5],
  [1, 12.7],
];
const LEAD_CELL_V = LEAD_REST_V.map(([share, volts]): CurvePoint => [share, volts / 6]);

/** Lead capacity against temperature: 0.80 to 0.85 at 0 °C, 0.50 to 0.60 at −20 °C (common practice), middle of the ranges. */
const LEAD_CAPACITY: readonly CurvePoint[] = [
  [-20, 0.55],
  [0, 0.825],
  [25, 1],
];

/**
 * Figures by chemistry. Where a range is published the middle is taken.
 * - LFP open-circuit curve: Sunil, Pattipati, Balasingam, IEEE Trans. Instrumentation and Measurement 2025, companion data
 *   (18650-size LFP power cell, C/32 pseudo open-circuit voltage, ten breakpoints).
 * - LFP capacity and charge limits against temperature: manuals of LFP packs (no charging below 0 °C, 0.1C to 5 °C, 0.2C to
 *   10 °C); 0.80 to 0.90 of capacity at 0 °C and 0.50 to 0.70 at −20 °C, middle of the ranges of several makers.
 * - Coulombic efficiency, absorption voltage, charge rates, disconnect and reconnect voltages: common practice.
 * - Internal resistance: 20 mΩ for an LFP pack with its electronics, 6 mΩ for lead, taken per 100 Ah (from memory).
 * - Charging resistance of lead and the acceptance figures are fitted, not measured: the first so that a round trip keeps
 *   0.80 to 0.85 (AGM) and 0.70 to 0.80 (flooded) of the energy, the second so that the taper from 0.8 to full lasts 3 to 6 h
 *   (AGM), 4 to 8 h (flooded) and 15 to 45 min (LFP), the ranges of common practice; see `docs/model.md`.
 */
export const CHEMISTRY_DATA: Record<Chemistry, ChemistryData> = {
  lfp: {
    cellsPer12V: 4,
    openCircuit: [
      [0, 2.0102],
      [0.0033, 2.4177],
      [0.0117, 2.7405],
      [0.0267, 2.9299],
      [0.0534, 3.0872],
      [0.0885, 3.1942],
      [0.2972, 3.2772],
      [0.9833, 3.3511],
      [0.995, 3.418],
      [1, 3.5981],
    ],
    coulombicEfficiencyShare: 0.99,
    peukertExponent: 1,
    internalOhmPer100Ah: 0.02,
    chargingOhmPer100Ah: 0.02,
    absorptionVPer12V: 14.4,
    acceptancePerH: 6,
    maxChargePerAh: 0.5,
    maxDischargePerAh: 1,
    disconnectVPer12V: 12,
    reconnectVPer12V: 13,
    coldChargeLockC: 0,
    capacityAgainstC: [
      [-20, 0.6],
      [0, 0.85],
      [25, 1],
      [55, 0.95],
    ],
    chargePerAhAgainstC: [
      [0, 0.1],
      [5, 0.2],
      [10, 1],
      [45, 0.1],
      [60, 0],
    ],
  },
  agm: {
    cellsPer12V: 6,
    openCircuit: LEAD_CELL_V,
    coulombicEfficiencyShare: 0.95,
    peukertExponent: 1.1,
    internalOhmPer100Ah: 0.006,
    chargingOhmPer100Ah: 0.1,
    absorptionVPer12V: 14.6,
    acceptancePerH: 1,
    maxChargePerAh: 0.25,
    maxDischargePerAh: 3,
    disconnectVPer12V: 11.5,
    reconnectVPer12V: 12.6,
    coldChargeLockC: null,
    capacityAgainstC: LEAD_CAPACITY,
    chargePerAhAgainstC: [[-40, 1]],
  },
  flooded: {
    cellsPer12V: 6,
    openCircuit: LEAD_CELL_V,
    coulombicEfficiencyShare: 0.86,
    peukertExponent: 1.25,
    internalOhmPer100Ah: 0.006,
    chargingOhmPer100Ah: 0.12,
    absorptionVPer12V: 14.6,
    acceptancePerH: 0.65,
    maxChargePerAh: 0.13,
    maxDischargePerAh: 3,
    disconnectVPer12V: 11.5,
    reconnectVPer12V: 12.6,
    coldChargeLockC: null,
    capacityAgainstC: LEAD_CAPACITY,
    chargePerAhAgainstC: [[-40, 1]],
  },
};
