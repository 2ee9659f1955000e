/**
 * gear: kinds of gear that stations bring, of no make, with what each usually takes and from where to where; what somebody measured of them and
 * kinds of their own; and the change that puts one into a scenario.
 */
export { gearChange } from "./gearChange.ts";
export { gearDoubt } from "./gearDoubt.ts";
export { GEAR_AT_V, GENERIC_GEAR, type GearRange, type GenericGear } from "./gearTable.ts";
export { type Measurement, measuredDoubts, readMeasuredGear } from "./measuredGear.ts";
export { OWN_USES, type OwnGear, onShelf, ownGearId } from "./ownGear.ts";
export { nearGear, searchGear } from "./searchGear.ts";
export { batteryMassKg, controllerMassKg, generatorMassKg, leadMassKg, panelMassKg } from "./typicalMassKg.ts";
