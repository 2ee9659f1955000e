import { drawFigures } from "../run/memberFigures.ts";
import type { MemberInputs } from "../run/memberInputs.ts";
import { requireFedLoads, requireFedSky } from "../run/requireFed.ts";
import type { RunDetails } from "../run/runDetails.ts";
import type { RunRows } from "../run/runRows.ts";
import { stepLaneFigures, stepLaneLight, stepLanes, stepLaneWanted } from "../run/stepRun.ts";
import { drawSky } from "../sky/skyEnsemble.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { drawOperators } from "./operators.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";

/** Room for members: what one of them meets and wants, while it is drawn, and the runs of as many as are carried side by side. */
export interface MemberRoom {
  readonly light: SkyLight;
  readonly airTempC: Float64Array;
  readonly inputs: MemberInputs;
  readonly run: RunRows;
}

/** Steps of members that one block of them may have in all: room for 64 bytes of each for every panel group. */
const STEPS_SIDE_BY_SIDE = 60_000;
export const MOST_LANES = 4;

/**
 * How many members of an ensemble are carried side by side: what depends on the step alone is read once for all of them, and while one bank
 * waits for its own last step the processor works at the next. Four, since with eight it takes hardly less time; fewer where the steps are so many
 * that they would only fill the memory.
 */
export function lanesFor(steps: number): number {
  return Math.max(1, Math.min(MOST_LANES, Math.floor(STEPS_SIDE_BY_SIDE / steps)));
}

/** Draws members and carries them through the event, as `stepMembers` does. */
export type StepMembers = (ensemble: PreparedEnsemble, from: number, count: number, room: MemberRoom) => void;

/**
 * Draws `count` members from `from` on and carries them through the event side by side, each in a lane of `room.run`. Everything a member meets
 * depends on the seed, its number and the purpose alone: the same member of another scenario at the same place and time meets the same sky and
 * the same people, whoever runs beside it.
 * @param count 1…`room.run.lanes`
 * @param room written over
 */
export function stepMembers(ensemble: PreparedEnsemble, from: number, count: number, room: MemberRoom): void {
  for (let lane = 0; lane < count; lane++) stepMemberIn(ensemble, from + lane, room, lane);
  stepLanes(ensemble.prepared, room.run, count);
}

/**
 * `stepMembers` for one by itself.
 * @param details filled in when given; the room has one lane then
 */
export function stepMember(ensemble: PreparedEnsemble, member: number, room: MemberRoom, details?: RunDetails): void {
  stepMemberIn(ensemble, member, room, 0);
  stepLanes(ensemble.prepared, room.run, 1, details);
}

/** Draws a member and hands all of it to a lane. */
function stepMemberIn(ensemble: PreparedEnsemble, member: number, room: MemberRoom, lane: number): void {
  const { light, airTempC, inputs, run } = room;
  const { prepared } = ensemble;
  drawMemberSky(ensemble, member, room);
  drawMemberFigures(ensemble, member, inputs);
  drawMemberLoads(ensemble, member, room);
  stepLaneFigures(prepared, inputs.figures, run, lane);
  stepLaneWanted(inputs.wantedW, run, lane);
  stepLaneLight(prepared, light, airTempC, run, lane);
}

/** @memberLoop */
export function drawMemberSky({ skies, words, seed }: PreparedEnsemble, member: number, room: MemberRoom): void {
  drawSky(skies, words, member, room.light, room.airTempC);
  requireFedSky(seed, member, room.light, room.airTempC);
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
  requireFedLoads(ensemble.seed, member, room.inputs);
}
