/**
 * drivers: which of what is uncertain decides the outcome, and which load to switch off first.
 */
export { DRIVERS_FEWEST_MEMBERS, DRIVERS_MOST_MEMBERS, drivers } from "./drivers.ts";
export type { DriverFactor } from "./driversMember.ts";
export type { DriverLine, DriversReport, EndEffect, SheddingLine } from "./driversReport.ts";
export type { DriverShare, Sampled } from "./driversShares.ts";
