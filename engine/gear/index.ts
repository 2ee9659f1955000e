/**
 * gear: kinds of gear that stations bring, of no make, with what each usually takes and from where to where; what somebody measured of them;
 * and the change that puts one into a scenario.
 */
export { gearChange } from "./gearChange.ts";
export { GEAR_AT_V, GENERIC_GEAR, type GearRange, type GenericGear } from "./gearTable.ts";
export { type Measurement, readMeasuredGear } from "./measuredGear.ts";
export { searchGear } from "./searchGear.ts";
export { batteryMassKg, controllerMassKg, generatorMassKg, leadMassKg, panelMassKg } from "./typicalMassKg.ts";
