import { stepGroup } from "../array/stepGroup.ts";
import { writeDetail } from "../array/writeDetail.ts";
import { currentForVolts } from "../bank/acceptance.ts";
import { chargingV } from "../bank/bankVoltage.ts";
import type { Prepared } from "./prepare.ts";
import type { RunDetails } from "./runDetails.ts";
import type { RunRows } from "./runRows.ts";
import {
  AT_BANK_V,
  CHARGING_OHM,
  INTERNAL_OHM,
  LAST_A,
  OFFERED_W,
  OPEN_V,
  POLARISATION_V,
  SHUT_OUT_W,
  SOLAR_W,
  STATE_SLOTS,
  STORED_AH,
} from "./stepState.ts";

/**
 * What the sun and the other sources could give the bank in a step, and which of them the selector lets pass, into `run.state`. Called only
 * where the bank's volts or a source matter, or a reader asks for everything; otherwise `run.fixed.sumW` is all there is.
 */
export function stepOffers(
  prepared: Prepared,
  i: number,
  lane: number,
  run: RunRows,
  noteAll: boolean,
  details: RunDetails | undefined,
): void {
  const { bank, groups, sources } = prepared;
  const { state, parts, offeredW } = run;
  const cell = lane * prepared.grid.steps + i;
  const now = lane * STATE_SLOTS;
  const firstGroup = cell * run.partStride;
  const openV = state[now + OPEN_V]!;
  // Controllers see the bank as the last step left it: its open-circuit volts and what the current adds or takes. None works
  // below the lowest volts of a bank that is to be called one.
  const lastA = state[now + LAST_A]!;
  const addedV =
    lastA > 0
      ? chargingV(lastA, state[now + CHARGING_OHM]!, state[now + POLARISATION_V]!, bank.polarisationA)
      : lastA * state[now + INTERNAL_OHM]!;
  const seenV = openV + addedV;
  state[now + AT_BANK_V] = Math.min(bank.absorptionV, Math.max(run.fixed.lowestV, seenV));

  const { fixed } = run;
  const coupled = fixed.coupled[cell]!;
  // Summed in the same order whether everything is noted or not, so that a member's trace is the member to the last bit.
  let solarW = fixed.sumW[cell]!;
  if (noteAll || coupled !== 0) {
    for (let g = 0; g < groups.length; g++) {
      const isCoupled = (coupled & (1 << g)) !== 0;
      if (!noteAll && !isCoupled) continue;
      stepGroup(groups[g]!, i, lane, cell, run.planes[g]!, state, now + AT_BANK_V, parts, firstGroup + g, fixed);
      if (details !== undefined) stepDetail(prepared, i, g, run, details);
      if (isCoupled) solarW += parts[firstGroup + g]!;
    }
  }
  let sourcesW = 0;
  for (let s = 0; s < sources.length; s++) {
    stepSource(prepared, run, lane, s, i);
    sourcesW += offeredW[s]!;
  }
  state[now + SOLAR_W] = solarW;
  state[now + SHUT_OUT_W] = 0;
  state[now + OFFERED_W] = sourcesW;
  if (prepared.selector.inputs > 0) stepSelector(prepared, run, firstGroup, now);
}

/** Notes a group's step; a trace has one lane. */
function stepDetail(prepared: Prepared, i: number, g: number, run: RunRows, details: RunDetails): void {
  const { state, parts } = run;
  const at = i * run.partStride + g;
  const group = prepared.groups[g]!;
  writeDetail(
    group,
    i,
    run.planes[g]!,
    details.freePlanes[g]!,
    state,
    AT_BANK_V,
    parts,
    at,
    run.fixed,
    details.groups[g]!,
  );
}

/** Lets the largest of the selector's inputs pass and shuts the others out. */
function stepSelector(prepared: Prepared, run: RunRows, firstGroup: number, now: number): void {
  const { groups, sources, selector } = prepared;
  const { state, parts, inputW, offeredW } = run;
  for (let input = 0; input < selector.inputs; input++) inputW[input] = 0;
  for (let g = 0; g < groups.length; g++) {
    const input = selector.inputOfGroup[g]!;
    if (input >= 0) inputW[input]! += parts[firstGroup + g]!;
  }
  for (let s = 0; s < sources.length; s++) {
    const input = selector.inputOfSource[s]!;
    if (input >= 0) inputW[input]! += offeredW[s]!;
  }
  let winner = 0;
  for (let input = 1; input < selector.inputs; input++) {
    if (inputW[input]! > inputW[winner]!) winner = input;
  }
  let shutOutW = 0;
  for (let g = 0; g < groups.length; g++) {
    const input = selector.inputOfGroup[g]!;
    if (input >= 0 && input !== winner) shutOutW += parts[firstGroup + g]!;
  }
  let sourcesW = 0;
  for (let s = 0; s < sources.length; s++) {
    const input = selector.inputOfSource[s]!;
    if (input >= 0 && input !== winner) offeredW[s] = 0;
    sourcesW += offeredW[s]!;
  }
  state[now + SOLAR_W] = Math.max(0, state[now + SOLAR_W]! - shutOutW);
  state[now + SHUT_OUT_W] = shutOutW;
  state[now + OFFERED_W] = sourcesW;
}

/**
 * What a source could give in step `i`, W, into `run.offeredW`. A generator is started at or below its start charge and
 * runs until its stop charge, the end of the allowed hours or the end of its fuel.
 */
function stepSource(prepared: Prepared, run: RunRows, lane: number, s: number, i: number): void {
  const source = prepared.sources[s]!;
  const { state, runs, fuelLeftL, offeredW } = run;
  const now = lane * STATE_SLOTS;
  const own = lane * prepared.sources.length + s;
  const share = source.availableShare[i]!;
  let hoursShare = share;
  if (source.isGenerator) {
    const chargeShare = state[now + STORED_AH]! / prepared.bank.fullAh;
    const mayRun = share > 0 && fuelLeftL[own]! > 0;
    const wants = runs[own]! > 0 ? chargeShare < source.stopShare : chargeShare <= source.startShare;
    runs[own] = mayRun && wants ? 1 : 0;
    if (runs[own] === 0) hoursShare = 0;
  }
  const headroomV = source.chargeV - state[now + OPEN_V]!;
  if (hoursShare <= 0 || headroomV <= 0) {
    offeredW[s] = 0;
    return;
  }
  const { polarisationA } = prepared.bank;
  const currentA = Math.min(
    source.maxA,
    currentForVolts(headroomV, state[now + CHARGING_OHM]!, state[now + POLARISATION_V]!, polarisationA),
  );
  const powerW = Math.min(source.maxW, currentA * state[now + AT_BANK_V]!);
  if (source.isGenerator) {
    const burnLPerH = source.burnIdleLPerH + source.burnLPerWh * powerW;
    const fullStepL = burnLPerH * hoursShare * prepared.grid.stepH;
    if (fullStepL > fuelLeftL[own]!) hoursShare *= fuelLeftL[own]! / fullStepL;
  }
  offeredW[s] = powerW * hoursShare;
}
