/**
 * load: what the gear and the operators want. Gear and stations ─► prepareLoads ─► watts per step and device, the shares
 * of the clock spent sending, and the peaks that stations can meet. Reads scenario; read by run.
 */

export type { DeviceLoad } from "./deviceLoad.ts";
export { type PreparedLoads, prepareLoads } from "./prepareLoads.ts";
export type { PreparedStation } from "./prepareStation.ts";
export { transmitDrawOf } from "./transmitDrawOf.ts";
