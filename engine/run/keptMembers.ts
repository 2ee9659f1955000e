import { clearFixedPower, type FixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { PLANE_SLOTS } from "../array/planeSlots.ts";
import type { PreparedGroup } from "../array/preparedGroup.ts";
import { stepPlane } from "../array/stepPlane.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { FIGURE_IDLE_SHARE, FIGURE_YIELD_SHARE } from "./memberFigures.ts";
import { type MemberRows, makeMemberShelf } from "./memberShelf.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import { identityOf } from "./reuse.ts";
import type { RunRows } from "./runRows.ts";
import { drawMemberFigures, drawMemberLoads, drawMemberSky, type MemberRoom, stepMember } from "./stepMember.ts";
import { stepOwnFigures, stepPower } from "./stepRun.ts";

/** Draws a member and carries it through the event, as `stepMember` does. */
export type RunMember = (ensemble: PreparedEnsemble, member: number, room: MemberRoom) => void;

/**
 * Members that remember: what the sky of a member was, what each of its panel groups made of it and what its operators wanted is kept, and met
 * again by every scenario that shares them. Whoever changes the bank sees the sky and the panels of the last edit again, to the last bit, and
 * waits for the bank alone.
 * @param mostBytes what may be kept in all; members beyond that are worked out anew each time
 */
export function makeKeptMembers(mostBytes: number): RunMember {
  const shelf = makeMemberShelf(mostBytes);
  const kept = new WeakMap<PreparedEnsemble, KeptParts>();
  return (ensemble, member, room) => {
    // With a selector, every step of every group is written down and none of it stays away from the bank's volts.
    if (ensemble.prepared.selector.inputs > 0) return stepMember(ensemble, member, room);
    let parts = kept.get(ensemble);
    if (parts === undefined) {
      parts = partsOf(ensemble, room, shelf);
      kept.set(ensemble, parts);
    }
    runKept(ensemble, member, room, parts);
  };
}

/** Where the rows of an ensemble's members stand, by what decides them. */
interface KeptParts {
  readonly sky: MemberRows;
  /** One for each panel group: whoever changes one of them meets the others again. */
  readonly groups: readonly MemberRows[];
  readonly wanted: MemberRows;
  /** Room for the power of one group by itself. */
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
    alone: makeFixedPower(prepared.grid.steps, lowestV, highestV),
  };
}

function runKept(ensemble: PreparedEnsemble, member: number, room: MemberRoom, parts: KeptParts): void {
  const { inputs, run } = room;
  drawMemberFigures(ensemble, member, inputs);
  stepOwnFigures(inputs, run.fixed);
  stepOwnFigures(inputs, parts.alone);
  clearFixedPower(run.fixed);
  let hasSky = false;
  for (let g = 0; g < parts.groups.length; g++) {
    const group = parts.groups[g]!;
    const known = group.rowOf(member);
    if (known !== undefined) {
      unpackGroup(known, g, room.run);
      continue;
    }
    if (!hasSky) meetSky(ensemble, member, room, parts.sky);
    hasSky = true;
    stepGroupAlone(ensemble.prepared.groups[g]!, g, room, parts.alone);
    group.keep(member, packedGroupLength(parts.alone), () => packedGroup(run.planes[g]!, parts.alone));
  }
  const wanted = parts.wanted.rowOf(member);
  if (wanted !== undefined) inputs.wantedW.set(wanted);
  else {
    drawMemberLoads(ensemble, member, room);
    parts.wanted.keep(member, inputs.wantedW.length, () => inputs.wantedW.slice());
  }
  stepPower(ensemble.prepared, inputs, run);
}

function meetSky(ensemble: PreparedEnsemble, member: number, room: MemberRoom, kept: MemberRows): void {
  const { light, airTempC } = room;
  const known = kept.rowOf(member);
  if (known !== undefined) unpackSky(known, light, airTempC);
  else {
    drawMemberSky(ensemble, member, room);
    kept.keep(member, 4 * airTempC.length, () => packedSky(light, airTempC));
  }
}

/** One group's work for all steps, by itself in `alone` and on top of the groups before it in `room.run.fixed`. */
function stepGroupAlone(group: PreparedGroup, g: number, room: MemberRoom, alone: FixedPower): void {
  const { light, airTempC, run } = room;
  clearFixedPower(alone);
  stepPlane(group, g, light, airTempC, run.planes[g]!, alone, false);
  const { sumW, hanging } = run.fixed;
  for (let i = 0; i < sumW.length; i++) {
    sumW[i]! += alone.sumW[i]!;
    hanging[i]! |= alone.hanging[i]!;
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

/** A step in which a group hangs on the bank's volts: which it is, then what the sky makes of the group. */
const HANGING_SLOTS = 1 + PLANE_SLOTS;

function packedGroupLength({ sumW, hanging }: FixedPower): number {
  let steps = 0;
  for (let i = 0; i < hanging.length; i++) if (hanging[i] !== 0) steps++;
  return sumW.length + steps * HANGING_SLOTS;
}

/** The fixed powers of all steps, then the steps in which it hangs. */
function packedGroup(plane: Float64Array, alone: FixedPower): Float64Array {
  const { sumW, hanging } = alone;
  const row = new Float64Array(packedGroupLength(alone));
  row.set(sumW);
  let at = sumW.length;
  for (let i = 0; i < hanging.length; i++) {
    if (hanging[i] === 0) continue;
    row[at] = i;
    row.set(plane.subarray(i * PLANE_SLOTS, (i + 1) * PLANE_SLOTS), at + 1);
    at += HANGING_SLOTS;
  }
  return row;
}

function unpackGroup(row: Float64Array, g: number, { planes, fixed }: RunRows): void {
  const { sumW, hanging } = fixed;
  const plane = planes[g]!;
  for (let i = 0; i < sumW.length; i++) sumW[i]! += row[i]!;
  for (let at = sumW.length; at < row.length; at += HANGING_SLOTS) {
    const i = row[at]!;
    hanging[i]! |= 1 << g;
    for (let slot = 0; slot < PLANE_SLOTS; slot++) plane[i * PLANE_SLOTS + slot] = row[at + 1 + slot]!;
  }
}
