import type { LimitRule } from "./limitRules.ts";

/** How a value stands to its limit; *unknown* where the scenario leaves one of the two open, *assumed* where it is good with a lead that nobody stated. */
export type LimitVerdict = "over" | "close" | "unknown" | "assumed" | "within";

/** One thing that was held against a limit. Advice for people who know their local code, and no permit. */
export interface LimitLine {
  /** What was checked and where: "radio-volts/hf-run"; the same from run to run. */
  readonly id: string;
  /** The conductor that it belongs to, as `WiringRun.id`; null for bank, panels and charging as such. */
  readonly run: string | null;
  /** Where: "lead of HF run position". */
  readonly about: string;
  /** What: "volts on the worst transmit peak". */
  readonly quantity: string;
  /** In `unit`; null where the scenario does not say. */
  readonly value: number | null;
  readonly unit: string;
  /** In `unit`; null where the scenario does not say. */
  readonly limit: number | null;
  /** Whether the value may be at most the limit, or must be at least it. */
  readonly bound: "most" | "least";
  /** How far the value stays on the good side, as a share of the limit; negative beyond it; null where that means nothing. */
  readonly marginShare: number | null;
  readonly verdict: LimitVerdict;
  /** True where the limit is what is usual for such gear, or that of a lead that is assumed, because the scenario states none. */
  readonly isAssumed: boolean;
  readonly rule: LimitRule;
  /** What to do, one sentence. */
  readonly change: string;
  /** Ids of the cautions to show beside it. */
  readonly cautions: readonly string[];
}

/** What a line is made of; the rest follows. */
export interface LimitLineFacts {
  readonly id: string;
  readonly run?: string;
  readonly about: string;
  readonly quantity: string;
  readonly value: number | null;
  readonly unit: string;
  readonly limit: number | null;
  readonly bound?: "most" | "least";
  /** Distance from the limit, in `unit`, under which a good value counts as close; a tenth of the limit when left out. */
  readonly closeWithin?: number;
  readonly isAssumed?: boolean;
  /** Whether a value that equals a least limit is over: "at or below". */
  readonly isAbove?: boolean;
  readonly rule: LimitRule;
  /** What to do when it is over or close. */
  readonly change: string;
  /** Field of the scenario to fill in when the value or the limit is not stated. */
  readonly fill?: string;
  /** What it says where the limit is not stated, and that is itself a fault: a wire without a fuse. Left out: it is not known. */
  readonly isOverWhereMissing?: string;
  /** Where it counts with a lead that nobody stated: what to state. Such a line is never close or within. */
  readonly assumed?: string;
  readonly cautions?: readonly string[];
}

/** Shares of the limit below which a good value counts as close (our choice, no source). */
const CLOSE_SHARE = 0.1;

/** Holds a value against its limit. */
export function limitLine(facts: LimitLineFacts): LimitLine {
  const { value, limit, bound = "most", assumed, isAssumed = assumed !== undefined } = facts;
  const common = {
    id: facts.id,
    run: facts.run ?? null,
    about: facts.about,
    quantity: facts.quantity,
    value: value === null ? null : value + 0, // a minus zero is a zero
    unit: facts.unit,
    limit: limit === null ? null : limit + 0,
    bound,
    isAssumed,
    rule: facts.rule,
    cautions: facts.cautions ?? [],
  };
  if (limit === null && facts.isOverWhereMissing !== undefined) {
    return { ...common, marginShare: null, verdict: "over", change: facts.isOverWhereMissing };
  }
  if (value === null || limit === null) {
    const change = facts.fill === undefined ? facts.change : `State ${facts.fill}, from the label or the data sheet.`;
    return { ...common, marginShare: null, verdict: "unknown", change };
  }
  const roomBy = bound === "most" ? limit - value : value - limit;
  const closeBy = facts.closeWithin ?? CLOSE_SHARE * Math.abs(limit);
  const isOver = facts.isAbove === true ? roomBy <= 0 : roomBy < -ROUNDING * Math.abs(limit);
  const good = assumed !== undefined ? "assumed" : roomBy < closeBy ? "close" : "within";
  const verdict = isOver ? "over" : good;
  const stated =
    isAssumed && facts.fill !== undefined ? `Nothing, if ${facts.fill} is as usual; state it.` : "Nothing.";
  return {
    ...common,
    marginShare: limit > 0 && facts.unit !== "°C" ? roomBy / limit : null, // half of 10 °C is no temperature
    verdict,
    change: changeOf(verdict, facts, stated),
  };
}

/** What to do about a line: nothing, to state what is assumed, or what must change (and what to state besides). */
function changeOf(verdict: LimitVerdict, { change, assumed }: LimitLineFacts, stated: string): string {
  if (verdict === "within") return stated;
  if (verdict === "assumed") return assumed!;
  return assumed === undefined ? change : `${change} ${assumed}`;
}

/** A value that equals its limit except for the last bits is within it. */
const ROUNDING = 1e-9;

/** Verdicts, the worst first. */
export const VERDICT_ORDER: readonly LimitVerdict[] = ["over", "close", "unknown", "assumed", "within"];

/** Worst first: over, close, unknown, assumed, within; in each, the smallest margin first. */
export function inOrder(lines: readonly LimitLine[]): LimitLine[] {
  const margin = (line: LimitLine) => line.marginShare ?? Number.NEGATIVE_INFINITY;
  const by = (a: LimitLine, b: LimitLine) =>
    VERDICT_ORDER.indexOf(a.verdict) - VERDICT_ORDER.indexOf(b.verdict) ||
    (a.verdict === "unknown" ? 0 : order(margin(a), margin(b)));
  return [...lines].sort(by);
}

function order(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
