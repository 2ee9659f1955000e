import { drawSky } from "../sky/skyEnsemble.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { drawFigures, FIGURE_CANOPY_NORMAL } from "./memberFigures.ts";
import type { MemberInputs } from "./memberInputs.ts";
import { drawOperators } from "./operators.ts";
import type { Prepared } from "./prepare.ts";
import { CANOPY_REACH, type PreparedEnsemble } from "./prepareEnsemble.ts";
import type { RunDetails } from "./runDetails.ts";
import type { RunRows } from "./runRows.ts";
import { stepRun } from "./stepRun.ts";

/** Room for one member: its sky, its loads and its run. */
export interface MemberRoom {
  readonly light: SkyLight;
  readonly airTempC: Float64Array;
  readonly inputs: MemberInputs;
  /** The scenario with the member's own crowns over the panels. */
  readonly prepared: Prepared;
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
  stepCanopy(ensemble, inputs.figures);
  drawMemberLoads(ensemble, member, room);
  stepRun(room.prepared, light, airTempC, inputs, room.run, details);
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

/** Mixes the panels' rows between darker, planned and lighter crowns. */
export function stepCanopy(ensemble: PreparedEnsemble, figures: Float64Array): void {
  for (let g = 0; g < ensemble.prepared.groups.length; g++) mixCrowns(ensemble, g, figures);
}

/** `stepCanopy` for one group. */
export function mixCrowns({ canopy }: PreparedEnsemble, g: number, figures: Float64Array): void {
  if (canopy === null) return;
  const normal = Math.max(-CANOPY_REACH, Math.min(CANOPY_REACH, figures[FIGURE_CANOPY_NORMAL]!));
  const far = Math.abs(normal) / CANOPY_REACH;
  const mixed = canopy.member[g]!.perStep;
  const { places, planned, moreDarker, moreLighter } = canopy.touched[g]!;
  const more = normal < 0 ? moreDarker : moreLighter;
  for (let p = 0; p < places.length; p++) mixed[places[p]!] = planned[p]! + far * more[p]!;
}
