import { type Odds, wilson } from "../odds/wilson.ts";
import { needed } from "../reach/reachSingles.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { CancelSignal, TaskPool } from "../task/taskRun.ts";
import { identities } from "../task/taskStore.ts";
import type { PackingPlan } from "./packingPlan.ts";
import {
  compareSets,
  dotsOf,
  frontierOf,
  isWithin,
  MOST_TOLD,
  type PackedSet,
  type PackingReport,
  type PackLimits,
  packedSet,
} from "./packingReport.ts";
import { choicesOf, keyOf } from "./packingSpace.ts";
import { packingTask } from "./packingTask.ts";
import { makeBeats, PACK_ORDERS, type PackOrder, type Priced, thingPrice, totalsOf } from "./thingPrice.ts";

/** What is asked of a plan and a list. */
export interface PackingAims {
  /** Share of members in which the plan is to hold, above 0, at most 1. */
  readonly targetShare: number;
  readonly order: PackOrder;
  readonly limits: PackLimits;
}

/** How it is worked out. */
export interface PackingWorks {
  readonly pool: TaskPool;
  readonly surroundings: Surroundings;
  readonly seed: string;
  readonly members: number;
  readonly signal?: CancelSignal;
  /** What was counted before of this plan with this list and seed; grows. */
  readonly memory: PackingMemory;
  readonly early?: (report: PackingReport) => void;
  /** Told how far it is, 0…1. */
  readonly onProgress?: (share: number) => void;
}

/** Members that hold of all sets, by how many members were run; where sets are few enough to be run whole. */
export type PackingMemory = Map<number, readonly number[]>;
export const makePackingMemory = (): PackingMemory => new Map();

/** Thrown where the plan cannot be prepared. */
export class PackingRefused extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(({ message }) => message).join(" "));
  }
}

/** Up to how many sets are run whole and told one by one; of more, so many are looked at in one wave. */
interface PackingFew {
  readonly told: number;
  readonly wave: number;
}

/** Members of the first look. */
const COARSE_MEMBERS = 100;
/** Sets that one wave looks at, where they are too many to be run whole. */
const WAVE = 1024;
/** Stretches that a wave of sets is cut into: each free worker takes the next, and a stop is heard between them. */
const STRETCHES = 24;

interface Candidate extends Priced {
  readonly key: number;
}

/** Members held and run, by a set's place. */
interface Counts {
  readonly held: Int32Array;
  readonly run: Int32Array;
}

/**
 * Which of all sets of a list reach a target, and which of those no other beats in mass, minutes and money. All on the same members, 0…members−1 of
 * the seed: the odds of a set are those of the scenario made of it.
 *
 * Few sets are run whole. Of many, a set is run until it is sure to miss, and one that takes no less in any respect than one that
 * reaches the target is not run at all: it cannot be proposed, whatever it holds. Nothing is taken for granted about more being better.
 * @throws what `TaskPool.run` throws, PackingRefused where the plan cannot be prepared, and RangeError if the target is no share
 */
export async function runPacking(
  plan: PackingPlan,
  aims: PackingAims,
  works: PackingWorks,
  few: PackingFew = { told: MOST_TOLD, wave: WAVE },
): Promise<PackingReport> {
  const { targetShare } = aims;
  if (!(targetShare > 0 && targetShare <= 1)) throw new RangeError(`targetShare must lie in 0…1, got ${targetShare}`);
  const prices = plan.things.map(thingPrice);
  const all = plan.keys.map((key): Candidate => {
    const take = plan.takeOf(key);
    return { key, take, totals: totalsOf(take, prices) };
  });
  const counts = { held: new Int32Array(all.length), run: new Int32Array(all.length) };
  const beats = makeBeats(prices);
  const tell = (members: number, isOpen: boolean) =>
    reportOf(plan, aims, works, all, counts, beats, members, isOpen, few.told);
  if (all.length <= few.told) {
    await runWhole(all, counts, plan, works, (members) => works.early?.(tell(members, true)));
    return tell(works.members, false);
  }
  await runNeeded(all, counts, plan, aims, works, beats, few.wave);
  const report = tell(works.members, false);
  const without = await withoutEach(plan, works, report.proposed);
  if (report.isWithin) return { ...report, without };
  await runLikely(all, counts, plan, aims, works);
  return { ...report, without, nearest: tell(works.members, false).nearest };
}

/** Where nothing within the limits reaches the target: so many sets are run whole that have held most often so far. */
const MOST_LIKELY = 48;

async function runLikely(
  all: readonly Candidate[],
  counts: Counts,
  plan: PackingPlan,
  { limits }: PackingAims,
  works: PackingWorks,
): Promise<void> {
  const share = (k: number) => counts.held[k]! / Math.max(1, counts.run[k]!);
  const within = [...all.keys()].filter((k) => isWithin(all[k]!.totals, limits));
  const likely = (within.length > 0 ? within : [...all.keys()])
    .filter((k) => counts.run[k]! < works.members)
    .sort((a, b) => share(b) - share(a) || a - b)
    .slice(0, MOST_LIKELY);
  for (const k of likely) {
    counts.held[k] = 0;
    counts.run[k] = 0;
  }
  await countOn(likely, all, counts, plan, works, 0, works.members, works.members, () => {});
}

