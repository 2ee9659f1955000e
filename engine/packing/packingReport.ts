import { type Odds, wilson } from "../odds/wilson.ts";
import type { PackingPlan } from "./packingPlan.ts";
import { PACK_ORDERS, type PackOrder, type PackTotals, type Priced } from "./thingPrice.ts";

/** The most that may be packed, in each respect; null for no limit. */
export type PackLimits = Readonly<Record<PackOrder, number | null>>;

/** A set with what it takes and what became of it. Plain data. */
export interface PackedSet extends Priced {
  /** Its number; the same while the list and the plan are. */
  readonly key: number;
  /** Null where it was not run to the end: it is sure to miss, or sure to be beaten. */
  readonly holds: Odds | null;
  readonly outcome: PackOutcome;
  readonly isWithin: boolean;
}

/** Whether a set reaches the target; one that takes no less in any respect than one that does need not be run. */
export type PackOutcome = "reaches" | "fails" | "beaten";

/** Sets at one place of the picture. */
export interface PackDot {
  readonly massKg: number;
  readonly minutes: number;
  readonly sets: number;
  readonly outcome: PackOutcome;
  /** Whether a generator comes along. */
  readonly hasSource: boolean;
}

/** What can be packed for a plan. Plain data. */
export interface PackingReport {
  readonly seed: string;
  /** Members behind every figure. */
  readonly members: number;
  readonly targetShare: number;
  readonly order: PackOrder;
  readonly limits: PackLimits;
  /** Sets that there are, and how many of them were run. */
  readonly all: number;
  readonly run: number;
  /** Every set, where they are few enough to be told one by one; else null. */
  readonly sets: readonly PackedSet[] | null;
  readonly dots: readonly PackDot[];
  /** Sets that reach the target within the limits and that no other beats, by what counts most; where none is within, those beyond. */
  readonly frontier: readonly PackedSet[];
  readonly isWithin: boolean;
  /** Places in `frontier` by what each is best at. */
  readonly leastOf: Readonly<Record<PackOrder, number>>;
  /** The first of the frontier; null where nothing reaches the target. */
  readonly proposed: PackedSet | null;
  /** Without each thing of the proposal, all else as it is; things without which there would be no bank are not among them. */
  readonly without: readonly { readonly thing: number; readonly holds: Odds }[];
  /** A set that reaches the target and that the proposal beats, the nearest to it; null where there is none. */
  readonly beaten: PackedSet | null;
  /** Of the sets within the limits, the one that holds most often; null where the proposal is one. */
  readonly nearest: PackedSet | null;
  readonly leftOut: PackingPlan["leftOut"];
  /** Whether more members are still to be run. */
  readonly isOpen: boolean;
}

/** Sets that are told one by one. */
export const MOST_TOLD = 600;
/** Places of the picture, across and up, where sets are too many to be told. */
const ACROSS = 160;
const UP = 90;

export const isWithin = (totals: PackTotals, limits: PackLimits) =>
  PACK_ORDERS.every((order) => limits[order] === null || totals[order].sum <= limits[order]! + 1e-9);

/** What counts most first; what is not stated of it comes after what is; then the rest, and then the odds. */
export function compareSets(order: PackOrder): (one: PackedSet, other: PackedSet) => number {
  const orders = [order, ...PACK_ORDERS.filter((each) => each !== order)];
  return (one, other) => {
    for (const each of orders) {
      const [a, b] = [one.totals[each], other.totals[each]];
      if (a.notStated > 0 !== b.notStated > 0) return a.notStated > 0 ? 1 : -1;
      if (a.sum !== b.sum) return a.sum - b.sum;
    }
    const held = (set: PackedSet) => set.holds?.count ?? 0;
    return held(other) - held(one) || pieces(one) - pieces(other) || one.key - other.key;
  };
}

const pieces = ({ take }: PackedSet) => take.reduce((sum, count) => sum + count, 0);

/** Sets that no other of them beats; of several that take the same, the one that holds most often. */
export function frontierOf(
  reaching: readonly PackedSet[],
  beats: (one: Priced, other: Priced) => boolean,
  order: PackOrder,
): PackedSet[] {
  const compare = compareSets(order);
  // Whatever beats a set takes no more of anything, so that it hardly ever comes after it in this order.
  const sums = ({ totals }: PackedSet) => PACK_ORDERS.map((each) => totals[each].sum);
  const sorted = [...reaching].sort((one, other) => {
    const [a, b] = [sums(one), sums(other)];
    return a[0]! - b[0]! || a[1]! - b[1]! || a[2]! - b[2]! || pieces(one) - pieces(other) || compare(one, other);
  });
  const kept: PackedSet[] = [];
  for (const set of sorted) {
    if (kept.some((each) => beats(each, set))) continue;
    for (let k = kept.length - 1; k >= 0; k--) if (beats(set, kept[k]!)) kept.splice(k, 1);
    const same = kept.findIndex((each) => takesTheSame(each, set));
    if (same < 0) kept.push(set);
    else if (compare(set, kept[same]!) < 0) kept[same] = set;
  }
  return kept.sort(compare);
}

const takesTheSame = (one: PackedSet, other: PackedSet) =>
  PACK_ORDERS.every(
    (order) =>
      one.totals[order].sum === other.totals[order].sum &&
      one.totals[order].notStated + other.totals[order].notStated === 0,
  );

/** Marks for a picture: one for each place that has sets, what matters most on top. */
export function dotsOf(sets: readonly PackedSet[], isSource: readonly boolean[]): PackDot[] {
  const most = (order: PackOrder) => sets.reduce((greatest, { totals }) => Math.max(greatest, totals[order].sum), 1e-9);
  const isMany = sets.length > MOST_TOLD;
  const [perKg, perMinute] = [ACROSS / most("mass"), UP / most("minutes")];
  const rounded = (value: number, per: number) => (isMany ? Math.round(value * per) / per : value);
  const places = new Map<string, PackDot>();
  const weight = { reaches: 0, fails: 1, beaten: 2 };
  for (const { totals, take, outcome } of sets) {
    const massKg = rounded(totals.mass.sum, perKg);
    const minutes = rounded(totals.minutes.sum, perMinute);
    const hasSource = take.some((count, t) => count > 0 && isSource[t]!);
    const key = `${massKg} ${minutes}`;
    const known = places.get(key);
    const isAbove =
      known === undefined ||
      weight[outcome] < weight[known.outcome] ||
      (outcome === known.outcome && known.hasSource && !hasSource);
    const seen = isAbove ? { outcome, hasSource } : { outcome: known.outcome, hasSource: known.hasSource };
    places.set(key, { massKg, minutes, sets: (known?.sets ?? 0) + 1, ...seen });
  }
  return [...places.values()];
}

/** A set as far as it was run. */
export function packedSet(
  priced: Priced & { readonly key: number },
  limits: PackLimits,
  { held, run }: { readonly held: number; readonly run: number },
  members: number,
  need: number,
): PackedSet {
  const outcome = run === 0 ? "beaten" : held >= need ? "reaches" : "fails";
  return {
    key: priced.key,
    take: priced.take,
    totals: priced.totals,
    holds: run === members ? wilson(held, members) : null,
    outcome,
    isWithin: isWithin(priced.totals, limits),
  };
}
