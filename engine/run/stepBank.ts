import { chargeA, drawA, peukertFactorAt } from "../bank/bankVoltage.ts";
import { CURVE_STEPS } from "../bank/prepareBank.ts";
import { FIGURE_CAPACITY_SHARE } from "./memberFigures.ts";
import { INPUT_FLOOR_AH, INPUT_MAX_CHARGE_A, type MemberInputs } from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";
import type { RunDetails } from "./runDetails.ts";
import {
  ROW_BANK_A,
  ROW_BANK_V,
  ROW_BANK_W,
  ROW_CONNECTED,
  ROW_DEMAND_W,
  ROW_SOLAR_W,
  ROW_SPILLED_W,
  ROW_STORED_AH,
  ROW_UNSERVED_W,
  type RunRows,
} from "./runRows.ts";
import { stepOffers } from "./stepOffers.ts";
import { stepRadios } from "./stepRadios.ts";
import { CONNECTED, LAST_A, OFFERED_W, OPEN_V, SHUT_OUT_W, SOLAR_W, STORED_AH, TAKEN_W } from "./stepState.ts";

/**
 * Carries the bank from step `first` to the end of the event: in each step the sun and the sources offer, the loads take, the bank takes
 * or gives the rest, the radios are asked for their volts, and everything is counted.
 *
 * One loop, and what runs from step to step kept out of arrays: that takes a fifth off the whole step. Curves are read on the spot
 * as `openCircuitV` and `acceptA` read them: in a function of this size the engine no longer puts calls in line, and boxes what they
 * return. What few steps need (panels whose power hangs on the bank's volts, sources, a selector, volts that may fall short) is called,
 * and reads `run.state`.
 * @param first 0…steps; `run.state` says how things stand there, and afterwards how they stand at the end
 * @param noteAll whether every group and every radio is written down
 */