/** Every set on all members, the first look first. */
async function runWhole(
  all: readonly Candidate[],
  counts: Counts,
  plan: PackingPlan,
  works: PackingWorks,
  first: (members: number) => void,
): Promise<void> {
  const { members, memory } = works;
  const coarse = Math.min(COARSE_MEMBERS, members);
  const places = [...all.keys()];
  let done = 0;
  for (const to of coarse === members ? [members] : [coarse, members]) {
    const known = memory.get(to);
    if (known === undefined) {
      const share = (part: number) => works.onProgress?.((done + part * (to - done)) / members);
      await countOn(places, all, counts, plan, works, done, to, members, share);
      memory.set(to, [...counts.held]);
    } else {
      counts.held.set(known);
      counts.run.fill(to);
    }
    done = to;
    if (to < members && !memory.has(members)) first(to);
  }
}

/** Sets that may turn out to be of the frontier, cheapest first, in waves: each is run until it is sure to miss. */
async function runNeeded(
  all: readonly Candidate[],
  counts: Counts,
  plan: PackingPlan,
  { targetShare }: PackingAims,
  works: PackingWorks,
  beats: ReturnType<typeof makeBeats>,
  mostAtOnce: number,
): Promise<void> {
  const { members } = works;
  const need = needed(targetShare, members);
  const most = PACK_ORDERS.map((each) => all.reduce((top, { totals }) => Math.max(top, totals[each].sum), 1e-9));
  const burden = ({ totals }: Candidate) => PACK_ORDERS.reduce((sum, each, k) => sum + totals[each].sum / most[k]!, 0);
  const burdens = all.map(burden);
  let open = [...all.keys()].sort((a, b) => burdens[a]! - burdens[b]! || a - b);
  let reaching: Candidate[] = [];
  while (open.length > 0) {
    const wave = open.slice(0, mostAtOnce).sort((a, b) => a - b);
    const share = (part: number) => works.onProgress?.((all.length - open.length + part * wave.length) / all.length);
    const coarse = Math.min(COARSE_MEMBERS, members);
    await countOn(wave, all, counts, plan, works, 0, coarse, members - need, (part) => share(part / 2));
    const left = wave.filter((k) => counts.run[k]! - counts.held[k]! <= members - need);
    if (coarse < members) {
      const rest = (part: number) => share(0.5 + part / 2);
      await countOn(left, all, counts, plan, works, coarse, members, members - need, rest);
    }
    const found = wave.filter((k) => counts.held[k]! >= need).map((k) => all[k]!);
    reaching = lightest([...reaching, ...found], beats);
    open = open.slice(mostAtOnce).filter((k) => !reaching.some((each) => beats(each, all[k]!)));
  }
}

/** Those that no other beats. */
const lightest = (sets: readonly Candidate[], beats: ReturnType<typeof makeBeats>) =>
  sets.filter((set) => !sets.some((each) => beats(each, set)));

/** Runs sets on from member to member, each until more of these members miss than may. */
async function countOn(
  places: readonly number[],
  all: readonly Candidate[],
  counts: Counts,
  plan: PackingPlan,
  works: PackingWorks,
  firstMember: number,
  lastMember: number,
  mayMiss: number,
  onShare: (share: number) => void,
): Promise<void> {
  if (places.length === 0) return;
  const { pool, surroundings, seed, signal } = works;
  const keys = places.map((k) => all[k]!.key);
  const isHeavy = surroundings.climate !== undefined;
  const surroundingsKey = isHeavy ? JSON.stringify(identities(surroundings)) : null;
  const task = { space: plan.space, keys, seed, surroundings, surroundingsKey, firstMember, lastMember, mayMiss };
  const found = await pool.run(
    packingTask,
    { ...task, from: 0, to: keys.length },
    {
      most: Math.max(1, Math.ceil(keys.length / STRETCHES)),
      onProgress: (done, of) => onShare(done / of),
      ...(signal === undefined ? {} : { signal }),
    },
  );
  if (!found.ok) throw new PackingRefused(found.problems);
  places.forEach((k, at) => {
    counts.held[k]! += found.part.held[at]!;
    counts.run[k]! += found.part.run[at]!;
  });
}

