import { zeros } from "../zeros.ts";

/** Power that does not hang on the bank's volts, of all groups together. */
export interface FixedPower {
  /** Bank volts that a step stays within; a step that leaves them asks every group again. */
  readonly lowestV: number;
  readonly highestV: number;
  /** Sum of the fixed powers at the bank's terminals, W per step, and one bit per group whose power hangs on the volts. */
  readonly sumW: Float64Array;
  readonly hanging: Int32Array;
  /** The member's own, in the places named below. Here, because a number handed over is boxed. */
  readonly ofMember: Float64Array;
}

/** What the panels of this member give over what was planned. */
export const MEMBER_YIELD = 0;
/** Its crowns: −1 (the darkest) … 0 (as planned) … 1 (the lightest). */
export const MEMBER_CROWNS = 1;

/** Leaves room with nothing in it. */
export function clearFixedPower({ sumW, hanging }: FixedPower): void {
  sumW.fill(0);
  hanging.fill(0);
}

/**
 * Room for `steps` steps, with nothing in it.
 * @param spare whose memory is taken where it fits
 */
export function makeFixedPower(steps: number, lowestV: number, highestV: number, spare?: FixedPower): FixedPower {
  return {
    lowestV,
    highestV,
    sumW: zeros(steps, spare?.sumW),
    hanging: spare?.hanging.length === steps ? spare.hanging.fill(0) : new Int32Array(steps),
    ofMember: Float64Array.of(1, 0),
  };
}
