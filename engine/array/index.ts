/**
 * array: what panels make of the light, up to the bank's terminals.
 * prepareDome and prepareGroups (facing, shade, glass, wind; once per scenario) ─► stepDome (per member: its light by where it comes from) ─►
 * stepPlane (members side by side, the whole event: light on the plane ─► cells ─► sections) ─► stepGroup (per step, at the bank's volts:
 * controller, cable, losses) ─► writeDetail (traces). Reads scenario, sky, shade; read by run.
 */
export { type CopperSize, copperOhmPerM } from "./copperOhmPerM.ts";
export { DOME_LIGHT_SLOTS, type DomeLight, EVEN_WM2, makeDomeLight, SUN_WM2 } from "./domeLight.ts";
export {
  clearFixedPower,
  type FixedPower,
  MEMBER_CROWNS,
  MEMBER_SLOTS,
  MEMBER_YIELD,
  makeFixedPower,
} from "./fixedPower.ts";
export { type GroupDetail, groupDetail } from "./groupDetail.ts";
export { mildlyLitWm2 } from "./mildlyLitWm2.ts";
export { modulePoints } from "./modulePoints.ts";
export { mountTrack } from "./mountTrack.ts";
export { panelAxes } from "./panelAxes.ts";
export { PLANE_SLOTS } from "./planeSlots.ts";
export { type PreparedGroup, preparedGroup, RATED_TEMP_C, underCrowns } from "./preparedGroup.ts";
export { type FacedGroup, faceGroup, placeGroup, prepareGroup } from "./prepareGroup.ts";
export { DOME_SLOTS, PER_LEVEL, prepareDome } from "./skyDome.ts";
export {
  COS_INCIDENCE,
  GROUND_SHARE,
  HEAT_K_PER_WM2,
  INCIDENCE_SHARE,
  MEAN_SHARE,
  OUT_SHARE,
  SECTION_SHARE,
  SKY_SHARE,
} from "./slots.ts";
export { stepDome } from "./stepDome.ts";
export { PASSED_V, stepGroup } from "./stepGroup.ts";
export { stepPlane } from "./stepPlane.ts";
export { writeDetail } from "./writeDetail.ts";
