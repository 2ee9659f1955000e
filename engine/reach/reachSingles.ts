import type { Lever } from "./lever.ts";
import type { Pulls } from "./reachOrder.ts";
import { smallestReaching } from "./smallestReaching.ts";

/** Counts members, from the first on, that hold with some levers pulled. */
export interface Held {
  readonly held: (pulls: Pulls, members: number) => Promise<number>;
  /** Whether as many hold as are needed: said as soon as it is sure that they do not. */
  readonly reaches: (pulls: Pulls, members: number, need: number) => Promise<boolean>;
}

/** One lever by itself. */
export interface Single {
  /** The smallest amount that reaches the target; null where none does. */
  readonly smallest: number | null;
  /** The amount that is told: the smallest, else the most of it, or what brings most; and members that hold with it. */
  readonly told: number;
  readonly heldTold: number;
  /** The amount beside it on the other side of the target (0 as the plan stands), and members that hold with that. */
  readonly next: number;
  readonly heldNext: number;
}

/** Fewest of so many members that are a share of them. */
export const needed = (share: number, members: number) => Math.ceil(share * members - 1e-9);

/**
 * The smallest amount of one lever that reaches the target.
 * @param k the lever's place
 * @param heldNow members that hold as the plan stands
 * @param about the amount with which it is thought to be reached
 */
export async function single(
  lever: Lever,
  k: number,
  held: Held,
  need: number,
  members: number,
  heldNow: number,
  about?: number,
): Promise<Single> {
  const pulls = (amount: number): Pulls => [{ lever: k, amount }];
  const heldWith = async (amount: number) => (amount === 0 ? heldNow : held.held(pulls(amount), members));
  const reaches = (amount: number) => held.reaches(pulls(amount), members, need);
  const most = lever.amounts.length;
  const smallest = await smallestReaching(most, lever.isMonotone, reaches, about);
  const told = smallest ?? (lever.isMonotone ? most : await mostHeld(most, heldWith));
  // Of a lever that does not reach it, the plan as it stands is told beside the most of it.
  const next = smallest === null ? 0 : told - 1;
  return { smallest, told, heldTold: await heldWith(told), next, heldNext: await heldWith(next) };
}

/** The amount with which most members hold, the smallest of those that do as well. */
async function mostHeld(most: number, heldWith: (amount: number) => Promise<number>): Promise<number> {
  let best = 1;
  let bestHeld = -1;
  for (let amount = 1; amount <= most; amount++) {
    const held = await heldWith(amount);
    if (held > bestHeld) [best, bestHeld] = [amount, held];
  }
  return best;
}

/**
 * How far one lever can be pushed back while the target is still reached.
 * @returns the largest amount that keeps it, 0 where not even the first does
 */
export async function spare(
  lever: Lever,
  k: number,
  held: Held,
  need: number,
  members: number,
  heldNow: number,
  about?: number,
): Promise<Single> {
  const pulls = (amount: number): Pulls => [{ lever: k, amount }];
  const heldWith = (amount: number) => (amount === 0 ? heldNow : held.held(pulls(amount), members));
  const misses = async (amount: number) => !(await held.reaches(pulls(amount), members, need));
  const most = lever.amounts.length;
  const kept = ((await smallestReaching(most, true, misses, about)) ?? most + 1) - 1;
  const told = Math.max(1, kept);
  // Beyond the last there is nothing more to leave away; where not even the first may go, the plan as it stands is next to it.
  const next = kept === 0 ? 0 : Math.min(most, kept + 1);
  const smallest = kept > 0 ? kept : null;
  return { smallest, told, heldTold: await heldWith(told), next, heldNext: await heldWith(next) };
}
