import type { Chemistry } from "../scenario/bank.ts";
import { type CurvePoint, onCurve } from "./curve.ts";

/** What is known of a chemistry; rates are per ampere-hour of rated capacity, resistances per 12 V block of 100 Ah. */
export interface ChemistryData {
  /** Heat that warms a 12 V block of 100 Ah by a degree, Wh/K. */
  readonly heatWhPerKPer100Ah: number;
  /** Cells in a nominal 12 V. */
  readonly cellsPer12V: number;
  /** Open-circuit voltage of one cell against share of charge. */
  readonly openCircuit: readonly CurvePoint[];
  readonly coulombicEfficiencyShare: number;
  readonly peukertExponent: number;
  /** What a load meets at half charge and 25 °C, and what of it are electronics and joints: those know neither cold nor charge. */
  readonly internalOhmPer100Ah: number;
  readonly fixedOhmPer100Ah: number;
  /** What a dead short meets in a warm bank, cells alone. */
  readonly suddenOhmPer100Ah: number;
  /** What a steady charging current meets at half charge and 25 °C, electronics and joints included. */
  readonly chargingOhmPer100Ah: number;
  /** What charging adds to the volts besides, as soon as it is more than a trickle, per 12 V; and that trickle, A per Ah. */
  readonly polarisationVPer12V: number;
  readonly polarisationPerAh: number;
  /** Resistance of the cells at a charge over that at half charge. */
  readonly internalByCharge: (share: number) => number;
  readonly chargingByCharge: (share: number) => number;
  /** How the cells' resistance rises in the cold; see `coldOhm`. */
  readonly internalCold: ColdRule;
  readonly chargingCold: ColdRule;
  readonly absorptionVPer12V: number;
  readonly acceptancePerH: number;
  readonly maxChargePerAh: number;
  readonly maxDischargePerAh: number;
  readonly disconnectVPer12V: number;
  readonly reconnectVPer12V: number;
  readonly coldChargeLockC: number | null;
  /** Temperature at and below which the pack's electronics let nothing out, °C; null for none. */
  readonly coldDischargeLockC: number | null;
  /** Share of capacity that can be drawn against temperature, °C. */
  readonly capacityAgainstC: readonly CurvePoint[];
  /** Most charging current per Ah against temperature, °C; steps down at each point's temperature going colder. */
  readonly chargePerAhAgainstC: readonly CurvePoint[];
  /** Most current per Ah that it gives against temperature, °C, where nobody states one; steps down likewise. */
  readonly dischargePerAhAgainstC: readonly CurvePoint[];
}

/** By Arrhenius, with the activation energy over the gas constant, K; or by a share of that at 25 °C for each kelvin below. */
export type ColdRule = { readonly arrheniusK: number } | { readonly perKBelow25: number };

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

/**
 * Lead capacity against temperature: 0.80 to 0.85 at 0 °C, 0.50 to 0.60 at −20 °C (common practice), middle of the ranges; 0.90 at 10 °C (the
 * sheet of a 40 Ah sealed block); below −20 °C the same fall carried on (no source).
 */
const LEAD_CAPACITY: readonly CurvePoint[] = [
  [-40, 0.275],
  [-20, 0.55],
  [0, 0.825],
  [10, 0.9],
  [25, 1],
];

/** No more than 0.3 C below freezing: permissible temperatures of lead-acid batteries, as a cell maker republishes them. */
const LEAD_CHARGE: readonly CurvePoint[] = [
  [-40, 0.3],
  [0, 1],
];

/** Shape of lead's resistance by charge: the Shepherd equation with the parameters of Schiffer et al., J. Power Sources 168 (2007) 66–78. */
const overHalf = (shape: (share: number) => number) => (share: number) => shape(share) / shape(0.5);
const LEAD_CHARGING = overHalf((share) => 1 + (0.888 * share) / (1.001 - share));
const LEAD_INTERNAL = overHalf((share) => 1 + (0.0464 * (1 - share)) / (1.75 - (1 - share)));

/**
 * Lead in the cold: 0.7 % of the discharge resistance and 2.5 % of the charging resistance for each kelvin (Copetti, Lorenzo & Chenlo,
 * Progress in Photovoltaics 1 (1993) 283–292; from memory).
 */
const LEAD_COLD = {
  heatWhPerKPer100Ah: 7.5,
  internalByCharge: LEAD_INTERNAL,
  chargingByCharge: LEAD_CHARGING,
  internalCold: { perKBelow25: 0.007 },
  chargingCold: { perKBelow25: 0.025 },
  polarisationVPer12V: 0.45,
  polarisationPerAh: 0.02,
  fixedOhmPer100Ah: 0,
  suddenOhmPer100Ah: 0.006,
  coldChargeLockC: null,
  coldDischargeLockC: null,
  capacityAgainstC: LEAD_CAPACITY,
  chargePerAhAgainstC: LEAD_CHARGE,
  dischargePerAhAgainstC: [[-60, 3]],
} as const satisfies Partial<ChemistryData>;

/**
 * Lithium's resistance by charge over that at half charge: M. Naumann, thesis, Technical University of Munich 2018, a 3 Ah LFP cell at 25 °C.
 * What the means of drawing and charging do between tenths is straight.
 */
