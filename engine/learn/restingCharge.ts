import type { Prepared } from "../run/prepare.ts";
import { METER_ERROR } from "./meterError.ts";
import { shareOfRestV } from "./startFromReading.ts";

/** What resting volts say of the charge: a range, because the curve is flat where it matters. */
export interface RestingCharge {
  readonly lowShare: number;
  readonly middleShare: number;
  readonly highShare: number;
  readonly sentence: string;
}

/** The charge that resting volts stand for, with what one standard error of the volts leaves open. @param restV of the whole bank */
export function restingCharge(prepared: Pick<Prepared, "bank" | "scenario">, restV: number): RestingCharge {
  const sigma = (METER_ERROR.restVPer12V * prepared.scenario.bank.nominalV) / 12;
  const lowShare = shareOfRestV(prepared, restV - sigma);
  const middleShare = shareOfRestV(prepared, restV);
  const highShare = shareOfRestV(prepared, restV + sigma);
  const percent = (share: number) => Math.round(100 * share);
  const sentence = `${restV.toFixed(2)} V at rest says ${percent(lowShare)} to ${percent(highShare)} %: a poor measure of charge, take a counter of ampere-hours if there is one.`;
  return { lowShare, middleShare, highShare, sentence };
}
