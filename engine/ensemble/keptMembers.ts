import { clearFixedPower, type FixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { PLANE_SLOTS } from "../array/planeSlots.ts";
import type { PreparedGroup } from "../array/preparedGroup.ts";
import { stepPlane } from "../array/stepPlane.ts";
import { FIGURE_IDLE_SHARE, FIGURE_YIELD_SHARE } from "../run/memberFigures.ts";
import { identityOf } from "../run/reuse.ts";
import type { RunRows } from "../run/runRows.ts";
import { stepLaneFigures, stepLaneLight, stepLaneWanted, stepPower } from "../run/stepRun.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { type MemberRows, makeMemberShelf } from "./memberShelf.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import {
  drawMemberFigures,
  drawMemberLoads,
  drawMemberSky,
  type MemberRoom,
  type StepMembers,
  stepMembers,
} from "./stepMember.ts";

/**
 * Members that remember: what the sky of a member was, what each of its panel groups made of it and what its operators wanted is kept, and met
 * again by every scenario that shares them. Whoever changes the bank sees the sky and the panels of the last edit again, to the last bit, and
 * waits for the bank alone.
 * @param mostBytes what may be kept in all; members beyond that are worked out again each time
 */
export function makeKeptMembers(mostBytes: number): StepMembers {
  const shelf = makeMemberShelf(mostBytes);
  const kept = new WeakMap<PreparedEnsemble, KeptParts>();
  return (ensemble, from, count, room) => {
    // With a selector, every step of every group is written down and none of it stays away from the bank's volts.
    if (ensemble.prepared.selector.inputs > 0) return stepMembers(ensemble, from, count, room);
    let parts = kept.get(ensemble);
    if (parts === undefined) {
      parts = partsOf(ensemble, room, shelf);
      kept.set(ensemble, parts);
    }
    runKept(ensemble, from, count, room, parts);
  };
}

/** Where the rows of an ensemble's members stand, by what decides them. */
interface KeptParts {
  readonly sky: MemberRows;
  /** One for each panel group: whoever changes one of them meets the others again. */
  readonly groups: readonly MemberRows[];
  readonly wanted: MemberRows;
  /** Room for the power of one group by itself, in as many lanes as the members have. */
  readonly alone: FixedPower;
}

function partsOf(ensemble: PreparedEnsemble, room: MemberRoom, shelf: (key: string) => MemberRows): KeptParts {
  const { prepared, skies, operators, seed, spread } = ensemble;
  const under = [seed, identityOf(skies)];
  const { lowestV, highestV } = room.run.fixed;
  // A group is prepared together with what it is under denser and thinner crowns: it stands for them.
  const groups = prepared.groups.map((group) =>
    shelf(JSON.stringify(["group", under, identityOf(group), spread[FIGURE_YIELD_SHARE], lowestV, highestV])),
  );
  const wanted = [seed, identityOf(operators), identityOf(prepared.loads), prepared.converterShare];
  return {
    sky: shelf(JSON.stringify(["sky", under])),
    groups,
    wanted: shelf(JSON.stringify(["wanted", wanted, spread[FIGURE_IDLE_SHARE]])),
    alone: makeFixedPower(prepared.grid.steps, lowestV, highestV, room.run.lanes),
  };
}

function runKept(ensemble: PreparedEnsemble, from: number, count: number, room: MemberRoom, parts: KeptParts): void {
  const { inputs, run } = room;
  const { prepared } = ensemble;
  for (let lane = 0; lane < count; lane++) {
    drawMemberFigures(ensemble, from + lane, inputs);
    stepLaneFigures(prepared, inputs.figures, run, lane);
    const wanted = parts.wanted.rowOf(from + lane);
    if (wanted === undefined) {
      drawMemberLoads(ensemble, from + lane, room);
      parts.wanted.keep(from + lane, inputs.wantedW.length, () => inputs.wantedW.slice());
    }
    stepLaneWanted(wanted ?? inputs.wantedW, run, lane);
  }
  clearFixedPower(run.fixed);
  let hasSky = false;
  for (let g = 0; g < parts.groups.length; g++) {
    const group = parts.groups[g]!;
    if (unpackLanes(group, g, from, count, run)) continue;
    if (!hasSky) for (let lane = 0; lane < count; lane++) meetSky(ensemble, from + lane, room, lane, parts.sky);
    hasSky = true;
    stepGroupAlone(prepared.groups[g]!, g, count, run, parts.alone);
    for (let lane = 0; lane < count; lane++) {
      const length = packedGroupLength(lane, run, parts.alone);
      group.keep(from + lane, length, () => packedGroup(g, lane, length, run, parts.alone));
    }
  }
  stepPower(prepared, run, count, 0);
}

/** The member's sky in its lane. */
function meetSky(ensemble: PreparedEnsemble, member: number, room: MemberRoom, lane: number, kept: MemberRows): void {
  const { light, airTempC } = room;
  const known = kept.rowOf(member);
  if (known !== undefined) unpackSky(known, light, airTempC);
  else {
    drawMemberSky(ensemble, member, room);
    kept.keep(member, 4 * airTempC.length, () => packedSky(light, airTempC));
  }
  stepLaneLight(ensemble.prepared, light, airTempC, room.run, lane);
}

/** One group's work for all steps, by itself in `alone` and on top of the groups before it in `run.fixed`. */
function stepGroupAlone(group: PreparedGroup, g: number, lanes: number, run: RunRows, alone: FixedPower): void {
  clearFixedPower(alone);
  alone.ofMember.set(run.fixed.ofMember);
  stepPlane(group, g, run.light, lanes, run.planes[g]!, alone, false);
  const { sumW, coupled } = run.fixed;
  const cells = lanes * (sumW.length / run.lanes);
  for (let cell = 0; cell < cells; cell++) {
    sumW[cell]! += alone.sumW[cell]!;
    coupled[cell]! |= alone.coupled[cell]!;
  }
}

function packedSky({ ghiWm2, dniWm2, dhiWm2 }: SkyLight, airTempC: Float64Array): Float64Array {
  const steps = airTempC.length;
  const row = new Float64Array(4 * steps);
  for (const [k, each] of [ghiWm2, dniWm2, dhiWm2, airTempC].entries()) row.set(each, k * steps);
  return row;
}

function unpackSky(row: Float64Array, { ghiWm2, dniWm2, dhiWm2 }: SkyLight, airTempC: Float64Array): void {
  const steps = airTempC.length;
  ghiWm2.set(row.subarray(0, steps));
  dniWm2.set(row.subarray(steps, 2 * steps));
  dhiWm2.set(row.subarray(2 * steps, 3 * steps));
  airTempC.set(row.subarray(3 * steps));
}

/** A step in which a group depends on the bank's volts: which it is, then what the sky makes of the group. */
const COUPLED_SLOTS = 1 + PLANE_SLOTS;

function packedGroupLength(lane: number, { lanes }: RunRows, { sumW, coupled }: FixedPower): number {
  const steps = sumW.length / lanes;
  let coupledSteps = 0;
  for (let cell = lane * steps; cell < (lane + 1) * steps; cell++) if (coupled[cell] !== 0) coupledSteps++;
  return steps + coupledSteps * COUPLED_SLOTS;
}

/** The fixed powers of all steps of a lane, then the steps in which the group depends on the bank's volts. */
function packedGroup(
  g: number,
  lane: number,
  length: number,
  { lanes, planes }: RunRows,
  alone: FixedPower,
): Float64Array {
  const { sumW, coupled } = alone;
  const steps = sumW.length / lanes;
  const first = lane * steps;
  const row = new Float64Array(length);
  row.set(sumW.subarray(first, first + steps));
  let at = steps;
  for (let i = 0; i < steps; i++) {
    if (coupled[first + i] === 0) continue;
    row[at] = i;
    row.set(planes[g]!.subarray((first + i) * PLANE_SLOTS, (first + i + 1) * PLANE_SLOTS), at + 1);
    at += COUPLED_SLOTS;
  }
  return row;
}

/** Puts what is kept of a group on top of the groups before it, if it is kept for all of these members. */
function unpackLanes(group: MemberRows, g: number, from: number, count: number, run: RunRows): boolean {
  for (let lane = 0; lane < count; lane++) if (group.rowOf(from + lane) === undefined) return false;
  for (let lane = 0; lane < count; lane++) unpackGroup(group.rowOf(from + lane)!, g, lane, run);
  return true;
}

function unpackGroup(row: Float64Array, g: number, lane: number, { lanes, planes, fixed }: RunRows): void {
  const { sumW, coupled } = fixed;
  const plane = planes[g]!;
  const steps = sumW.length / lanes;
  const first = lane * steps;
  for (let i = 0; i < steps; i++) sumW[first + i]! += row[i]!;
  for (let at = steps; at < row.length; at += COUPLED_SLOTS) {
    const cell = first + row[at]!;
    coupled[cell]! |= 1 << g;
    for (let slot = 0; slot < PLANE_SLOTS; slot++) plane[cell * PLANE_SLOTS + slot] = row[at + 1 + slot]!;
  }
}