const LFP_INTERNAL: readonly CurvePoint[] = [
  [0.1, 1.29],
  [0.2, 1.053],
  [0.3, 1.021],
  [0.5, 1],
  [0.6, 0.92],
  [1, 0.92],
];
const LFP_CHARGING: readonly CurvePoint[] = [
  [0.1, 0.84],
  [0.2, 0.925],
  [0.4, 0.933],
  [0.5, 1],
  [0.6, 1.065],
  [0.7, 1.112],
  [0.8, 1.045],
  [0.9, 1.193],
];
/**
 * Activation energy over the gas constant, K: an LFP cell drawn at half its capacity an hour at −25, −15, −5 and 25 °C has 4100, the one of the
 * thesis 2100 from 10 to 40 °C, two cells of other lithium chemistries 2400 and 3400 down to −25 °C (tests/truth/data/cold-banks.json).
 */
const LFP_COLD = { arrheniusK: 3800 } as const;

/**
 * Figures by chemistry. Where a range is published the middle is taken.
 * - LFP open-circuit curve: Sunil, Pattipati, Balasingam, IEEE Trans. Instrumentation and Measurement 2025, companion data
 *   (18650-size LFP power cell, C/32 pseudo open-circuit voltage, ten breakpoints).
 * - LFP capacity and charge limits against temperature: manuals of LFP packs (no charging below 0 °C, 0.1C to 5 °C, 0.2C to
 *   10 °C; nothing out at or below −20 °C, half of the rated current below 0 °C); 0.80 to 0.90 of capacity at 0 °C and 0.50 to 0.70 at −20 °C,
 *   middle of the ranges of several makers; a third at −40 °C (one maker's 11 Ah cell), for packs that may work there.
 * - Coulombic efficiency (0.90 to 0.97 for AGM), absorption voltage, charge rates, disconnect and reconnect voltages: common practice.
 * - Internal resistance, per 100 Ah: an LFP pack 20 mΩ (labels of packs: at most 15 to 20), of which 4 mΩ are cells (1.4 to 5.6 mΩ by the two
 *   cells named above). Lead: between the 6 mΩ that a sudden load meets (from memory) and the sag of a steady one, 17 mΩ between C/20 and C/4 by
 *   sheets of AGM blocks (from memory) and 42 mΩ for flooded cells (Schiffer et al. 2007).
 * - Lead on charge: the volts rise by a polarisation at once and by a resistance that grows towards full. Where print has one or the other, it is a
 *   resistance (Schiffer et al. 2007, 48 mΩ at half charge, 0.2 V under the means of measured curves; Copetti et al. 1993, 150 mΩ at C/10, 0.5 V
 *   over them). The two here are fitted, not measured: so that C/5 (AGM) and C/8 (flooded) meet the absorption volts at about 0.8 and a round trip
 *   keeps 0.80 to 0.85 (AGM) and 0.70 to 0.80 (flooded) of the energy.
 * - Heat: 12 kg of LFP pack at 1.0 kJ/(kg K) (Naumann 2018, the cell), 30 kg of lead at 0.9 kJ/(kg K) (from memory).
 * - The acceptance figures are fitted, not measured: so that the taper from 0.8 to full lasts 3 to 6 h (AGM), 4 to 8 h (flooded) and 15 to
 *   45 min (LFP), the ranges of common practice; see `docs/model.md`.
 */
export const CHEMISTRY_DATA: Record<Chemistry, ChemistryData> = {
  lfp: {
    heatWhPerKPer100Ah: 3.3,
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
    fixedOhmPer100Ah: 0.016,
    polarisationVPer12V: 0,
    polarisationPerAh: 0,
    suddenOhmPer100Ah: 0.004,
    chargingOhmPer100Ah: 0.02,
    internalByCharge: (share) => onCurve(LFP_INTERNAL, share),
    chargingByCharge: (share) => onCurve(LFP_CHARGING, share),
    internalCold: LFP_COLD,
    chargingCold: LFP_COLD,
    absorptionVPer12V: 14.4,
    acceptancePerH: 6,
    maxChargePerAh: 0.5,
    maxDischargePerAh: 1,
    disconnectVPer12V: 12,
    reconnectVPer12V: 13,
    coldChargeLockC: 0,
    coldDischargeLockC: -20,
    capacityAgainstC: [
      [-40, 0.33],
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
    dischargePerAhAgainstC: [
      [-60, 0.5],
      [0, 1],
    ],
  },
  agm: {
    cellsPer12V: 6,
    openCircuit: LEAD_CELL_V,
    coulombicEfficiencyShare: 0.935,
    peukertExponent: 1.1,
    internalOhmPer100Ah: 0.015,
    chargingOhmPer100Ah: 0.034,
    absorptionVPer12V: 14.6,
    acceptancePerH: 1,
    maxChargePerAh: 0.25,
    maxDischargePerAh: 3,
    disconnectVPer12V: 11.5,
    reconnectVPer12V: 12.6,
    ...LEAD_COLD,
  },
  flooded: {
    cellsPer12V: 6,
    openCircuit: LEAD_CELL_V,
    coulombicEfficiencyShare: 0.86,
    peukertExponent: 1.25,
    internalOhmPer100Ah: 0.03,
    chargingOhmPer100Ah: 0.0555,
    absorptionVPer12V: 14.6,
    acceptancePerH: 0.65,
    maxChargePerAh: 0.13,
    maxDischargePerAh: 3,
    disconnectVPer12V: 11.5,
    reconnectVPer12V: 12.6,
    ...LEAD_COLD,
  },
};
