import type { GroupDetail } from "../array/groupDetail.ts";
import { groupBusW } from "../array/stepGroup.ts";
import { chargeA, drawA, openCircuitV, peukertFactorAt } from "../bank/bankVoltage.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import type { Prepared } from "./prepare.ts";
import type { RunRecord } from "./runRecord.ts";

/**
 * Carries one member through the whole event: in every step the sun is offered, sources that may run are offered, the loads
 * take what they want, and the bank takes or gives the rest within its limits. Solar goes first, sources fill up what is
 * left. What cannot be used is spilled and what cannot be had is unserved; both are counted.
 *
 * In every step: solar − spilled + sources + bank discharge = served + bank charge.
 * @param light the member's sky; one value per step
 * @param airTempC the member's air; one value per step
 * @param record where everything is written
 * @param details one per panel group, filled in when given (a single trace); ensembles leave it out
 */
export function stepRun(
  prepared: Prepared,
  light: SkyLight,
  airTempC: Float64Array,
  record: RunRecord,
  details?: readonly GroupDetail[],
): void {
  const { bank, groups, sources, loads, selector, grid } = prepared;
  const steps = grid.steps;
  const stepH = grid.stepH;
  record.storedAh[0] = bank.startAh;
  for (let s = 0; s < sources.length; s++) {
    record.runs[s] = 0;
    record.fuelLeftL[s] = sources[s]!.fuelL;
  }
  let lastA = 0;
  let connected = true;
  for (let i = 0; i < steps; i++) {
    const storedAh = record.storedAh[i]!;
    const openV = openCircuitV(bank, storedAh);
    // Controllers see the bank as the last step left it: its open-circuit volts and what the current adds or takes.
    const atBankV = Math.min(
      bank.absorptionV,
      Math.max(0.5 * openV, openV + lastA * (lastA > 0 ? bank.chargingOhm : bank.internalOhm)),
    );

    for (let input = 0; input < selector.inputs; input++) record.inputW[input] = 0;
    for (let g = 0; g < groups.length; g++) {
      const busW = groupBusW(groups[g]!, i, light, airTempC, atBankV, details === undefined ? undefined : details[g]!);
      record.groupW[g * steps + i] = busW;
      const input = selector.inputOfGroup[g]!;
      if (input >= 0) record.inputW[input]! += busW;
    }
    for (let s = 0; s < sources.length; s++) {
      const offeredW = stepSource(prepared, record, s, i, storedAh / bank.fullAh, openV, atBankV);
      record.offeredW[s] = offeredW;
      const input = selector.inputOfSource[s]!;
      if (input >= 0) record.inputW[input]! += offeredW;
    }
    let winner = -1;
    for (let input = 0; input < selector.inputs; input++) {
      if (winner < 0 || record.inputW[input]! > record.inputW[winner]!) winner = input;
    }
    let solarW = 0;
    let shutOutW = 0;
    for (let g = 0; g < groups.length; g++) {
      const input = selector.inputOfGroup[g]!;
      if (input < 0 || input === winner) solarW += record.groupW[g * steps + i]!;
      else shutOutW += record.groupW[g * steps + i]!;
    }
    let sourcesW = 0;
    for (let s = 0; s < sources.length; s++) {
      const input = selector.inputOfSource[s]!;
      if (input >= 0 && input !== winner) record.offeredW[s] = 0;
      sourcesW += record.offeredW[s]!;
    }

    const wantedW = loads.wantedW[i]! / prepared.converterShare;
    const missingAh = Math.max(0, bank.fullAh - storedAh);
    const headroomV = bank.absorptionV - openV;
    let acceptA = Math.min(bank.maxChargeA[i]!, bank.acceptancePerH * missingAh);
    if (headroomV <= 0) acceptA = 0;
    else if (bank.chargingOhm > 0) acceptA = Math.min(acceptA, headroomV / bank.chargingOhm);
    const acceptW = acceptA * (openV + bank.chargingOhm * acceptA);

    // The disconnect opens on volts under load and closes again only when the bank has visibly recovered.
    const withoutLoadsW = solarW + sourcesW - prepared.controllersW;
    const underLoadW = withoutLoadsW - wantedW;
    const underLoadV = underLoadW >= 0 ? openV : openV - bank.internalOhm * drawA(openV, bank.internalOhm, -underLoadW);
    if (connected) {
      connected = underLoadV >= bank.disconnectV;
    } else if (underLoadV >= bank.disconnectV) {
      const chargingW = Math.max(0, Math.min(withoutLoadsW, acceptW));
      connected = openV + bank.chargingOhm * chargeA(openV, bank.chargingOhm, chargingW) >= bank.reconnectV;
    }
    const drawnW = connected ? wantedW : 0;
    const demandW = wantedW + prepared.controllersW;
    const netW = withoutLoadsW - drawnW;

    let unservedW = wantedW - drawnW;
    let spilledW = shutOutW;
    let fromSourcesW = sourcesW;
    let bankW = 0;
    let bankA = 0;
    let bankV = openV;
    let nextAh = storedAh;
    if (netW >= 0) {
      bankW = Math.min(netW, acceptW);
      // The voltage halfway through the step, so that a long step on a steep part of the curve counts right.
      const firstA = chargeA(openV, bank.chargingOhm, bankW);
      const midV = openCircuitV(bank, Math.min(bank.fullAh, storedAh + 0.5 * firstA * bank.coulombicShare * stepH));
      bankA = Math.min(acceptA, chargeA(midV, bank.chargingOhm, bankW));
      bankV = midV + bank.chargingOhm * bankA;
      // Where the acceptance is met, power follows from current and not the other way round.
      bankW = Math.min(bankW, bankA * bankV);
      nextAh = Math.min(bank.fullAh, storedAh + bankA * bank.coulombicShare * stepH);
      const neededW = prepared.controllersW + drawnW + bankW;
      const solarUsedW = Math.min(solarW, neededW);
      spilledW += solarW - solarUsedW;
      fromSourcesW = neededW - solarUsedW;
    } else {
      const deficitW = -netW;
      const firstA = drawA(openV, bank.internalOhm, deficitW);
      const reachableAh = Math.max(0, storedAh - bank.floorAh[i]!);
      const midAh = Math.max(0, storedAh - 0.5 * Math.min(reachableAh, firstA * peukertFactorAt(bank, firstA) * stepH));
      const midV = openCircuitV(bank, midAh);
      bankA = Math.min(bank.maxDischargeA, drawA(midV, bank.internalOhm, deficitW));
      bankA = Math.min(bankA, reachableAh / (stepH * peukertFactorAt(bank, bankA)));
      bankV = midV - bank.internalOhm * bankA;
      const givenW = Math.min(deficitW, bankA * bankV);
      nextAh = Math.max(0, storedAh - bankA * peukertFactorAt(bank, bankA) * stepH);
      unservedW += deficitW - givenW;
      bankW = -givenW;
      bankA = -bankA;
    }
    stepFuel(prepared, record, i, sourcesW, fromSourcesW);

    record.storedAh[i + 1] = nextAh;
    record.solarW[i] = solarW + shutOutW;
    record.spilledW[i] = spilledW;
    record.demandW[i] = demandW;
    record.servedW[i] = demandW - unservedW;
    record.unservedW[i] = unservedW;
    record.bankW[i] = bankW;
    record.bankA[i] = bankA;
    record.bankV[i] = bankV;
    record.connected[i] = connected ? 1 : 0;
    for (let s = 0; s < loads.stations.length; s++) {
      record.radioV[s * steps + i] = connected ? stepRadioV(prepared, s, i, openV, bankV, solarW + fromSourcesW) : 0;
    }
    lastA = bankA;
  }
}

