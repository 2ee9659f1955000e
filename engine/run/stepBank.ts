import { chargeA, drawA, peukertFactorAt } from "../bank/bankVoltage.ts";
import { chargingPathV, drawingPathV } from "../bank/pathV.ts";
import { CURVE_STEPS } from "../bank/prepareBank.ts";
import { FIGURE_CAPACITY_SHARE, FIGURES } from "./memberFigures.ts";
import {
  INPUT_ACCEPT_SHARE,
  INPUT_CHARGING_COLD,
  INPUT_FLOOR_AH,
  INPUT_INTERNAL_COLD,
  INPUT_MAX_CHARGE_A,
  INPUT_MAX_DISCHARGE_A,
} from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";
import type { RunDetails } from "./runDetails.ts";
import {
  BANK_A,
  BANK_CONNECTED,
  BANK_SLOTS,
  BANK_V,
  BANK_W,
  ROW_DEMAND_W,
  ROW_SLOTS,
  ROW_SOLAR_W,
  ROW_SPILLED_W,
  ROW_STORED_AH,
  ROW_UNSERVED_W,
  type RunRows,
} from "./runRows.ts";
import { stepOffers } from "./stepOffers.ts";
import { stepRadios } from "./stepRadios.ts";
import {
  CHARGING_OHM,
  CONNECTED,
  COUNTED_H,
  INTERNAL_OHM,
  LAST_A,
  OFFERED_W,
  OPEN_V,
  POLARISATION_V,
  SHUT_OUT_W,
  SOLAR_W,
  STATE_SLOTS,
  STORED_AH,
  TAKEN_W,
  TERMINAL_V,
} from "./stepState.ts";

/**
 * Two powers that differ by less than this share are the same apart from rounding. Where they mostly are, which of them is less is anybody's guess, and
 * a processor that guesses wrong loses more than the whole division took.
 */
const BUT_ROUNDING = 1 - 1e-9;

/**
 * Carries the banks of members side by side from step `first` to the end of the event: in each step the sun and the sources offer, the loads
 * take, the bank takes or gives the rest, the radios are asked for their volts, and everything is counted.
 *
 * One loop over the steps, and in it over the lanes: each step of a bank waits for the one before, and while one member waits the processor
 * works at the next. Curves are read on the spot as `openCircuitV` and `acceptA` read them: in a function of this size the engine no longer
 * puts calls in line, and boxes what they return. What few steps need (panels whose power depends on the bank's volts, sources, a selector,
 * volts that may fall short) is called, and reads `run.state`.
 * @param lanes from the first lane on, 1…`run.lanes`
 * @param first 0…steps; `run.state` says how things stand there, and afterwards how they stand at the end
 * @param noteAll whether every group and every radio is written down
 */
