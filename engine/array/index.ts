/**
 * array: what panels make of the light, up to the bank's terminals.
 * prepareDome and prepareGroups (facing, shade, glass, wind; once per scenario) ─► stepDome (per member: its light by where it comes from) ─►
 * stepPlane (members side by side, the whole event: light on the plane ─► cells ─► sections) ─► stepGroup (per step, at the bank's volts:
 * controller, cable, losses) ─► writeDetail (traces). Reads scenario, sky, shade; read by run.
 */
export { type CopperSize, copperOhmPerM } from "./copperOhmPerM.ts";
export { type GroupDetail, groupDetail } from "./groupDetail.ts";
export { modulePoints } from "./modulePoints.ts";
export { type Facing, type MountTrack, mountTrack } from "./mountTrack.ts";
export type { PreparedGroup } from "./preparedGroup.ts";
export { prepareGroup, prepareGroups } from "./prepareGroup.ts";
export { stepGroup } from "./stepGroup.ts";
export { stepPlane } from "./stepPlane.ts";
export { writeDetail } from "./writeDetail.ts";
