import { makeSkyLight } from "../sky/splitDiffuse.ts";
import { FIGURES } from "./memberFigures.ts";
import { inShape } from "./prepare.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import { makeRunRows } from "./runRows.ts";
import type { MemberRoom } from "./stepMember.ts";

/** Room for the members of an ensemble, one after the other. */
export function makeMemberRoom(ensemble: PreparedEnsemble): MemberRoom {
  const { prepared, canopy } = ensemble;
  const own = canopy === null ? prepared : inShape({ ...prepared, groups: canopy.member });
  return {
    light: makeSkyLight(prepared.grid.steps),
    airTempC: prepared.airTempC.slice(),
    inputs: {
      rows: prepared.inputs.rows.slice(),
      stride: prepared.inputs.stride,
      figures: new Float64Array(FIGURES),
      mostPeakW: prepared.inputs.mostPeakW,
    },
    prepared: own,
    run: makeRunRows(own),
  };
}
