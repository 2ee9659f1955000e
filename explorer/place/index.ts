/**
 * place: picking a place: towns by name, the device's position, a height from the towns near by.
 */
export { DeviceAct } from "./DeviceAct.tsx";
export { accuracyWords, devicePosition } from "./devicePosition.ts";
export { ownTowns } from "./ownTowns.ts";
export { TownSearch } from "./TownSearch.tsx";
export { countryName, heightWords } from "./townWords.ts";
