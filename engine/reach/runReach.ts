import { wilson } from "../odds/wilson.ts";
import type { Lever } from "./lever.ts";
import { type HeldMemory, type HeldWorks, makeHeld } from "./makeHeld.ts";
import { plannedWh } from "./plannedWh.ts";
import type { Pulls, ReachOrder } from "./reachOrder.ts";
import { makePulled, type ReachPlan } from "./reachPlan.ts";
import { type ReachReport, type RowsAsk, rowsAlone, rowsSpare, wayOf } from "./reachReport.ts";
import { type Held, needed, type Single, single, spare } from "./reachSingles.ts";
import { waysTogether } from "./reachTogether.ts";

/** Members of the first look. */
export const REACH_COARSE_MEMBERS = 100;

/** What is asked of a plan. */
export interface ReachAims {
  /** Share of members in which the plan is to hold, above 0, at most 1. */
  readonly targetShare: number;
  readonly order: ReachOrder;
  /** Ids of levers that are not up for debate: they are told by themselves and go into nothing else. */
  readonly locked: readonly string[];
}

/** How it is worked out. */
export interface ReachWorks extends Omit<HeldWorks, "base" | "pulled" | "memory" | "onDone"> {
  readonly members: number;
  /** What was counted before of this plan with this seed; grows. */
  readonly memory: ReachMemory;
  /** Told what is known so far. */
  readonly early?: (report: ReachReport) => void;
  /** Told how far it is, 0…1. */
  readonly onProgress?: (share: number) => void;
}

/** Counts of a plan with levers pulled and with things left away. */
export interface ReachMemory {
  readonly levers: HeldMemory;
  readonly spares: HeldMemory;
}
export const makeReachMemory = (): ReachMemory => ({ levers: new Map(), spares: new Map() });

/** Shares of the whole work, roughly: the first look, each lever on all members, pairs and threes. */
const AFTER_FIRST_LOOK = 0.15;
const AFTER_AMOUNTS = 0.6;

/**
 * What it would take for a plan to reach a target: for each lever the smallest amount that does, the best pairs and threes; or, for a plan that reaches
 * it, what can be left away. All on the same members, 0…members−1 of the seed: the odds of a row are those of the scenario made of it.
 * @throws what `TaskPool.run` throws, and RangeError if the target is no share
 */
export async function runReach(plan: ReachPlan, aims: ReachAims, works: ReachWorks): Promise<ReachReport> {
  const { targetShare } = aims;
  if (!(targetShare > 0 && targetShare <= 1)) throw new RangeError(`targetShare must lie in 0…1, got ${targetShare}`);
  const { members, memory } = works;
  const need = needed(targetShare, members);
  const pulled = makePulled(plan, plan.levers);
  const held = makeHeld({ ...works, base: plan.scenario, pulled, memory: memory.levers });
  const coarse = Math.min(members, REACH_COARSE_MEMBERS);
  const coarseNow = await held.held([], coarse);
  const isLikelyHeld = coarseNow >= needed(targetShare, coarse);
  const base = {
    seed: works.seed,
    targetShare,
    order: aims.order,
    alone: [],
    pairs: [],
    threes: [],
    spare: [],
  } satisfies Partial<ReachReport>;
  // The first look is at the levers that are likely to be asked for; whether the plan holds is settled on all members.
  const whole = coarse === members ? Promise.resolve(coarseNow) : held.held([], members);
  whole.catch(() => {}); // awaited below
  if (!isLikelyHeld && coarse < members) {
    const singles = await eachLever(plan.levers, aims, held, coarse, coarseNow);
    works.early?.({
      ...base,
      members: coarse,
      base: wilson(coarseNow, coarse),
      reaches: false,
      alone: rowsAlone(rowsAsk(plan, plan.levers, pulled, aims, coarse), singles, coarseNow),
      isOpen: { amounts: true, together: true },
    });
  }
  works.onProgress?.(AFTER_FIRST_LOOK);
  const heldNow = await whole;
  const report = { ...base, members, base: wilson(heldNow, members), reaches: heldNow >= need };
  if (report.reaches) {
    const left = makePulled(plan, plan.spares);
    const heldLeft = makeHeld({ ...works, base: plan.scenario, pulled: left, memory: memory.spares });
    const spares = await eachSpare(plan, aims, heldLeft, members, heldNow);
    works.onProgress?.(1);
    const rows = rowsSpare(rowsAsk(plan, plan.spares, left, aims, members), spares);
    return { ...report, spare: rows, isOpen: { amounts: false, together: false } };
  }
  const singles = await eachLever(plan.levers, aims, held, members, heldNow);
  const ask = rowsAsk(plan, plan.levers, pulled, aims, members);
  const alone = rowsAlone(ask, singles, heldNow);
  works.early?.({ ...report, alone, isOpen: { amounts: false, together: true } });
  works.onProgress?.(AFTER_AMOUNTS);
  const isFree = (k: number) => !aims.locked.includes(plan.levers[k]!.id);
  const asked = {
    levers: plan.levers,
    singles,
    isFree,
    held,
    heldNow,
    targetShare,
    members,
    coarse,
    order: aims.order,
  };
  const { pairs, threes } = await waysTogether(asked);
  works.onProgress?.(1);
  return {
    ...report,
    alone,
    pairs: pairs.map((way) => wayOf(ask, way)),
    threes: threes.map((way) => wayOf(ask, way)),
    isOpen: { amounts: false, together: false },
  };
}

/** Each lever by itself: on few members by halving, and then on all from where that led. */
function eachLever(levers: readonly Lever[], aims: ReachAims, held: Held, members: number, heldNow: number) {
  const about = (first: Single, lever: Lever) => first.smallest ?? lever.amounts.length;
  return fewThenAll(levers, aims, held, members, heldNow, single, about);
}

function eachSpare({ spares }: ReachPlan, aims: ReachAims, held: Held, members: number, heldNow: number) {
  const about = (first: Single, lever: Lever) => Math.min(lever.amounts.length, (first.smallest ?? 0) + 1);
  return fewThenAll(spares, aims, held, members, heldNow, spare, about);
}

/** @param search how far one lever goes; @param aboutOf where to look on all members, after what few have shown */
async function fewThenAll(
  levers: readonly Lever[],
  { targetShare }: ReachAims,
  held: Held,
  members: number,
  heldNow: number,
  search: typeof single,
  aboutOf: (first: Single, lever: Lever) => number,
): Promise<Single[]> {
  const coarse = Math.min(members, REACH_COARSE_MEMBERS);
  const coarseNow = await held.held([], coarse);
  return Promise.all(
    levers.map(async (lever, k) => {
      const first = await search(lever, k, held, needed(targetShare, coarse), coarse, coarseNow);
      if (coarse === members) return first;
      return search(lever, k, held, needed(targetShare, members), members, heldNow, aboutOf(first, lever));
    }),
  );
}

function rowsAsk(
  plan: ReachPlan,
  levers: readonly Lever[],
  pulled: HeldWorks["pulled"],
  { order, locked }: ReachAims,
  members: number,
): RowsAsk {
  const days = (plan.grid.steps * plan.grid.stepH) / 24;
  const baseWh = plannedWh(plan.scenario, plan.grid);
  return {
    levers,
    members,
    order,
    isLocked: (k) => locked.includes(levers[k]!.id),
    why: (pulls: Pulls) => {
      const scenario = pulled(pulls);
      const lessWh = scenario === null ? 0 : baseWh - plannedWh(scenario, plan.grid);
      return `it takes ${Math.round(lessWh / days)} of ${Math.round(baseWh / days)} Wh a day off`;
    },
  };
}
