/**
 * reach: what it would take. A plan's levers (reachPlan), each with its amounts and what they take; the search for the least that reaches a target,
 * alone, in pairs and in threes (runReach); reachReport. Members are counted in reachTask. Reads task and odds.
 */
export { REACH_ORDERS, type ReachOrder } from "./reachOrder.ts";
export { type ReachPlan, reachPlan } from "./reachPlan.ts";
export type { ReachReport } from "./reachReport.ts";
export { runReach } from "./runReach.ts";
