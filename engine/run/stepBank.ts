import { acceptA, chargeA, drawA, openCircuitV, peukertFactorAt } from "../bank/bankVoltage.ts";
import { FIGURE_CAPACITY_SHARE } from "./memberFigures.ts";
import { INPUT_FLOOR_AH, INPUT_MAX_CHARGE_A, INPUT_WANTED_W, type MemberInputs } from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";
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
import { CONNECTED, LAST_A, OFFERED_W, OPEN_V, SHUT_OUT_W, SOLAR_W, STORED_AH, TAKEN_W } from "./stepState.ts";

/** Second half of a step: the loads take, the bank takes or gives the rest, and everything is counted. */
export function stepBank(prepared: Prepared, i: number, inputs: MemberInputs, run: RunRows): void {
  const { bank, controllersW } = prepared;
  const { state, rows } = run;
  const { stepH } = prepared.grid;
  const { internalOhm, chargingOhm, hasPeukert } = bank;
  const input = i * inputs.stride;
  const storedAh = state[STORED_AH]!;
  const openV = state[OPEN_V]!;
  const solarW = state[SOLAR_W]!;
  const shutOutW = state[SHUT_OUT_W]!;
  const sourcesW = state[OFFERED_W]!;
  const wantedW = inputs.rows[input + INPUT_WANTED_W]!;
  // Charge is counted in planned ampere-hours: a bank that holds less than planned moves faster through them.
  const capacityShare = inputs.figures[FIGURE_CAPACITY_SHARE]!;
  const hours = stepH / capacityShare;

  // The disconnect opens on volts under load and closes again only when the bank has visibly recovered.
  const withoutLoadsW = solarW + sourcesW - controllersW;
  const shortW = wantedW - withoutLoadsW;
  const mostA =
    withoutLoadsW > 0 ? Math.min(inputs.rows[input + INPUT_MAX_CHARGE_A]!, acceptA(bank, storedAh) * capacityShare) : 0;
  const mostW = mostA * (openV + chargingOhm * mostA);
  // Amperes without the sag. Up to a quarter of the volts, the sag adds less than half to them: far from the disconnect that is
  // enough to know, and near it the root is taken.
  const aboutA = shortW > 0 ? shortW / openV : 0;
  const isFar = internalOhm * aboutA <= 0.2 * openV && openV - 1.5 * internalOhm * aboutA >= bank.disconnectV;
  let connected = isFar || openV - internalOhm * drawA(openV, internalOhm, Math.max(0, shortW)) >= bank.disconnectV;
  if (connected && state[CONNECTED] === 0) {
    const chargingW = Math.max(0, Math.min(withoutLoadsW, mostW));
    connected = openV + chargingOhm * chargeA(openV, chargingOhm, chargingW) >= bank.reconnectV;
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
  // In both branches the volts are those halfway through the step, so that a long step on a steep part of the curve counts right.
  if (netW >= 0) {
    bankW = Math.min(netW, mostW);
    const halfAh = ((0.5 * bankW) / openV) * bank.coulombicShare * hours;
    const midV = openCircuitV(bank, Math.min(bank.fullAh, storedAh + halfAh));
    bankA = Math.min(mostA, chargeA(midV, chargingOhm, bankW));
    bankV = midV + chargingOhm * bankA;
    // Where the acceptance is met, power follows from current and not the other way round.
    bankW = Math.min(bankW, bankA * bankV);
    nextAh = Math.min(bank.fullAh, storedAh + bankA * bank.coulombicShare * hours);
    const neededW = controllersW + drawnW + bankW;
    const solarUsedW = Math.min(solarW, neededW);
    spilledW += solarW - solarUsedW;
    takenW = neededW - solarUsedW;
  } else {
    const deficitW = -netW;
    const reachableAh = Math.max(0, storedAh - inputs.rows[input + INPUT_FLOOR_AH]!);
    const firstA = connected ? aboutA : deficitW / openV;
    let factor = hasPeukert ? peukertFactorAt(bank, firstA) : 1;
    const midV = openCircuitV(bank, Math.max(0, storedAh - 0.5 * Math.min(reachableAh, firstA * factor * hours)));
    let outA = Math.min(bank.maxDischargeA, drawA(midV, internalOhm, deficitW));
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

  const row = i * run.stride;
  rows[row + ROW_STORED_AH] = storedAh;
  rows[row + ROW_SOLAR_W] = solarW + shutOutW;
  rows[row + ROW_SPILLED_W] = spilledW;
  rows[row + ROW_DEMAND_W] = wantedW + controllersW;
  rows[row + ROW_UNSERVED_W] = unservedW;
  rows[row + ROW_BANK_W] = bankW;
  rows[row + ROW_BANK_A] = bankA;
  rows[row + ROW_BANK_V] = bankV;
  rows[row + ROW_CONNECTED] = connected ? 1 : 0;
  state[STORED_AH] = nextAh;
  state[LAST_A] = bankA;
  state[CONNECTED] = connected ? 1 : 0;
  state[TAKEN_W] = takenW;
  if (prepared.sources.length > 0) stepFuel(prepared, i, run);
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
