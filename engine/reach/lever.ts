import type { Change } from "../scenario/change.ts";

/** What something takes to bring and to do. Null is *not stated*: the scenario does not say, and a sum with it in would be a lie. */
export interface Price {
  /** In the club's own money. */
  readonly cost: number | null;
  readonly massKg: number | null;
  readonly minutes: number | null;
  /** Station hours on the air that are won; below 0 for those given up. */
  readonly onAirH: number;
}

/** How far a lever is pulled: one of its positions. */
export interface Amount {
  /** "415 Ah, was 280"; empty where the lever's name says it all. */
  readonly words: string;
  readonly changes: readonly Change[];
  readonly price: Price;
  /** Why it helps, or how little; left out where what the gear takes less says it. */
  readonly why?: string;
}

/** What kind of thing a lever is, for the sentence of why. */
export type LeverKind =
  | "bank"
  | "panels"
  | "open"
  | "spot"
  | "aim"
  | "hours"
  | "night"
  | "power"
  | "mode"
  | "home"
  | "clock"
  | "source"
  | "fuel"
  | "reserve";

/** One thing about a plan that can be more or less, or other than it is. */
export interface Lever {
  /** Stays the same while the plan does: what is locked is kept by it. */
  readonly id: string;
  readonly kind: LeverKind;
  readonly name: string;
  /** Positions, each going further than the one before; as the plan stands is before the first. */
  readonly amounts: readonly Amount[];
  /** Whether going further never takes back what was reached: then the smallest amount is found by halving, else every amount is tried. */
  readonly isMonotone: boolean;
  /** Parts of the plan that it changes; two levers that change the same are not pulled together. */
  readonly touches: readonly string[];
}

/** A change that puts a value at a place; what is put there is data as it stands in a document. */
export const put = (at: string, to: unknown): Change => ({ at, to }) as Change;
/** A change that adds something to a list. */
export const added = (at: string, add: unknown): Change => ({ at, add }) as Change;

export const NOTHING: Price = { cost: 0, massKg: 0, minutes: 0, onAirH: 0 };
export const NOT_STATED: Price = { cost: null, massKg: null, minutes: null, onAirH: 0 };

/** The prices of several things together. */
export function sumOf(prices: readonly Price[]): Price {
  const add = (a: number | null, b: number | null) => (a === null || b === null ? null : a + b);
  return prices.reduce(
    (sum, each) => ({
      cost: add(sum.cost, each.cost),
      massKg: add(sum.massKg, each.massKg),
      minutes: add(sum.minutes, each.minutes),
      onAirH: sum.onAirH + each.onAirH,
    }),
    NOTHING,
  );
}

/** Whether two levers can be pulled together: neither changes what the other does, or something inside of it. */
export function goTogether(one: Lever, other: Lever): boolean {
  const isWithin = (inner: string, outer: string) => inner === outer || inner.startsWith(`${outer}.`);
  return !one.touches.some((a) => other.touches.some((b) => isWithin(a, b) || isWithin(b, a)));
}
