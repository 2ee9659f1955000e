/**
 * What happens to a member, step by step. Made once and written over by every run, so that an ensemble allocates nothing.
 * Powers are means over the step at the bank's terminals, W. Arrays named per group, source or station hold `steps` values for the
 * first, then for the second, and so on.
 */
export interface RunRecord {
  /** Charge at each step's start, and one more for the end, Ah. */
  readonly storedAh: Float64Array;
  /** What the controllers offer, whether it can be used or not. */
  readonly solarW: Float64Array;
  readonly groupW: Float64Array;
  /** Solar power that nobody could take, or that the selector shut out. */
  readonly spilledW: Float64Array;
  /** Power taken from each source. */
  readonly sourceW: Float64Array;
  /** Fuel burnt in the step by each source, L. */
  readonly fuelL: Float64Array;
  /** What loads, converter and controllers want, and what of it they got. */
  readonly demandW: Float64Array;
  readonly servedW: Float64Array;
  readonly unservedW: Float64Array;
  /** Into the bank's terminals when positive, out of them when negative. */
  readonly bankW: Float64Array;
  readonly bankA: Float64Array;
  readonly bankV: Float64Array;
  /** 1 while the low-voltage disconnect is closed, else 0. */
  readonly connected: Float64Array;
  /** Volts at each radio on the worst transmit peak; 0 while it is unstaffed or cut off. */
  readonly radioV: Float64Array;
  /** Scratch of the step: which generator runs (1 or 0), fuel left, what each source could give, what each selector input offers. */
  readonly runs: Float64Array;
  readonly fuelLeftL: Float64Array;
  readonly offeredW: Float64Array;
  readonly inputW: Float64Array;
}

/** Room for a run. */
export function makeRunRecord(
  steps: number,
  groups: number,
  sources: number,
  stations: number,
  inputs: number,
): RunRecord {
  return {
    storedAh: new Float64Array(steps + 1),
    solarW: new Float64Array(steps),
    groupW: new Float64Array(steps * groups),
    spilledW: new Float64Array(steps),
    sourceW: new Float64Array(steps * sources),
    fuelL: new Float64Array(steps * sources),
    demandW: new Float64Array(steps),
    servedW: new Float64Array(steps),
    unservedW: new Float64Array(steps),
    bankW: new Float64Array(steps),
    bankA: new Float64Array(steps),
    bankV: new Float64Array(steps),
    connected: new Float64Array(steps),
    radioV: new Float64Array(steps * stations),
    runs: new Float64Array(sources),
    fuelLeftL: new Float64Array(sources),
    offeredW: new Float64Array(sources),
    inputW: new Float64Array(inputs),
  };
}
