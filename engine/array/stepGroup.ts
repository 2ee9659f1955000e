import type { SkyLight } from "../sky/splitDiffuse.ts";
import type { GroupDetail } from "./groupDetail.ts";
import { mpptBusW } from "./mpptBusW.ts";
import type { PreparedGroup } from "./prepareGroup.ts";
import { pwmBusW } from "./pwmBusW.ts";
import { planeBeamWm2, planeDiffuseWm2 } from "./transposition.ts";

/** Cell temperature at which modules are rated, °C. */
const RATED_TEMP_C = 25;

/**
 * Power that a panel group brings to the bank's terminals in step `i`, W, mean over the step: light on the plane, what
 * shade and glass leave of it, how warm that makes the cells, and what the controller makes of the sections.
 * @param light the sky of a member; one value per step
 * @param airTempC one value per step
 * @param busV volts at the bank's terminals, above 0
 * @param detail receives what happened on the way; leave it out in ensembles
 * @returns W, 0 or more
 */
export function groupBusW(
  group: PreparedGroup,
  i: number,
  light: SkyLight,
  airTempC: Float64Array,
  busV: number,
  detail?: GroupDetail,
): number {
  const outShare = group.outShare[i]!;
  const ghiWm2 = light.ghiWm2[i]!;
  if (outShare <= 0 || ghiWm2 <= 0) {
    if (detail !== undefined) writeNothing(detail, i, airTempC[i]!);
    return 0;
  }
  const dniWm2 = light.dniWm2[i]!;
  const dhiWm2 = light.dhiWm2[i]!;
  const beamWm2 = planeBeamWm2(group.plane, i, dniWm2, dhiWm2);
  const diffuseWm2 = planeDiffuseWm2(group.plane, i, ghiWm2, dniWm2, dhiWm2, beamWm2);
  const meanShare = group.meanShare[i]!;
  const planeWm2 = Math.max(0, beamWm2 * meanShare + diffuseWm2);
  const glassBeamWm2 = beamWm2 * group.incidenceShare[i]!;
  const cellTempC = airTempC[i]! + planeWm2 * group.heatKPerWm2[i]!;
  const warmK = cellTempC - RATED_TEMP_C;
  const busW = group.isPwm
    ? pwmBusW(group, i, glassBeamWm2, diffuseWm2, warmK, busV, detail)
    : mpptBusW(group, i, glassBeamWm2, diffuseWm2, warmK, busV, detail);
  if (detail !== undefined) {
    const free = group.unshaded ?? group;
    const freeBeamWm2 = planeBeamWm2(free.plane, i, dniWm2, dhiWm2);
    const freeDiffuseWm2 = planeDiffuseWm2(free.plane, i, ghiWm2, dniWm2, dhiWm2, freeBeamWm2);
    detail.planeBeforeWm2[i] = outShare * Math.max(0, freeBeamWm2 + freeDiffuseWm2);
    detail.planeWm2[i] = outShare * planeWm2;
    detail.effectiveWm2[i] = outShare * Math.max(0, glassBeamWm2 * meanShare + diffuseWm2);
    detail.cellTempC[i] = cellTempC;
    detail.dcW[i]! *= outShare;
    detail.lossesW[i]! *= outShare;
    detail.cableLossW[i]! *= outShare;
    detail.controllerLossW[i]! *= outShare;
    detail.limitedW[i]! *= outShare;
    detail.busW[i] = outShare * busW;
    const freeW = group.unshaded === null ? outShare * busW : groupBusW(free, i, light, airTempC, busV);
    detail.shadeLossW[i] = freeW - outShare * busW;
  }
  return outShare * busW;
}

function writeNothing(detail: GroupDetail, i: number, airTempC: number): void {
  detail.planeBeforeWm2[i] = 0;
  detail.planeWm2[i] = 0;
  detail.effectiveWm2[i] = 0;
  detail.cellTempC[i] = airTempC;
  detail.sectionsConducting[i] = 0;
  detail.mppV[i] = 0;
  detail.dcW[i] = 0;
  detail.lossesW[i] = 0;
  detail.cableLossW[i] = 0;
  detail.controllerLossW[i] = 0;
  detail.limitedW[i] = 0;
  detail.busW[i] = 0;
  detail.shadeLossW[i] = 0;
}
