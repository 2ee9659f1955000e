import { PLANE_SLOTS } from "../array/planeSlots.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { FIGURE_IDLE_SHARE, FIGURE_YIELD_SHARE } from "./memberFigures.ts";
import { INPUT_WANTED_W, type MemberInputs } from "./memberInputs.ts";
import { type MemberRows, makeMemberShelf } from "./memberShelf.ts";
import type { PreparedEnsemble } from "./prepareEnsemble.ts";
import { identityOf } from "./reuse.ts";
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
    unpackPanels(panels, room);
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
    parts.panels.keep(member, packedPanelsLength(room), () => packedPanels(room));
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

/**
 * A step that hangs on the bank's volts: which it is, its groups' bits, and of each of these groups what the sky makes of it and what it looks
 * up once more when the volts are known, its shade under this member's crowns.
 */
const HANGING_HEAD = 2;

function packedPanelsLength({ prepared, run }: MemberRoom): number {
  let length = run.fixed.sumW.length;
  for (const bits of run.fixed.hanging) {
    if (bits === 0) continue;
    length += HANGING_HEAD;
    for (let g = 0; g < prepared.groups.length; g++) {
      if (((bits >> g) & 1) === 1) length += PLANE_SLOTS + prepared.groups[g]!.stride;
    }
  }
  return length;
}

/** The fixed powers of all steps, then the steps that hang. */
function packedPanels(room: MemberRoom): Float64Array {
  const { fixed, planes } = room.run;
  const { sumW, hanging } = fixed;
  const { groups } = room.prepared;
  const row = new Float64Array(packedPanelsLength(room));
  row.set(sumW);
  let at = sumW.length;
  for (const [i, bits] of hanging.entries()) {
    if (bits === 0) continue;
    row[at] = i;
    row[at + 1] = bits;
    at += HANGING_HEAD;
    for (const [g, { perStep, stride }] of groups.entries()) {
      if (((bits >> g) & 1) === 0) continue;
      row.set(planes[g]!.subarray(i * PLANE_SLOTS, (i + 1) * PLANE_SLOTS), at);
      row.set(perStep.subarray(i * stride, (i + 1) * stride), at + PLANE_SLOTS);
      at += PLANE_SLOTS + stride;
    }
  }
  return row;
}

function unpackPanels(row: Float64Array, room: MemberRoom): void {
  const { fixed, planes } = room.run;
  const { sumW, hanging } = fixed;
  const { groups } = room.prepared;
  sumW.set(row.subarray(0, sumW.length));
  hanging.fill(0);
  let at = sumW.length;
  while (at < row.length) {
    const i = row[at]!;
    const bits = row[at + 1]!;
    hanging[i] = bits;
    at += HANGING_HEAD;
    for (let g = 0; g < groups.length; g++) {
      if (((bits >> g) & 1) === 0) continue;
      const plane = planes[g]!;
      const { perStep, stride } = groups[g]!;
      for (let slot = 0; slot < PLANE_SLOTS; slot++) plane[i * PLANE_SLOTS + slot] = row[at + slot]!;
      at += PLANE_SLOTS;
      for (let slot = 0; slot < stride; slot++) perStep[i * stride + slot] = row[at + slot]!;
      at += stride;
    }
  }
}
