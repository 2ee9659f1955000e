/**
 * reach: what it would take. A plan's levers (reachPlan), each with its amounts and what they take; the search for the least that reaches a target,
 * alone, in pairs and in threes (runReach); reachReport. Members are counted in reachTask. Reads task and odds.
 */
export type { Price } from "./lever.ts";
export { ReachRefused } from "./makeHeld.ts";
export { inside, leadM, OPEN_WITHIN_M, openSpot, proppedUp } from "./openPanels.ts";
export { REACH_ORDERS, type ReachOrder } from "./reachOrder.ts";
export { type ReachPlan, reachPlan } from "./reachPlan.ts";
export type { ReachReport, ReachRow, ReachWay } from "./reachReport.ts";
export { needed } from "./reachSingles.ts";
export { reachTask } from "./reachTask.ts";
export { makeReachMemory, type ReachMemory, runReach } from "./runReach.ts";
export { stepReachHolds } from "./stepReach.ts";
