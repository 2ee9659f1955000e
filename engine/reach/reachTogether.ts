import { goTogether, type Lever } from "./lever.ts";
import { compareWays, type Pull, type Pulls, type ReachOrder } from "./reachOrder.ts";
import { type Held, needed, type Single } from "./reachSingles.ts";
import { smallestReaching } from "./smallestReaching.ts";

/** Of pairs and threes so many are told. */
const MOST_PAIRS = 6;
const MOST_THREES = 4;
/** Levers that are tried together: those that gain most. */
const MOST_IN_PAIRS = 14;
const MOST_IN_THREES = 9;
/** Amounts of the coarser of two levers at which the finer is looked along. */
const PORTIONS = 3;
/** How far, in standard errors, a pair may miss the target on few members and still be tried on all. */
const SLACK = 2.5;
/** Ways that are tried on all members at once. */
const AT_ONCE = 6;

/** What is asked for: levers with what each does by itself, and how much is enough. */
export interface TogetherAsk {
  readonly levers: readonly Lever[];
  readonly singles: readonly Single[];
  /** Whether a lever may be pulled together with others. */
  readonly isFree: (lever: number) => boolean;
  readonly held: Held;
  readonly heldNow: number;
  readonly targetShare: number;
  readonly members: number;
  /** Members of the first look. */
  readonly coarse: number;
  readonly order: ReachOrder;
}

/** A way that reaches the target, with members that hold. */
export interface Way {
  readonly pulls: Pulls;
  readonly held: number;
}

/**
 * The best pairs and threes. Each lever goes up to just below what it takes alone. Of a pair the finer lever is looked along at some amounts of the
 * coarser one; of threes, of which no two reach the target, each is taken back as far as it goes. All are looked at on few members first; those
 * that are told are then exact on all of them: no lever of theirs can be one amount smaller.
 */
export async function waysTogether(ask: TogetherAsk): Promise<{ readonly pairs: Way[]; readonly threes: Way[] }> {
  const free = await gainers(ask);
  const tops = await pairTops(ask, free.slice(0, MOST_IN_PAIRS));
  const pairs = await bestPairs(ask, tops);
  return { pairs, threes: await bestThrees(ask, free.slice(0, MOST_IN_THREES), tops) };
}

/** A lever with the most of it that may go into a pair. */
interface Usable {
  readonly lever: number;
  readonly most: number;
  readonly held: number;
}

async function gainers({ levers, singles, isFree, held, heldNow, coarse, members }: TogetherAsk): Promise<Usable[]> {
  const before = coarse === members ? heldNow : await held.held([], coarse);
  const found = await Promise.all(
    levers.map(async (lever, k): Promise<Usable | null> => {
      const { smallest, told } = singles[k]!;
      const most = smallest === null ? told : smallest - 1;
      if (!isFree(k) || most < 1 || lever.kind === "reserve") return null;
      return { lever: k, most, held: await held.held([{ lever: k, amount: most }], coarse) };
    }),
  );
  return found
    .filter((each): each is Usable => each !== null && each.held > before)
    .sort((a, b) => b.held - a.held || a.lever - b.lever);
}

interface PairTop {
  readonly one: Usable;
  readonly other: Usable;
  /** Whether the most of both reaches the target with the few members, and whether it comes near enough to be tried on all. */
  readonly reaches: boolean;
  readonly isNear: boolean;
}

async function pairTops(ask: TogetherAsk, free: readonly Usable[]): Promise<PairTop[]> {
  const { levers, held, coarse } = ask;
  const pairs = free.flatMap((one, k) =>
    free
      .slice(k + 1)
      .flatMap((other) => (goTogether(levers[one.lever]!, levers[other.lever]!) ? [{ one, other }] : [])),
  );
  const need = needed(ask.targetShare, coarse);
  return Promise.all(
    pairs.map(async (pair) => {
      const pulls = pulled(pair.one, pair.other);
      const isNear = await held.reaches(pulls, coarse, need - slackOf(ask));
      return { ...pair, isNear, reaches: isNear && (await held.reaches(pulls, coarse, need)) };
    }),
  );
}

const pulled = (...usables: readonly Usable[]): Pulls =>
  inOrder(usables.map(({ lever, most }) => ({ lever, amount: most })));
const inOrder = (pulls: readonly Pull[]): Pulls => [...pulls].sort((a, b) => a.lever - b.lever);

/** Members of the few that may be missing where it is still worth trying on all. */
function slackOf({ targetShare, coarse, members }: TogetherAsk): number {
  return coarse >= members ? 0 : Math.ceil(SLACK * Math.sqrt(coarse * targetShare * (1 - targetShare) + 0.25));
}

