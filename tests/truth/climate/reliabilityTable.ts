import type { HeldPlan } from "./holdsReliability.ts";
import { type SeasonCount, STATED, together } from "./windowReliability.ts";

/** Members that the kept counts were worked out with. */
export const RELIABILITY_MEMBERS = 400;

/** What tests/truth/data/reliability.json holds. */
export interface KeptReliability {
  readonly what: string;
  readonly how: string;
  readonly stated: readonly number[];
  readonly records: {
    readonly id: string;
    readonly name: string;
    readonly ktRms: number;
    readonly position: readonly SeasonCount[];
    readonly own: readonly SeasonCount[];
    readonly plansByPosition: readonly HeldPlan[];
    readonly plansByOwn: readonly HeldPlan[];
  }[];
}

/** Records of one kind of climate; few of each are at hand. */
export const CLASSES: readonly { readonly name: string; readonly ids: readonly string[] }[] = [
  { name: "maritime", ids: ["nl-de-bilt", "ie-malin-head", "gb-56n-3w"] },
  { name: "continental", ids: ["at-graz", "us-ma-harvard-forest", "ca-swift-current", "kz-petropavl"] },
  { name: "dry and subtropical", ids: ["us-az-maricopa", "es-38n-5w", "us-fl-gainesville"] },
  { name: "tropical", ids: ["br-manaus", "in-hyderabad"] },
];

/** Shares that came, for each of `STATED`, over all seasons. */
export function cameUnder(counts: readonly SeasonCount[]): number[] {
  const windows = counts.reduce((sum, one) => sum + one.windows, 0);
  return STATED.map((_, k) => counts.reduce((sum, one) => sum + one.under[k]!, 0) / windows);
}

export type Fed = "position" | "own";

export function overRecords(kept: KeptReliability, fed: Fed, ids?: readonly string[]): SeasonCount[] {
  return together(kept.records.filter(({ id }) => ids?.includes(id) ?? true).map((record) => record[fed]));
}

/** Edges of the odds that plans are gathered by. */
export const ODDS_EDGES = [0.05, 0.2, 0.4, 0.6, 0.8, 0.95] as const;

/** Plans gathered by their odds: mean of what was stated, share of the years in which they held. */
export function heldByOdds(plans: readonly HeldPlan[]) {
  return ODDS_EDGES.slice(1).map((to, k) => {
    const from = ODDS_EDGES[k]!;
    const among = plans.filter(({ odds }) => odds >= from && (odds < to || to === 0.95));
    const inBin = among.filter(({ odds }) => odds <= to);
    const years = inBin.reduce((sum, plan) => sum + plan.years, 0);
    const stated = inBin.reduce((sum, plan) => sum + plan.odds * plan.years, 0) / Math.max(1, years);
    const held = inBin.reduce((sum, plan) => sum + plan.held, 0) / Math.max(1, years);
    return { from, to, plans: inBin.length, years, stated, held };
  });
}