function reportOf(
  plan: PackingPlan,
  { targetShare, order, limits }: PackingAims,
  { seed }: PackingWorks,
  all: readonly Candidate[],
  counts: Counts,
  beats: ReturnType<typeof makeBeats>,
  members: number,
  isOpen: boolean,
  mostTold: number,
): PackingReport {
  const need = needed(targetShare, members);
  const sets = all.map((each, k) => {
    const count = { held: counts.held[k]!, run: counts.run[k]! };
    return packedSet(each, limits, count, members, need);
  });
  const reaching = sets.filter(({ outcome }) => outcome === "reaches");
  const within = reaching.filter((set) => set.isWithin);
  const frontier = frontierOf(within.length > 0 ? within : reaching, beats, order);
  const proposed = frontier[0] ?? null;
  const isSource = plan.things.map(({ kind }) => kind === "generator");
  const leastOf = (each: PackOrder) =>
    frontier.reduce((best, set, k) => (compareSets(each)(set, frontier[best]!) < 0 ? k : best), 0);
  return {
    seed,
    members,
    targetShare,
    order,
    limits,
    all: sets.length,
    run: sets.filter(({ outcome }) => outcome !== "beaten").length,
    sets: sets.length <= mostTold ? sets : null,
    dots: dotsOf(sets, isSource),
    frontier,
    isWithin: within.length > 0,
    leastOf: { mass: leastOf("mass"), minutes: leastOf("minutes"), money: leastOf("money") },
    proposed,
    without: sets.length <= mostTold && proposed !== null ? withoutKnown(plan, proposed, sets) : [],
    beaten: proposed === null ? null : beatenBy(proposed, reaching, beats),
    nearest: within.length > 0 ? null : nearestOf(sets),
    leftOut: plan.leftOut,
    isOpen,
  };
}

/** The set without a thing, all else as it is; null where there is none, as without the only battery. */
function keyWithout(plan: PackingPlan, { key, take }: PackedSet, thing: number): number | null {
  const chosen = choicesOf(key, plan.sizes);
  const before = plan.things.map((each, t) =>
    t === thing ? 0 : each.kind === "lead" || each.kind === "controller" ? null : take[t]!,
  );
  // The choice that brings the thing is the one to change: none of it, or the bank without it.
  for (let place = 0; place < chosen.length; place++) {
    for (let choice = 0; choice < plan.sizes[place]!; choice++) {
      if (choice === chosen[place]) continue;
      const other = keyOf(
        chosen.map((each, k) => (k === place ? choice : each)),
        plan.sizes,
      );
      const now = plan.takeOf(other);
      if (before.every((count, t) => count === null || count === now[t])) return other;
    }
  }
  return null;
}

/** Things of a set that may be left away one by one; a lead and a controller go with their panels. */
function removable(plan: PackingPlan, set: PackedSet): { readonly thing: number; readonly key: number }[] {
  return plan.things.flatMap(({ kind }, thing) => {
    if (set.take[thing]! === 0 || kind === "lead" || kind === "controller") return [];
    const key = keyWithout(plan, set, thing);
    return key === null ? [] : [{ thing, key }];
  });
}

function withoutKnown(plan: PackingPlan, proposed: PackedSet, sets: readonly PackedSet[]) {
  const byKey = new Map(sets.map((set) => [set.key, set]));
  return removable(plan, proposed).flatMap(({ thing, key }) => {
    const holds = byKey.get(key)?.holds ?? null;
    return holds === null ? [] : [{ thing, holds }];
  });
}

/** The same where sets are many: those few are run whole. */
async function withoutEach(
  plan: PackingPlan,
  works: PackingWorks,
  proposed: PackedSet | null,
): Promise<{ readonly thing: number; readonly holds: Odds }[]> {
  if (proposed === null) return [];
  const each = removable(plan, proposed);
  const totals = proposed.totals;
  const all = each.map(({ key }): Candidate => ({ key, take: plan.takeOf(key), totals }));
  const counts = { held: new Int32Array(all.length), run: new Int32Array(all.length) };
  await countOn([...all.keys()], all, counts, plan, works, 0, works.members, works.members, () => {});
  return each.map(({ thing }, k) => ({ thing, holds: wilson(counts.held[k]!, works.members) }));
}

/** Of what a set beats, the nearest to it: fewest other pieces, then least mass. */
function beatenBy(
  proposed: PackedSet,
  reaching: readonly PackedSet[],
  beats: ReturnType<typeof makeBeats>,
): PackedSet | null {
  const away = ({ take }: PackedSet) => take.reduce((sum, count, t) => sum + Math.abs(count - proposed.take[t]!), 0);
  return reaching
    .filter((set) => set.holds !== null && beats(proposed, set))
    .reduce<PackedSet | null>((best, set) => (best === null || away(set) < away(best) ? set : best), null);
}

/** Of those within the limits, the one that holds most often; of all where none is within. */
function nearestOf(sets: readonly PackedSet[]): PackedSet | null {
  const run = sets.filter(({ holds }) => holds !== null);
  const within = run.filter((set) => set.isWithin);
  return (within.length > 0 ? within : run).reduce<PackedSet | null>(
    (best, set) => (best === null || set.holds!.count > best.holds!.count ? set : best),
    null,
  );
}
