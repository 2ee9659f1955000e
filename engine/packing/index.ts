/**
 * packing: what to take along. What a club owns (ownedThing, as CSV in ownedCsv); every set that can be packed of it for a plan (packingPlan: banks
 * made of batteries, panels with lead and controller, generators); which of them reach a target and are beaten by none in mass, minutes and money
 * (runPacking, members counted in packingTask). Reads reach, odds and task.
 */
export { freeId, ownedCsv, readOwnedCsv } from "./ownedCsv.ts";
export { ownedOfPlans } from "./ownedOfPlans.ts";
export { MOST_OWNED, OWNED_FIELDS, OWNED_KINDS, type OwnedKind, OwnedList, OwnedThing } from "./ownedThing.ts";
export { packingPlan } from "./packingPlan.ts";
export type { PackDot, PackedSet, PackingReport } from "./packingReport.ts";
export { packingTask } from "./packingTask.ts";
export { fittedNames, type PackLine, type PackList, packList } from "./packList.ts";
export { makePackingMemory, type PackingMemory, PackingRefused, runPacking } from "./runPacking.ts";
export { PACK_ORDERS, type PackOrder, type PackTotals, thingPrice } from "./thingPrice.ts";
