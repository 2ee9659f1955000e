import type { Chemistry } from "../scenario/bank.ts";

/** Kilograms for each ampere-hour of a 12 V battery: 100 Ah of LFP 11 kg, of AGM 30 kg, of flooded lead 26 kg (common practice, no source). */
const BATTERY_KG_PER_AH: Readonly<Record<Chemistry, number>> = { lfp: 0.11, agm: 0.3, flooded: 0.26 };
/** A folding or framed panel with its stand: 100 W 5.5 kg (common practice, no source). */
const PANEL_KG_PER_W = 0.055;
/** A controller of 20 A 0.8 kg, of 40 A 1.3 kg (common practice, no source). */
const CONTROLLER_KG = 0.3;
const CONTROLLER_KG_PER_A = 0.025;
/** An inverter generator of 1 kW 13 kg, of 2 kW 21 kg, empty (common practice, no source). */
const GENERATOR_KG = 5;
const GENERATOR_KG_PER_KW = 8;
/** Petrol: 0.720 to 0.775 kg/L at 15 °C (EN 228; from memory). */
const PETROL_KG_PER_L = 0.745;
/** Density of copper, kg/L (CRC Handbook of Chemistry and Physics; from memory). */
const COPPER_KG_PER_L = 8.96;
/** A two-wire lead weighs so many times its copper (common practice, no source). */
const LEAD_OVER_COPPER = 1.4;

/** What a battery of a chemistry usually weighs, kg. @param volts of the battery */
export const batteryMassKg = (chemistry: Chemistry, ampereHours: number, volts: number) =>
  (BATTERY_KG_PER_AH[chemistry] * ampereHours * volts) / 12;

/** What a portable panel usually weighs, kg. */
export const panelMassKg = (ratedW: number) => PANEL_KG_PER_W * ratedW;

/** What a charge controller usually weighs, kg. */
export const controllerMassKg = (maxChargeA: number) => CONTROLLER_KG + CONTROLLER_KG_PER_A * maxChargeA;

/** What a generator usually weighs with its fuel, kg. */
export const generatorMassKg = (continuousW: number, fuelL: number) =>
  GENERATOR_KG + (GENERATOR_KG_PER_KW * continuousW) / 1000 + PETROL_KG_PER_L * fuelL;

/** What a two-wire lead usually weighs, kg. @param oneWayM its length; @param mm2 of one conductor */
export const leadMassKg = (oneWayM: number, mm2: number) =>
  (LEAD_OVER_COPPER * COPPER_KG_PER_L * 2 * mm2 * oneWayM) / 1000;