async function bestPairs(ask: TogetherAsk, tops: readonly PairTop[]): Promise<Way[]> {
  const near = tops.filter(({ isNear }) => isNear);
  const guesses = await Promise.all(near.map((top) => pairGuess(ask, top)));
  return exactWays(ask, guesses, MOST_PAIRS);
}

/** The best way to pull two levers, by the few members. */
async function pairGuess(ask: TogetherAsk, { one, other }: PairTop): Promise<Pulls> {
  const { levers, held, targetShare, coarse, order } = ask;
  const need = needed(targetShare, coarse);
  const [rough, fine] = one.most <= other.most ? [one, other] : [other, one];
  const parts = Math.min(PORTIONS, rough.most);
  const portions = Array.from({ length: parts }, (_, k) => Math.ceil(((k + 1) * rough.most) / parts));
  const ways = await Promise.all(
    portions.map(async (portion): Promise<Pulls | null> => {
      const withFine = (amount: number) =>
        inOrder([
          { lever: rough.lever, amount: portion },
          { lever: fine.lever, amount },
        ]);
      const reaches = (amount: number) => held.reaches(withFine(amount), coarse, need);
      const amount = await smallestReaching(fine.most, levers[fine.lever]!.isMonotone, reaches);
      return amount === null ? null : withFine(amount);
    }),
  );
  const found = ways.filter((way): way is Pulls => way !== null).sort(compareWays(levers, order));
  return found[0] ?? pulled(rough, fine);
}

async function bestThrees(ask: TogetherAsk, free: readonly Usable[], tops: readonly PairTop[]): Promise<Way[]> {
  const { held, coarse, targetShare } = ask;
  const need = needed(targetShare, coarse);
  const missing = (a: Usable, b: Usable) =>
    tops.some(({ one, other, reaches }) => !reaches && ((one === a && other === b) || (one === b && other === a)));
  const threes = free.flatMap((a, i) =>
    free.slice(i + 1).flatMap((b, j) => {
      if (!missing(a, b)) return [];
      return free.slice(i + j + 2).flatMap((c) => (missing(a, c) && missing(b, c) ? [pulled(a, b, c)] : []));
    }),
  );
  const looked = await Promise.all(
    threes.map(async (pulls) => ({ pulls, isNear: await held.reaches(pulls, coarse, need - slackOf(ask)) })),
  );
  const near = looked.filter(({ isNear }) => isNear);
  return exactWays(
    ask,
    near.map(({ pulls }) => pulls),
    MOST_THREES,
  );
}

/** The first so many of some ways that reach the target on all members, each as small as it goes. */
async function exactWays(ask: TogetherAsk, guesses: readonly Pulls[], most: number): Promise<Way[]> {
  const compare = compareWays(ask.levers, ask.order);
  const sorted = [...guesses].sort(compare);
  const found: Way[] = [];
  for (let next = 0; next < sorted.length && found.length < most; next += AT_ONCE) {
    const ways = await Promise.all(sorted.slice(next, next + AT_ONCE).map((pulls) => exactWay(ask, pulls)));
    found.push(...ways.filter((way): way is Way => way !== null));
  }
  return found.sort((a, b) => compare(a.pulls, b.pulls)).slice(0, most);
}

/** A way made as small as it goes on all members: the lever with most amounts first. Null where no amount of that one reaches the target. */
async function exactWay(
  { levers, singles, held, targetShare, members }: TogetherAsk,
  guess: Pulls,
): Promise<Way | null> {
  const need = needed(targetShare, members);
  const mostOf = (lever: number) => {
    const { smallest, told } = singles[lever]!;
    return smallest === null ? told : smallest - 1;
  };
  let pulls = guess;
  const byFineness = [...guess].sort((a, b) => mostOf(b.lever) - mostOf(a.lever) || a.lever - b.lever);
  for (const { lever, amount } of byFineness) {
    const isFirst = lever === byFineness[0]!.lever;
    const most = isFirst ? mostOf(lever) : amount;
    const withAmount = (at: number) => pulls.map((each) => (each.lever === lever ? { lever, amount: at } : each));
    const reaches = (at: number) => held.reaches(withAmount(at), members, need);
    const found = await smallestReaching(most, levers[lever]!.isMonotone, reaches, amount);
    if (found === null) return null;
    pulls = withAmount(found);
  }
  // Where two of three do it on all members after all, it is no three.
  const subsets = pulls.length < 3 ? [] : pulls.map((each) => pulls.filter((other) => other !== each));
  for (const subset of subsets) if (await held.reaches(subset, members, need)) return null;
  return { pulls, held: await held.held(pulls, members) };
}
