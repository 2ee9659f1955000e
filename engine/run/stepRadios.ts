import { drawA } from "../bank/bankVoltage.ts";
import { INPUT_MAX_DISCHARGE_A, INPUT_PEAK_W } from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";
import type { RunRows } from "./runRows.ts";
import { CONNECTED, DROPOUT_H, INTERNAL_OHM, OPEN_V, SOLAR_W, STATE_SLOTS, TAKEN_W, TERMINAL_V } from "./stepState.ts";

/**
 * Volts at each radio's socket when it and all that may send with it are at their peak: the bank's open-circuit volts
 * less what the peak current takes in the bank and in the main feed, less what the radio's own current takes in its lead. 0 while nobody is
 * there, the disconnect is open or the cold has locked the bank.
 * @param noteAll whether every voltage is written down; else only those that may fall short are worked out
 */
export function stepRadios(prepared: Prepared, i: number, lane: number, run: RunRows, noteAll: boolean): void {
  const { feedDropV, inputs, mainFeedOhm, converterV } = prepared;
  const { state, parts } = run;
  const { stations } = prepared.loads;
  const { stepH } = prepared.grid;
  const cell = lane * prepared.grid.steps + i;
  const firstPart = cell * run.partStride + run.stationAt;
  const now = lane * STATE_SLOTS;
  const firstPeak = i * inputs.stride + INPUT_PEAK_W;
  const chargingW = state[now + SOLAR_W]! + state[now + TAKEN_W]!;
  const openV = state[now + OPEN_V]!;
  const internalOhm = state[now + INTERNAL_OHM]!;
  const isConnected = state[now + CONNECTED]! > 0 && inputs.rows[i * inputs.stride + INPUT_MAX_DISCHARGE_A]! > 0;
  for (let s = 0; s < feedDropV.length; s++) {
    const peakW = inputs.rows[firstPeak + s]!;
    let radioV = 0;
    if (isConnected && peakW > 0) {
      const shortW = peakW - chargingW;
      const station = stations[s]!;
      if (!noteAll && converterV === 0) {
        // Up to a fifth of the volts, the sag adds less than half to the amperes without it: far from the least volts that is
        // enough to know, and an ensemble asks for no more.
        const aboutA = shortW > 0 ? shortW / openV : 0;
        const aboutV = internalOhm * aboutA + (mainFeedOhm * peakW) / openV;
        if (aboutV <= 0.2 * openV && openV - 1.5 * aboutV - feedDropV[s]! >= station.minimumV) continue;
      }
      const bankV =
        shortW > 0
          ? openV - internalOhm * drawA(openV, internalOhm, shortW)
          : Math.max(openV, state[now + TERMINAL_V]!);
      const afterV = converterV > 0 ? converterV : bankV - mainFeedOhm * drawA(bankV, mainFeedOhm, peakW);
      radioV = afterV - feedDropV[s]!;
      if (radioV < station.minimumV) state[now + DROPOUT_H]! += stepH * station.staffedShare[i]!;
    }
    parts[firstPart + s] = radioV;
  }
}
