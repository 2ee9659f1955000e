import type { Branch, BranchKind } from "./branch.ts";
import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, type LimitVerdict, VERDICT_ORDER } from "./limitLine.ts";
import { putRight } from "./putRight.ts";
import { cableDropV, sizeInWords } from "./wireSizes.ts";

/** One row of the wiring sheet: a conductor, out and back. */
export interface WiringRun {
  /** Its number on the sheet, from 1: drawing and table are tied by it. */
  readonly number: number;
  readonly id: string;
  readonly kind: BranchKind;
  /** "HF run position", "Roof to controller". */
  readonly name: string;
  /** What feeds it: "Bank", "280 Ah LFP"; null for what the distribution feeds. */
  readonly box: { readonly title: string; readonly detail: string } | null;
  readonly lastingA: number;
  readonly peakA: number;
  /** As stated, A; null where none is stated, or none is needed. */
  readonly fuseA: number | null;
  readonly needsFuse: boolean;
  /** "8 AWG"; null where nothing is stated and nothing that is sold would do. */
  readonly size: string | null;
  /** True where the wire is not stated and only assumed. */
  readonly isAssumed: boolean;
  readonly oneWayM: number | null;
  readonly dropShare: number | null;
  /** The worst verdict of its lines; *unknown* counts behind *assumed*, for what is not stated is another part of it. */
  readonly verdict: LimitVerdict;
  /** What must change, each once; empty where nothing is over. */
  readonly changes: readonly string[];
}

/** Every conductor with its number and how it stands. */
export function wiringRuns(
  branches: readonly Branch[],
  lines: readonly LimitLine[],
  context: LimitContext,
): WiringRun[] {
  return branches.map((branch, i): WiringRun => {
    const { id, kind, short, lastingA, peakA, fuse, cable, isCableAssumed, dropA, atV } = branch;
    const own = lines.filter(({ run }) => run === id);
    const over = own.filter(({ verdict }) => verdict === "over");
    return {
      number: i + 1,
      id,
      kind,
      name: short,
      box: branch.box ?? null,
      lastingA,
      peakA,
      fuseA: fuse?.ratingA ?? null,
      needsFuse: fuse !== null,
      size: cable === null ? null : sizeInWords(cable),
      isAssumed: isCableAssumed,
      oneWayM: cable?.oneWayM ?? null,
      dropShare: cable === null ? null : cableDropV(cable, dropA) / atV,
      verdict: VERDICT_ORDER.find((verdict) => own.some((line) => line.verdict === verdict)) ?? "within",
      changes: changesOf(over, putRight(branch, context)),
    };
  });
}

/** What its wire and fuse ask for is said once, without the field to fill in; then what its other lines ask for. */
function changesOf(over: readonly LimitLine[], right: string | null): string[] {
  if (right === null) return [...new Set(over.map(({ change }) => change))];
  const others = over.map(({ change }) => change).filter((change) => !change.includes(right));
  return over.length === others.length ? [...new Set(others)] : [right, ...new Set(others)];
}
