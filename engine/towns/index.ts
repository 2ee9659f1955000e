/**
 * towns: places by their names, and what the towns near a place say about it.
 * townTable (the towns, unpacked) ─► findTowns (by name), heightAsTowns (a height above the sea).
 */
export { findTowns } from "./findTowns.ts";
export { foldName, foldSpelt } from "./foldName.ts";
export { heightAsTowns, type TownHeight } from "./heightAsTowns.ts";
export { HEIGHT_STEP_M, NO_HEIGHT, PEOPLE_STEPS, type Town, townTable } from "./townTable.ts";