export function stepBank(
  prepared: Prepared,
  inputs: MemberInputs,
  run: RunRows,
  first: number,
  noteAll: boolean,
  details: RunDetails | undefined,
): void {
  const { bank, controllersW, sources } = prepared;
  const { state, rows, stride } = run;
  const { steps, stepH } = prepared.grid;
  const {
    curveStepsPerAh,
    fullAh,
    internalOhm,
    chargingOhm,
    coulombicShare,
    hasPeukert,
    maxDischargeA,
    disconnectV,
    reconnectV,
  } = bank;
  const curveV = bank.openCircuitV;
  const curveA = bank.acceptA;
  const { sumW, hanging } = run.fixed;
  const input = inputs.rows;
  const allWantedW = inputs.wantedW;
  // Charge is counted in planned ampere-hours: a bank that holds less than planned moves faster through them.
  const capacityShare = inputs.figures[FIGURE_CAPACITY_SHARE]!;
  const hours = stepH / capacityShare;
  const alwaysAsks = noteAll || sources.length > 0;
  const radios = prepared.feedDropV.length;
  const { comfortV } = prepared;
  // Watts times ohms: the sag on the greatest peak, without the sun's help, times the volts that it is taken from.
  const mostSagV2 = inputs.mostPeakW * (internalOhm + prepared.mainFeedOhm);
  const asksRadios = noteAll || prepared.converterV > 0;
  let storedAh = state[STORED_AH]!;
  let lastA = state[LAST_A]!;
  let wasConnected = state[CONNECTED]! > 0;

  for (
    let i = first, row = first * stride, at = first * inputs.stride;
    i < steps;
    i++, row += stride, at += inputs.stride
  ) {
    const place = storedAh * curveStepsPerAh;
    const k = place < CURVE_STEPS ? place | 0 : CURVE_STEPS - 1;
    const lowV = curveV[k]!;
    const openV = lowV + (curveV[k + 1]! - lowV) * (place - k);
    let solarW = sumW[i]!;
    let shutOutW = 0;
    let sourcesW = 0;
    if (alwaysAsks || hanging[i]! !== 0) {
      state[STORED_AH] = storedAh;
      state[OPEN_V] = openV;
      state[LAST_A] = lastA;
      stepOffers(prepared, i, run, noteAll, details);
      solarW = state[SOLAR_W]!;
      shutOutW = state[SHUT_OUT_W]!;
      sourcesW = state[OFFERED_W]!;
    }
    const wantedW = allWantedW[i]!;

    // The disconnect opens on volts under load and closes again only when the bank has visibly recovered.
    const withoutLoadsW = solarW + sourcesW - controllersW;
    const shortW = wantedW - withoutLoadsW;
    let mostA = 0;
    if (withoutLoadsW > 0) {
      const lowA = curveA[k]!;
      const acceptA = lowA + (curveA[k + 1]! - lowA) * (place - k);
      mostA = Math.min(input[at + INPUT_MAX_CHARGE_A]!, acceptA * capacityShare);
    }
    const mostW = mostA * (openV + chargingOhm * mostA);
    // Amperes without the sag. Up to a quarter of the volts, the sag adds less than half to them: far from the disconnect that is
    // enough to know, and near it the root is taken.
    const aboutA = shortW > 0 ? shortW / openV : 0;
    const isFar = internalOhm * aboutA <= 0.2 * openV && openV - 1.5 * internalOhm * aboutA >= disconnectV;
    let connected = isFar || openV - internalOhm * drawA(openV, internalOhm, Math.max(0, shortW)) >= disconnectV;
    if (connected && !wasConnected) {
      const chargingW = Math.max(0, Math.min(withoutLoadsW, mostW));
      connected = openV + chargingOhm * chargeA(openV, chargingOhm, chargingW) >= reconnectV;
    }
    const drawnW = connected ? wantedW : 0;
    const netW = withoutLoadsW - drawnW;

    let unservedW = wantedW - drawnW;
    let spilledW = shutOutW;
    let takenW = sourcesW;
    let bankW = 0;
    let bankA = 0;
    let bankV = openV;
    let nextAh = storedAh;
    // The volts are those halfway through the step, so that a long step on a steep part of the curve counts right.
    let factor = 1;
    let reachableAh = 0;
    let midAh = storedAh;
    if (netW >= 0) {
      bankW = Math.min(netW, mostW);
      midAh = Math.min(fullAh, storedAh + ((0.5 * bankW) / openV) * coulombicShare * hours);
    } else {
      reachableAh = Math.max(0, storedAh - input[at + INPUT_FLOOR_AH]!);
      const firstA = connected ? aboutA : -netW / openV;
      if (hasPeukert) factor = peukertFactorAt(bank, firstA);
      midAh = Math.max(0, storedAh - 0.5 * Math.min(reachableAh, firstA * factor * hours));
    }
    const midPlace = midAh * curveStepsPerAh;
    const m = midPlace < CURVE_STEPS ? midPlace | 0 : CURVE_STEPS - 1;
    const midLowV = curveV[m]!;
    const midV = midLowV + (curveV[m + 1]! - midLowV) * (midPlace - m);
    if (netW >= 0) {
      bankA = Math.min(mostA, chargeA(midV, chargingOhm, bankW));
      bankV = midV + chargingOhm * bankA;
      // Where the acceptance is met, power follows from current and not the other way round.
      bankW = Math.min(bankW, bankA * bankV);
      nextAh = Math.min(fullAh, storedAh + bankA * coulombicShare * hours);
      const neededW = controllersW + drawnW + bankW;
      const solarUsedW = Math.min(solarW, neededW);
      spilledW += solarW - solarUsedW;
      takenW = neededW - solarUsedW;
    } else {
      const deficitW = -netW;
      let outA = Math.min(maxDischargeA, drawA(midV, internalOhm, deficitW));
      if (hasPeukert) factor = peukertFactorAt(bank, outA);
      if (outA * factor * hours > reachableAh) {
        // It gives the full current for part of the step, so Peukert's factor stays that of the full current.
        outA = reachableAh / (factor * hours);
      }
      bankV = midV - internalOhm * outA;
      const givenW = Math.min(deficitW, outA * bankV);
      nextAh = Math.max(0, storedAh - outA * factor * hours);
      unservedW += deficitW - givenW;
      bankW = -givenW;
      bankA = -outA;
    }

    rows[row + ROW_STORED_AH] = storedAh;
    rows[row + ROW_SOLAR_W] = solarW + shutOutW;
    rows[row + ROW_SPILLED_W] = spilledW;
    rows[row + ROW_DEMAND_W] = wantedW + controllersW;
    rows[row + ROW_UNSERVED_W] = unservedW;
    rows[row + ROW_BANK_W] = bankW;
    rows[row + ROW_BANK_A] = bankA;
    rows[row + ROW_BANK_V] = bankV;
    rows[row + ROW_CONNECTED] = connected ? 1 : 0;
    if (sources.length > 0) {
      state[TAKEN_W] = takenW;
      stepFuel(prepared, i, run);
    }
    // The sag adds less than half to the amperes without it while it stays under a fifth of the volts: mostly enough to know.
    const isEasy = mostSagV2 <= 0.2 * openV * openV && openV * openV - 1.5 * mostSagV2 >= comfortV * openV;
    if (radios > 0 && (asksRadios || !isEasy)) {
      state[OPEN_V] = openV;
      state[SOLAR_W] = solarW;
      state[TAKEN_W] = takenW;
      stepRadios(prepared, i, inputs, run, noteAll);
    }
    storedAh = nextAh;
    lastA = bankA;
    wasConnected = connected;
  }
  state[STORED_AH] = storedAh;
  state[LAST_A] = lastA;
  state[CONNECTED] = wasConnected ? 1 : 0;
}

/** Shares out what was taken from the sources, in proportion to what they offered, and counts the fuel. */
function stepFuel(prepared: Prepared, i: number, run: RunRows): void {
  const { sources, grid } = prepared;
  const { state, rows, runs, fuelLeftL } = run;
  const row = i * run.stride;
  const offeredW = state[OFFERED_W]!;
  const takenShare = offeredW > 0 ? Math.min(1, state[TAKEN_W]! / offeredW) : 0;
  for (let s = 0; s < sources.length; s++) {
    const source = sources[s]!;
    const sourceW = run.offeredW[s]! * takenShare;
    rows[row + run.sourceAt + s] = sourceW;
    let burntL = 0;
    if (source.isGenerator && runs[s]! > 0) {
      burntL = (source.burnIdleLPerH * source.availableShare[i]! + source.burnLPerWh * sourceW) * grid.stepH;
      burntL = Math.min(burntL, fuelLeftL[s]!);
      fuelLeftL[s]! -= burntL;
    }
    rows[row + run.fuelAt + s] = burntL;
  }
}
