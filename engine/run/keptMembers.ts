import { PLANE_SLOTS } from "../array/planeSlots.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { FIGURE_IDLE_SHARE, FIGURE_YIELD_SHARE } from "./memberFigures.ts";
import { INPUT_WANTED_W, type MemberInputs } from "./memberInputs.ts";
import { type MemberRows, makeMemberShelf } from "./memberShelf.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import { identityOf } from "./reuse.ts";
import type { RunRows } from "./runRows.ts";
import {
  drawMemberFigures,
  drawMemberLoads,
  drawMemberSky,
  type MemberRoom,
  stepCanopy,
  stepMember,
} from "./stepMember.ts";
import { stepPanels, stepPower } from "./stepRun.ts";

/** Draws a member and carries it through the event, as `stepMember` does. */
export type RunMember = (ensemble: PreparedEnsemble, member: number, room: MemberRoom) => void;

/**
 * Members that remember: what the sky of a member was, what its panels made of it and what its operators wanted is kept, and met again
 * by every scenario that shares them. Whoever changes the bank sees the sky and the panels of the last edit again, to the last bit, and waits
 * for the bank alone.
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
  readonly panels: MemberRows;
  readonly wanted: MemberRows;
}

function partsOf(ensemble: PreparedEnsemble, room: MemberRoom, shelf: (key: string) => MemberRows): KeptParts {
  const { prepared, skies, operators, seed, spread, canopy } = ensemble;
  const under = [seed, identityOf(skies)];
  const crowns = canopy === null ? [] : [canopy.darker, canopy.lighter];
  const groups = [prepared.groups, ...crowns].map((each) => each.map(identityOf));
  const { lowestV, highestV } = room.run.fixed;
  const panels = [under, groups, spread[FIGURE_YIELD_SHARE], lowestV, highestV];
  const wanted = [seed, identityOf(operators), identityOf(prepared.loads), prepared.converterShare];
  return {
    sky: shelf(JSON.stringify(["sky", under])),
    panels: shelf(JSON.stringify(["panels", panels])),
    wanted: shelf(JSON.stringify(["wanted", wanted, spread[FIGURE_IDLE_SHARE]])),
  };
}

function runKept(ensemble: PreparedEnsemble, member: number, room: MemberRoom, parts: KeptParts): void {
  const { inputs, run, light, airTempC } = room;
  drawMemberFigures(ensemble, member, inputs);
  const panels = parts.panels.rowOf(member);
  if (panels !== undefined) {
    // Groups that hang on the bank's volts look at their crowns once more.
    if (unpackPanels(panels, run)) stepCanopy(ensemble, inputs.figures);
    run.fixed.yieldShare[0] = inputs.figures[FIGURE_YIELD_SHARE]!;
  } else {
    const sky = parts.sky.rowOf(member);
    if (sky !== undefined) unpackSky(sky, light, airTempC);
    else {
      drawMemberSky(ensemble, member, room);
      parts.sky.keep(member, 4 * airTempC.length, () => packedSky(light, airTempC));
    }
    stepCanopy(ensemble, inputs.figures);
    stepPanels(room.prepared, light, airTempC, inputs, run);
    parts.panels.keep(member, packedPanelsLength(run), () => packedPanels(run));
  }
  const wanted = parts.wanted.rowOf(member);
  if (wanted !== undefined) unpackWanted(wanted, inputs);
  else {
    drawMemberLoads(ensemble, member, room);
    parts.wanted.keep(member, airTempC.length, () => packedWanted(inputs));
  }
  stepPower(room.prepared, inputs, run);
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

function packedWanted({ rows, stride }: MemberInputs): Float64Array {
  return Float64Array.from({ length: rows.length / stride }, (_, i) => rows[i * stride + INPUT_WANTED_W]!);
}

function unpackWanted(wanted: Float64Array, { rows, stride }: MemberInputs): void {
  for (let i = 0; i < wanted.length; i++) rows[i * stride + INPUT_WANTED_W] = wanted[i]!;
}

/** A step that hangs on the bank's volts: which it is, its groups' bits, and what the sky makes of each of them. */
const HANGING_HEAD = 2;

function packedPanelsLength({ fixed, planes }: RunRows): number {
  let length = fixed.sumW.length;
  for (const bits of fixed.hanging) {
    if (bits !== 0) length += HANGING_HEAD + PLANE_SLOTS * groupsIn(bits, planes.length);
  }
  return length;
}

function groupsIn(bits: number, groups: number): number {
  let count = 0;
  for (let g = 0; g < groups; g++) count += (bits >> g) & 1;
  return count;
}

/** The fixed powers of all steps, then the steps that hang. */
function packedPanels(run: RunRows): Float64Array {
  const { sumW, hanging } = run.fixed;
  const row = new Float64Array(packedPanelsLength(run));
  row.set(sumW);
  let at = sumW.length;
  hanging.forEach((bits, i) => {
    if (bits === 0) return;
    row[at] = i;
    row[at + 1] = bits;
    at += HANGING_HEAD;
    run.planes.forEach((plane, g) => {
      if (((bits >> g) & 1) === 0) return;
      row.set(plane.subarray(i * PLANE_SLOTS, (i + 1) * PLANE_SLOTS), at);
      at += PLANE_SLOTS;
    });
  });
  return row;
}

/** @returns whether any step hangs on the bank's volts */
function unpackPanels(row: Float64Array, { fixed, planes }: RunRows): boolean {
  const { sumW, hanging } = fixed;
  sumW.set(row.subarray(0, sumW.length));
  hanging.fill(0);
  let at = sumW.length;
  while (at < row.length) {
    const i = row[at]!;
    const bits = row[at + 1]!;
    hanging[i] = bits;
    at += HANGING_HEAD;
    for (let g = 0; g < planes.length; g++) {
      if (((bits >> g) & 1) === 0) continue;
      const plane = planes[g]!;
      for (let slot = 0; slot < PLANE_SLOTS; slot++) plane[i * PLANE_SLOTS + slot] = row[at + slot]!;
      at += PLANE_SLOTS;
    }
  }
  return row.length > sumW.length;
}
