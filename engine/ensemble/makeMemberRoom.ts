import { ownInputs } from "../run/memberInputs.ts";
import { makeRunRows } from "../run/runRows.ts";
import { makeSkyLight } from "../sky/splitDiffuse.ts";
import { zeros } from "../zeros.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import type { MemberRoom } from "./stepMember.ts";

/**
 * Room for the members of an ensemble.
 * @param lanes how many are carried through the event side by side
 * @param spare room that nobody uses any more, of any ensemble; its memory is taken where it fits
 */
export function makeMemberRoom(ensemble: PreparedEnsemble, lanes = 1, spare?: MemberRoom): MemberRoom {
  const { prepared } = ensemble;
  const { steps } = prepared.grid;
  const filled = (values: Float64Array, old?: Float64Array) => {
    const room = zeros(values.length, old);
    room.set(values);
    return room;
  };
  return {
    light: makeSkyLight(steps, spare?.light),
    airTempC: filled(prepared.airTempC, spare?.airTempC),
    inputs: ownInputs(prepared.inputs, filled(prepared.inputs.wantedW, spare?.inputs.wantedW)),
    run: makeRunRows(prepared, lanes, spare?.run),
  };
}
