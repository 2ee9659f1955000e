import { type Lever, type LeverKind, type Price, sumOf } from "./lever.ts";

/** What counts most to whoever asks. */
export const REACH_ORDERS = ["money", "mass", "minutes", "hours"] as const;
export type ReachOrder = (typeof REACH_ORDERS)[number];

/** One lever and how far it is pulled: place among the levers, and the amount from 1. */
export interface Pull {
  readonly lever: number;
  readonly amount: number;
}

/** Several levers pulled together, in the order of the levers; none for the plan as it stands. */
export type Pulls = readonly Pull[];

/** What takes nothing of the plan away comes first; then what does without something of it; a smaller reserve is a choice. */
const GIVES_UP: Readonly<Partial<Record<LeverKind, number>>> = {
  hours: 1,
  night: 1,
  power: 1,
  mode: 1,
  home: 1,
  clock: 1,
  reserve: 4,
};

export const priceOf = (levers: readonly Lever[], pulls: Pulls): Price =>
  sumOf(pulls.map(({ lever, amount }) => levers[lever]!.amounts[amount - 1]!.price));

/**
 * Which of two ways comes first: what keeps all of the plan, then the least of what counts most; what is not stated of it comes after what is.
 * @returns below 0 for the first, above 0 for the second
 */
export function compareWays(levers: readonly Lever[], order: ReachOrder): (one: Pulls, other: Pulls) => number {
  const givesUp = (pulls: Pulls) => pulls.reduce((sum, { lever }) => sum + (GIVES_UP[levers[lever]!.kind] ?? 0), 0);
  const figures = ({ cost, massKg, minutes, onAirH }: Price) => {
    const by = { money: cost, mass: massKg, minutes, hours: -onAirH };
    const rest = REACH_ORDERS.filter((each) => each !== order).map((each) => by[each]);
    return [by[order], ...rest].map((value) => value ?? Number.POSITIVE_INFINITY);
  };
  return (one, other) => {
    const a = [givesUp(one), ...figures(priceOf(levers, one)), ...one.flatMap(({ lever, amount }) => [lever, amount])];
    const b = [
      givesUp(other),
      ...figures(priceOf(levers, other)),
      ...other.flatMap(({ lever, amount }) => [lever, amount]),
    ];
    for (let k = 0; k < Math.min(a.length, b.length); k++) if (a[k] !== b[k]) return a[k]! < b[k]! ? -1 : 1;
    return a.length - b.length;
  };
}
