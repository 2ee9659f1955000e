import { drawSky } from "../sky/skyEnsemble.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { drawFigures } from "./memberFigures.ts";
import type { MemberInputs } from "./memberInputs.ts";
import { drawOperators } from "./operators.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import type { RunDetails } from "./runDetails.ts";
import type { RunRows } from "./runRows.ts";
import { stepRun } from "./stepRun.ts";

/** Room for one member: its sky, its loads and its run. */
export interface MemberRoom {
  readonly light: SkyLight;
  readonly airTempC: Float64Array;
  readonly inputs: MemberInputs;
  readonly run: RunRows;
}

/**
 * Draws one member and carries it through the event. Everything a member meets hangs on the seed, its number and the purpose alone: the same
 * member of another scenario at the same place and time meets the same sky and the same people.
 * @param room written over
 */
export function stepMember(ensemble: PreparedEnsemble, member: number, room: MemberRoom, details?: RunDetails): void {
  const { light, airTempC, inputs } = room;
  drawMemberSky(ensemble, member, room);
  drawMemberFigures(ensemble, member, inputs);
  drawMemberLoads(ensemble, member, room);
  stepRun(ensemble.prepared, light, airTempC, inputs, room.run, details);
}

/** @memberLoop */
export function drawMemberSky({ skies, words }: PreparedEnsemble, member: number, room: MemberRoom): void {
  drawSky(skies, words, member, room.light, room.airTempC);
}

/** @memberLoop */
export function drawMemberFigures(ensemble: PreparedEnsemble, member: number, inputs: MemberInputs): void {
  const { words, operators, spread, prepared } = ensemble;
  drawFigures(prepared.scenario.bank.startShare, spread, operators.state, words, member, inputs.figures);
}

/**
 * What the operators want; the member's own figures come first.
 * @memberLoop
 */
export function drawMemberLoads(ensemble: PreparedEnsemble, member: number, room: MemberRoom): void {
  drawOperators(ensemble.prepared, ensemble.operators, ensemble.words, member, room.inputs);
}