export function stepBank(
  prepared: Prepared,
  run: RunRows,
  lanes: number,
  first: number,
  noteAll: boolean,
  details: RunDetails | undefined,
): void {
  const { bank, controllersW, sources } = prepared;
  const { state, rows, bankRows, figures, wantedW: allWantedW } = run;
  const notesBank = bankRows.length > 0;
  const { steps } = prepared.grid;
  const { curveStepsPerAh, fullAh, fixedOhm, coulombicShare, disconnectV, reconnectV } = bank;
  const { polarisationA } = bank;
  const curveV = bank.openCircuitV;
  const curveA = bank.acceptA;
  const curveInternalOhm = bank.internalCellOhm;
  const curveChargingOhm = bank.chargingCellOhm;
  const { sumW, coupled } = run.fixed;
  const { rows: input, stride: inputStride } = prepared.inputs;
  // Compared with true: see "Fast loops" in DEVELOPERS.md.
  const asksAll = noteAll === true;
  const hasPeukert = bank.hasPeukert === true;
  const hasOwnCurve = bank.hasOwnCurve === true;
  const alwaysAsks = asksAll || sources.length > 0;
  const radios = prepared.feedDropV.length;
  const asksRadios = radios > 0 && (asksAll || prepared.converterV > 0);
  const easyV = radios > 0 ? easyOpenV(prepared) : 0;

  for (let i = first; i < steps; i++) {
    const maxChargeA = input[i * inputStride + INPUT_MAX_CHARGE_A]!;
    const floorAh = input[i * inputStride + INPUT_FLOOR_AH]!;
    const maxDischargeA = input[i * inputStride + INPUT_MAX_DISCHARGE_A]!;
    const internalCold = input[i * inputStride + INPUT_INTERNAL_COLD]!;
    const chargingCold = input[i * inputStride + INPUT_CHARGING_COLD]!;
    const acceptShare = input[i * inputStride + INPUT_ACCEPT_SHARE]!;
    const polarisationV = bank.polarisationV * chargingCold;
    // Volts over amperes while the current is a trickle.
    const trickleOhm = polarisationA > 0 ? polarisationV / polarisationA : 0;
    for (let lane = 0, cell = i, now = 0; lane < lanes; lane++, cell += steps, now += STATE_SLOTS) {
      const storedAh = state[now + STORED_AH]!;
      const wasConnected = state[now + CONNECTED]! > 0;
      const hours = state[now + COUNTED_H]!;
      const place = storedAh * curveStepsPerAh;
      const k = place < CURVE_STEPS ? place | 0 : CURVE_STEPS - 1;
      const lowV = curveV[k]!;
      const openV = lowV + (curveV[k + 1]! - lowV) * (place - k);
      const internalOhm = fixedOhm + curveInternalOhm[k]! * internalCold;
      const chargingOhm = fixedOhm + curveChargingOhm[k]! * chargingCold;
      let solarW = sumW[cell]!;
      let shutOutW = 0;
      let sourcesW = 0;
      if (alwaysAsks || coupled[cell]! !== 0) {
        state[now + OPEN_V] = openV;
        state[now + INTERNAL_OHM] = internalOhm;
        state[now + CHARGING_OHM] = chargingOhm;
        state[now + POLARISATION_V] = polarisationV;
        stepOffers(prepared, i, lane, run, noteAll, details);
        solarW = state[now + SOLAR_W]!;
        shutOutW = state[now + SHUT_OUT_W]!;
        sourcesW = state[now + OFFERED_W]!;
      }
      const wantedW = allWantedW[cell]!;

      // The disconnect opens on volts under load and closes again only when the bank has visibly recovered.
      const withoutLoadsW = solarW + sourcesW - controllersW;
      const shortW = wantedW - withoutLoadsW;
      let mostA = 0;
      if (withoutLoadsW > 0) {
        const lowA = curveA[k]!;
        const acceptA = lowA + (curveA[k + 1]! - lowA) * (place - k);
        mostA = Math.min(maxChargeA, acceptA * acceptShare * figures[lane * FIGURES + FIGURE_CAPACITY_SHARE]!);
      }
      const mostW = mostA * (openV + Math.min(polarisationV, trickleOhm * mostA) + chargingOhm * mostA);
      // The sag without what it adds to the amperes itself, times the volts that it is taken from. Up to a fifth of the volts, that is less than half:
      // far from the disconnect it is enough to know, and near it the root is taken.
      const sagV2 = shortW > 0 ? internalOhm * shortW : 0;
      const isFar = sagV2 <= 0.2 * openV * openV && openV * openV - 1.5 * sagV2 >= disconnectV * openV;
      let connected = isFar || openV - internalOhm * drawA(openV, internalOhm, Math.max(0, shortW)) >= disconnectV;
      if (connected && !wasConnected) {
        const chargingW = Math.max(0, Math.min(withoutLoadsW, mostW));
        const amps =
          chargingW < polarisationA * (openV + polarisationV + chargingOhm * polarisationA)
            ? chargeA(openV, chargingOhm + trickleOhm, chargingW)
            : chargeA(openV + polarisationV, chargingOhm, chargingW);
        connected = openV + chargingOhm * amps + Math.min(polarisationV, trickleOhm * amps) >= reconnectV;
      }
      // A pack that the cold has locked feeds nobody, whatever the panels give; when it thaws, the disconnect stands as it stood.
      const feeds = connected && maxDischargeA > 0;
      const drawnW = feeds ? wantedW : 0;
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
        reachableAh = Math.max(0, storedAh - floorAh);
        const firstA = -netW / openV;
        if (hasPeukert) factor = peukertFactorAt(bank, firstA);
        midAh = Math.max(0, storedAh - 0.5 * Math.min(reachableAh, firstA * factor * hours));
      }
      const midPlace = midAh * curveStepsPerAh;
      const m = midPlace < CURVE_STEPS ? midPlace | 0 : CURVE_STEPS - 1;
      const midLowV = curveV[m]!;
      let midV = midLowV + (curveV[m + 1]! - midLowV) * (midPlace - m);
      if (hasOwnCurve) {
        midV =
          netW >= 0
            ? chargingPathV(bank, storedAh, bankW, hours, chargingOhm, polarisationV)
            : drawingPathV(bank, storedAh, -netW, reachableAh, hours, maxDischargeA, internalOhm);
      }
      if (netW >= 0) {
        // No more than `mostA`, since halfway through the step the volts stand no lower than those that `mostW` was worked out with.
        bankA =
          bankW < polarisationA * (midV + polarisationV + chargingOhm * polarisationA)
            ? chargeA(midV, chargingOhm + trickleOhm, bankW)
            : chargeA(midV + polarisationV, chargingOhm, bankW);
        bankV = midV + chargingOhm * bankA + Math.min(polarisationV, trickleOhm * bankA);
        nextAh = Math.min(fullAh, storedAh + bankA * coulombicShare * hours);
        // What nobody takes is left to the sources first, for solar goes before them.
        const leftW = netW - bankW;
        if (leftW > 0) {
          takenW = Math.max(0, sourcesW - leftW);
          spilledW += Math.max(0, leftW - sourcesW);
        }
      } else {
        const deficitW = -netW;
        let outA = Math.min(maxDischargeA, drawA(midV, internalOhm, deficitW));
        if (hasPeukert) factor = peukertFactorAt(bank, outA);
        if (outA * factor * hours > reachableAh) {
          // It gives the full current for part of the step, so Peukert's factor stays that of the full current.
          outA = reachableAh / (factor * hours);
        }
        bankV = midV - internalOhm * outA;
        let givenW = outA * bankV;
        if (givenW >= deficitW * BUT_ROUNDING) givenW = deficitW;
        nextAh = Math.max(0, storedAh - outA * factor * hours);
        unservedW += deficitW - givenW;
        bankW = -givenW;
        bankA = -outA;
      }

      const row = cell * ROW_SLOTS;
      rows[row + ROW_STORED_AH] = storedAh;
      rows[row + ROW_SOLAR_W] = solarW + shutOutW;
      rows[row + ROW_SPILLED_W] = spilledW;
      rows[row + ROW_DEMAND_W] = wantedW + controllersW;
      rows[row + ROW_UNSERVED_W] = unservedW;
      if (notesBank) {
        const bankRow = cell * BANK_SLOTS;
        bankRows[bankRow + BANK_W] = bankW;
        bankRows[bankRow + BANK_A] = bankA;
        bankRows[bankRow + BANK_V] = bankV;
        bankRows[bankRow + BANK_CONNECTED] = feeds ? 1 : 0;
      }
      state[now + STORED_AH] = nextAh;
      state[now + LAST_A] = bankA;
      state[now + CONNECTED] = connected ? 1 : 0;
      if (sources.length > 0) {
        state[now + TAKEN_W] = takenW;
        stepFuel(prepared, i, lane, run);
      }
      if (asksRadios || openV < easyV) {
        state[now + OPEN_V] = openV;
        state[now + INTERNAL_OHM] = internalOhm;
        state[now + TERMINAL_V] = bankV;
        state[now + SOLAR_W] = solarW;
        state[now + TAKEN_W] = takenW;
        stepRadios(prepared, i, lane, run, asksAll);
      }
    }
  }
}

