/**
 * drivers: which of what is uncertain decides the outcome, and which load to switch off first.
 */
export { DRIVERS_FEWEST_MEMBERS, DRIVERS_MOST_MEMBERS } from "./drivers.ts";
export type { DriverLine, DriversReport, EndEffect, SheddingLine } from "./driversReport.ts";
export type { Sampled } from "./driversShares.ts";
export { driversRowsTask } from "./driversTasks.ts";
export { runDrivers } from "./runDrivers.ts";
