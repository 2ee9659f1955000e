import { type Odds, wilson } from "../odds/wilson.ts";
import type { Change } from "../scenario/change.ts";
import type { Lever, LeverKind, Price } from "./lever.ts";
import { compareWays, type Pulls, priceOf, type ReachOrder } from "./reachOrder.ts";
import type { Single } from "./reachSingles.ts";
import type { Way } from "./reachTogether.ts";

/** One lever by itself, with the amount that is told of it. Plain data. */
export interface ReachRow {
  readonly id: string;
  readonly kind: LeverKind;
  readonly name: string;
  /** "415 Ah, was 280" */
  readonly words: string;
  readonly changes: readonly Change[];
  readonly price: Price;
  readonly holds: Odds;
  /** The amount beside it, smaller or, of what is left away, going further; null words for the plan as it stands. */
  readonly next: { readonly words: string | null; readonly holds: Odds };
  readonly reaches: boolean;
  readonly isLocked: boolean;
  /** Why it helps, or how little; begins small and has no stop. */
  readonly why: string;
}

/** Several levers together, none of which can be one amount smaller. Plain data. */
export interface ReachWay {
  readonly parts: readonly {
    readonly id: string;
    readonly kind: LeverKind;
    readonly name: string;
    readonly words: string;
  }[];
  readonly changes: readonly Change[];
  readonly price: Price;
  readonly holds: Odds;
}

/** What it would take for a plan to hold as often as it should. */
export interface ReachReport {
  readonly seed: string;
  /** Members behind every figure. */
  readonly members: number;
  readonly targetShare: number;
  readonly order: ReachOrder;
  /** The plan as it stands. */
  readonly base: Odds;
  readonly reaches: boolean;
  /** Levers that do it alone, then those that do not, each in order; empty for a plan that holds. */
  readonly alone: readonly ReachRow[];
  readonly pairs: readonly ReachWay[];
  readonly threes: readonly ReachWay[];
  /** What can stay at home or be left undone (`reaches`), then what may not, with the odds without it; empty for a plan that misses. */
  readonly spare: readonly ReachRow[];
  /** What is still being worked out. */
  readonly isOpen: { readonly amounts: boolean; readonly together: boolean };
}

/** What the rows of a report are made from. */
export interface RowsAsk {
  readonly levers: readonly Lever[];
  readonly members: number;
  readonly order: ReachOrder;
  readonly isLocked: (lever: number) => boolean;
  readonly why: (pulls: Pulls) => string;
}

/** One row for each lever: those that reach the target first, by what counts most; then those that do not, the nearest first. */
export function rowsAlone(ask: RowsAsk, singles: readonly Single[], heldNow: number): ReachRow[] {
  const { levers, order } = ask;
  const compare = compareWays(levers, order);
  const pullsOf = (k: number): Pulls => [{ lever: k, amount: singles[k]!.told }];
  const heldOf = (k: number) => singles[k]!.heldTold;
  const places = [...levers.keys()];
  const reaching = places.filter((k) => singles[k]!.smallest !== null).sort((a, b) => compare(pullsOf(a), pullsOf(b)));
  const others = places
    .filter((k) => singles[k]!.smallest === null && heldOf(k) > heldNow)
    .sort((a, b) => heldOf(b) - heldOf(a) || a - b);
  return [...reaching, ...others].map((k) => rowOf(ask, k, singles[k]!));
}

function rowOf({ levers, members, isLocked, why }: RowsAsk, k: number, found: Single): ReachRow {
  const { smallest, told, heldTold, next, heldNext } = found;
  const lever = levers[k]!;
  const amount = lever.amounts[told - 1]!;
  return {
    id: lever.id,
    kind: lever.kind,
    name: lever.name,
    words: amount.words,
    changes: amount.changes,
    price: amount.price,
    holds: wilson(heldTold, members),
    next: { words: next === 0 ? null : lever.amounts[next - 1]!.words, holds: wilson(heldNext, members) },
    reaches: smallest !== null,
    isLocked: isLocked(k),
    why: amount.why ?? why([{ lever: k, amount: told }]),
  };
}

/** Rows of what can be left away: as much as can, largest saving of what counts most first; then what may not. */
export function rowsSpare(ask: RowsAsk, spares: readonly Single[]): ReachRow[] {
  const { levers, order } = ask;
  const compare = compareWays(levers, order);
  const pulls = (k: number): Pulls => [{ lever: k, amount: spares[k]!.told }];
  const places = [...levers.keys()];
  const can = places.filter((k) => spares[k]!.smallest !== null).sort((a, b) => compare(pulls(a), pulls(b)));
  const not = places.filter((k) => spares[k]!.smallest === null);
  return [...can, ...not].map((k) => rowOf(ask, k, spares[k]!));
}

/** Several levers together as they are told. */
export function wayOf({ levers, members }: Pick<RowsAsk, "levers" | "members">, { pulls, held }: Way): ReachWay {
  return {
    parts: pulls.map(({ lever, amount }) => {
      const { id, kind, name, amounts } = levers[lever]!;
      return { id, kind, name, words: amounts[amount - 1]!.words };
    }),
    changes: pulls.flatMap(({ lever, amount }) => levers[lever]!.amounts[amount - 1]!.changes),
    price: priceOf(levers, pulls),
    holds: wilson(held, members),
  };
}
