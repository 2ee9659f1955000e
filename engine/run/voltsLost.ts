import { openCircuitV } from "../bank/bankVoltage.ts";
import { INPUT_PEAK_W } from "./memberInputs.ts";
import type { RunResult } from "./runResult.ts";

/** What a radio's volts on a peak lack of a full bank's at rest, V, by where they went. */
export interface VoltsLost {
  /** A full bank at rest has so much more than this one at its charge; 0 behind a converter. */
  readonly chargeV: number;
  /** Inside the pack, or the bank's blocks. */
  readonly packV: number;
  /** From the bank to the radio: main feed, lead, fuses and plugs. */
  readonly leadV: number;
}

export type VoltsCause = "charge" | "lead" | "pack";

/** Which of the three takes most; of equals the first. */
export function voltsCause({ chargeV, leadV, packV }: VoltsLost): VoltsCause {
  if (chargeV >= leadV && chargeV >= packV) return "charge";
  return leadV >= packV ? "lead" : "pack";
}

const PARTS: Readonly<Record<VoltsCause, (lost: VoltsLost) => string>> = {
  charge: ({ chargeV }) => `a full bank has ${chargeV.toFixed(2)} V more at rest`,
  lead: ({ leadV }) => `lead and fuses take ${leadV.toFixed(2)} V`,
  pack: ({ packV }) => `the pack takes ${packV.toFixed(2)} V`,
};

/** "mostly the charge: a full bank has 1.02 V more at rest, lead and fuses take 0.61 V, the pack takes 0.30 V" */
export function voltsLostWords(lost: VoltsLost): string {
  const cause = voltsCause(lost);
  const others = (["charge", "lead", "pack"] as const).filter((each) => each !== cause);
  return `mostly the ${cause}: ${[cause, ...others].map((each) => PARTS[each](lost)).join(", ")}`;
}

/** Where the volts of a station's radio went on the peaks of step `i`. */
export function voltsLostAt({ prepared, record }: RunResult, s: number, i: number): VoltsLost {
  const { bank, converterV, feedOhm, mainFeedOhm, inputs, grid, loads } = prepared;
  const radioV = record.radioV[s * grid.steps + i]!;
  const leadV = loads.stations[s]!.peakA * feedOhm[s]!;
  if (converterV > 0) return { chargeV: 0, packV: 0, leadV };
  const boardV = radioV + leadV;
  const siteW = inputs.rows[i * inputs.stride + INPUT_PEAK_W + s]!;
  const mainV = boardV > 0 ? (mainFeedOhm * siteW) / boardV : 0;
  const restV = openCircuitV(bank, record.storedAh[i]!);
  return {
    chargeV: openCircuitV(bank, bank.fullAh) - restV,
    packV: Math.max(0, restV - boardV - mainV),
    leadV: leadV + mainV,
  };
}
