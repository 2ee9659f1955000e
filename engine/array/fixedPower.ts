import { zeros } from "../zeros.ts";

/** Power that does not depend on the bank's volts, of all groups together. Members side by side have a lane each: one lane's steps after the other's. */
export interface FixedPower {
  /** Bank volts that a step stays within; a step that leaves them asks every group again. */
  readonly lowestV: number;
  readonly highestV: number;
  /** Sum of the fixed powers at the bank's terminals, W per step, and one bit per group whose power depends on the volts. */
  readonly sumW: Float64Array;
  readonly coupled: Int32Array;
  /** `MEMBER_SLOTS` numbers for each lane, in the places named below. Here, because a number handed over is boxed. */
  readonly ofMember: Float64Array;
}

/** What the panels of this member give over what was planned. */
export const MEMBER_YIELD = 0;
/** Its crowns: −1 (the darkest) … 0 (as planned) … 1 (the lightest). */
export const MEMBER_CROWNS = 1;
export const MEMBER_SLOTS = 2;

/** Leaves room with nothing in it. */
export function clearFixedPower({ sumW, coupled }: FixedPower): void {
  sumW.fill(0);
  coupled.fill(0);
}

/**
 * Room for `steps` steps in each lane, with nothing in it.
 * @param spare whose memory is taken where it fits
 */
export function makeFixedPower(
  steps: number,
  lowestV: number,
  highestV: number,
  lanes = 1,
  spare?: FixedPower,
): FixedPower {
  const cells = lanes * steps;
  return {
    lowestV,
    highestV,
    sumW: zeros(cells, spare?.sumW),
    coupled: spare?.coupled.length === cells ? spare.coupled.fill(0) : new Int32Array(cells),
    ofMember: Float64Array.from({ length: lanes * MEMBER_SLOTS }, (_, k) =>
      k % MEMBER_SLOTS === MEMBER_YIELD ? 1 : 0,
    ),
  };
}