/**
 * Open-circuit volts of the bank from which on no radio falls short, whatever it sends: the sag on the greatest peak of the event, without the
 * sun's help, adds less than half to the amperes without it while it stays under a fifth of the volts. Mostly that is enough to know.
 */
function easyOpenV({ bank, mainFeedOhm, inputs, comfortV }: Prepared): number {
  // Watts times ohms: volts times the volts that they are taken from; empty cells in the coldest step have the most.
  const sagV2 = inputs.mostPeakW * (bank.mostInternalOhm + mainFeedOhm);
  return Math.max(Math.sqrt(5 * sagV2), 0.5 * (comfortV + Math.sqrt(comfortV * comfortV + 6 * sagV2)));
}

/** Shares out what was taken from the sources, in proportion to what they offered, and counts the fuel. */
function stepFuel(prepared: Prepared, i: number, lane: number, run: RunRows): void {
  const { sources, grid } = prepared;
  const { state, parts, runs, fuelLeftL } = run;
  const now = lane * STATE_SLOTS;
  const part = (lane * grid.steps + i) * run.partStride;
  const offeredW = state[now + OFFERED_W]!;
  const takenShare = offeredW > 0 ? Math.min(1, state[now + TAKEN_W]! / offeredW) : 0;
  for (let s = 0; s < sources.length; s++) {
    const source = sources[s]!;
    const own = lane * sources.length + s;
    const sourceW = run.offeredW[s]! * takenShare;
    parts[part + run.sourceAt + s] = sourceW;
    let burntL = 0;
    if (source.isGenerator && runs[own]! > 0) {
      burntL = (source.burnIdleLPerH * source.availableShare[i]! + source.burnLPerWh * sourceW) * grid.stepH;
      burntL = Math.min(burntL, fuelLeftL[own]!);
      fuelLeftL[own]! -= burntL;
    }
    parts[part + run.fuelAt + s] = burntL;
  }
}
