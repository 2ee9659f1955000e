/**
 * gear: the shelf of gear with own measured figures, kept in this browser and filled into plans by hand.
 */
export { GearShelf } from "./GearShelf.tsx";
export { makeMeasured } from "./makeMeasured.ts";
export { measured } from "./ownMeasured.ts";
