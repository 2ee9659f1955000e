import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import { drawOperators } from "../ensemble/operators.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { MemberRoom } from "../ensemble/stepMember.ts";
import { NOTHING_W } from "../odds/stepCount.ts";
import {
  drawFigures,
  FIGURE_CANOPY_NORMAL,
  FIGURE_CAPACITY_SHARE,
  FIGURE_IDLE_SHARE,
  FIGURE_START_SHARE,
  FIGURE_YIELD_SHARE,
  FIGURES,
} from "../run/memberFigures.ts";
import { requireFedLoads, requireFedSky } from "../run/requireFed.ts";
import { ROW_SLOTS, ROW_STORED_AH, ROW_UNSERVED_W } from "../run/runRows.ts";
import { stepRun } from "../run/stepRun.ts";
import { STORED_AH } from "../run/stepState.ts";
import { drawSky } from "../sky/skyEnsemble.ts";

/** What members differ in. Independent of one another: each may be taken from another member. */
export const DRIVER_FACTORS = [
  "weather",
  "intensity",
  "idleDraw",
  "canopy",
  "panelYield",
  "startCharge",
  "bankHealth",
] as const;
export type DriverFactor = (typeof DRIVER_FACTORS)[number];

/** The factors that are one drawn figure each, by where that figure stands. */
export const FIGURE_OF_FACTOR: Readonly<Partial<Record<DriverFactor, number>>> = {
  idleDraw: FIGURE_IDLE_SHARE,
  canopy: FIGURE_CANOPY_NORMAL,
  panelYield: FIGURE_YIELD_SHARE,
  startCharge: FIGURE_START_SHARE,
  bankHealth: FIGURE_CAPACITY_SHARE,
};
export const WEATHER = DRIVER_FACTORS.indexOf("weather");
export const INTENSITY = DRIVER_FACTORS.indexOf("intensity");
const FACTORS = DRIVER_FACTORS.length;

/** Where a run's results stand in `DriversRoom.outcome`. */
export const OUTCOME_LOWEST_SHARE = 0;
/** Step in which the charge is first below the reserve; −1 where it never is. */
export const OUTCOME_BELOW_FROM = 1;
export const OUTCOME_UNSERVED_WH = 2;
/** Light on the level over the event, Wh/m², and what sending took on top of receiving, Wh. */
export const OUTCOME_LIGHT_WHM2 = 3;
export const OUTCOME_SENDING_WH = 4;
/** Step in which something first goes without; −1 where nothing ever does. */
export const OUTCOME_DARK_FROM = 5;
const OUTCOMES = 6;

/** Room for members put together from several. */
export interface DriversRoom {
  readonly member: MemberRoom;
  /** From which member each factor is taken, in the order of `DRIVER_FACTORS`. */
  readonly memberOf: Int32Array;
  /** A figure held at a value instead of drawn: its place, or −1, and the value. */
  readonly held: Float64Array;
  readonly drawn: Float64Array;
  readonly figureOfFactor: Int32Array;
  readonly outcome: Float64Array;
  /** Whose sky is in the room, so that a sky used again is not drawn again; −1 for nobody's. */
  readonly skyOf: Int32Array;
}

/** @param skyRoom a room whose sky this one shares: both then have to be of the same place and time */
export function makeDriversRoom(ensemble: PreparedEnsemble, skyRoom?: DriversRoom): DriversRoom {
  const own = makeMemberRoom(ensemble);
  return {
    member: skyRoom ? { ...own, light: skyRoom.member.light, airTempC: skyRoom.member.airTempC } : own,
    memberOf: new Int32Array(FACTORS),
    held: Float64Array.of(-1, 0),
    drawn: new Float64Array(FIGURES),
    figureOfFactor: Int32Array.from(DRIVER_FACTORS, (factor) => FIGURE_OF_FACTOR[factor] ?? -1),
    outcome: new Float64Array(OUTCOMES),
    skyOf: skyRoom?.skyOf ?? Int32Array.of(-1),
  };
}

/**
 * Carries a member through the event whose factors are each the one of the member that `room.memberOf` names; with the same
 * member for all of them it is that member, to the last bit.
 * @memberLoop
 */
export function stepDriversMember(ensemble: PreparedEnsemble, room: DriversRoom): void {
  const { words, skies, operators, spread, prepared, seed } = ensemble;
  const { member, memberOf, held, drawn, figureOfFactor, skyOf } = room;
  const { light, airTempC, inputs } = member;
  const { startShare } = prepared.scenario.bank;
  if (skyOf[0] !== memberOf[WEATHER]!) {
    drawSky(skies, words, memberOf[WEATHER]!, light, airTempC);
    requireFedSky(seed, memberOf[WEATHER]!, light, airTempC);
    skyOf[0] = memberOf[WEATHER]!;
  }
  let drawnOf = -1;
  for (let f = 0; f < FACTORS; f++) {
    const figure = figureOfFactor[f]!;
    if (figure < 0) continue;
    if (memberOf[f] !== drawnOf) {
      drawnOf = memberOf[f]!;
      drawFigures(startShare, spread, operators.state, words, drawnOf, drawn);
    }
    inputs.figures[figure] = drawn[figure]!;
  }
  if (held[0]! >= 0) inputs.figures[held[0]!] = held[1]!;
  drawOperators(prepared, operators, words, memberOf[INTENSITY]!, inputs);
  requireFedLoads(seed, memberOf[INTENSITY]!, inputs);
  stepRun(prepared, light, airTempC, inputs, member.run);
  countDriversMember(ensemble, room);
}

/** @memberLoop */
function countDriversMember({ prepared }: PreparedEnsemble, room: DriversRoom): void {
  const { grid, bank, loads, converterShare } = prepared;
  const { run, inputs, light } = room.member;
  const { rows } = run;
  // A charge that is at the reserve apart from rounding holds it.
  const reserveAh = bank.reserveAh - 1e-9 * bank.fullAh;
  const idlePerConverter = inputs.figures[FIGURE_IDLE_SHARE]! / converterShare;
  let lowestAh = run.state[STORED_AH]!;
  let belowFrom = lowestAh < reserveAh ? grid.steps : -1;
  let darkFrom = -1;
  let unservedW = 0;
  let ghiWm2 = 0;
  let sendingW = 0;
  for (let i = grid.steps - 1; i >= 0; i--) {
    const storedAh = rows[i * ROW_SLOTS + ROW_STORED_AH]!;
    if (storedAh < lowestAh) lowestAh = storedAh;
    if (storedAh < reserveAh) belowFrom = i;
    const shortW = rows[i * ROW_SLOTS + ROW_UNSERVED_W]!;
    if (shortW > NOTHING_W) darkFrom = i;
    unservedW += shortW;
    ghiWm2 += light.ghiWm2[i]!;
    sendingW += inputs.wantedW[i]! - loads.quietW[i]! * idlePerConverter;
  }
  room.outcome[OUTCOME_LOWEST_SHARE] = lowestAh / bank.fullAh;
  room.outcome[OUTCOME_BELOW_FROM] = belowFrom;
  room.outcome[OUTCOME_UNSERVED_WH] = unservedW * grid.stepH;
  room.outcome[OUTCOME_DARK_FROM] = darkFrom;
  room.outcome[OUTCOME_LIGHT_WHM2] = ghiWm2 * grid.stepH;
  room.outcome[OUTCOME_SENDING_WH] = sendingW * grid.stepH;
}