/**
 * What a source could give in step `i`, W. A generator is started at or below its start charge and runs until its stop
 * charge, the end of the allowed hours or the end of its fuel.
 */
function stepSource(
  prepared: Prepared,
  record: RunRecord,
  s: number,
  i: number,
  chargeShare: number,
  openV: number,
  atBankV: number,
): number {
  const source = prepared.sources[s]!;
  const share = source.availableShare[i]!;
  let hoursShare = share;
  if (source.isGenerator) {
    const mayRun = share > 0 && record.fuelLeftL[s]! > 0;
    const wants = record.runs[s]! > 0 ? chargeShare < source.stopShare : chargeShare <= source.startShare;
    record.runs[s] = mayRun && wants ? 1 : 0;
    if (record.runs[s] === 0) hoursShare = 0;
  }
  const headroomV = source.chargeV - openV;
  if (hoursShare <= 0 || headroomV <= 0) return 0;
  const ohm = prepared.bank.chargingOhm;
  const currentA = ohm > 0 ? Math.min(source.maxA, headroomV / ohm) : source.maxA;
  const powerW = Math.min(source.maxW, currentA * atBankV);
  if (source.isGenerator) {
    const burnLPerH = source.burnIdleLPerH + source.burnLPerWh * powerW;
    const fullStepL = burnLPerH * hoursShare * prepared.grid.stepH;
    if (fullStepL > record.fuelLeftL[s]!) hoursShare *= record.fuelLeftL[s]! / fullStepL;
  }
  return powerW * hoursShare;
}

/** Shares out what was taken from the sources, in proportion to what they offered, and counts the fuel. */
function stepFuel(prepared: Prepared, record: RunRecord, i: number, offeredW: number, takenW: number): void {
  const { sources, grid } = prepared;
  const takenShare = offeredW > 0 ? Math.min(1, takenW / offeredW) : 0;
  for (let s = 0; s < sources.length; s++) {
    const source = sources[s]!;
    const sourceW = record.offeredW[s]! * takenShare;
    record.sourceW[s * grid.steps + i] = sourceW;
    let burntL = 0;
    if (source.isGenerator && record.runs[s]! > 0) {
      burntL = (source.burnIdleLPerH * source.availableShare[i]! + source.burnLPerWh * sourceW) * grid.stepH;
      burntL = Math.min(burntL, record.fuelLeftL[s]!);
      record.fuelLeftL[s]! -= burntL;
    }
    record.fuelL[s * grid.steps + i] = burntL;
  }
}

/**
 * Volts at a radio's socket when it and all that may send with it are at their peak: the bank's open-circuit volts less
 * what the peak current takes in the bank, less what the radio's own current takes in its feed.
 */
function stepRadioV(prepared: Prepared, s: number, i: number, openV: number, bankV: number, chargingW: number): number {
  const { bank, loads } = prepared;
  const station = loads.stations[s]!;
  if (station.staffedShare[i]! <= 0) return 0;
  const peakW =
    (loads.quietW[i]! + station.peakTogetherW[i]!) / prepared.converterShare + prepared.controllersW - chargingW;
  let atBankV = Math.max(openV, bankV);
  if (peakW > 0) atBankV = openV - bank.internalOhm * drawA(openV, bank.internalOhm, peakW);
  const supplyV = prepared.converterV > 0 ? prepared.converterV : atBankV;
  return supplyV - prepared.feedOhm[s]! * station.peakA;
}
