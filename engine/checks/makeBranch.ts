import type { Cable } from "../scenario/cable.ts";
import type { Lead } from "../scenario/lead.ts";
import { largestFuseA } from "./ampacityA.ts";
import { assumedCable } from "./assumedCable.ts";
import type { Branch, BranchFuse, Protected } from "./branch.ts";
import { designA, fuseFor, isPeakBound } from "./fuseFor.ts";
import type { LimitContext } from "./limitContext.ts";

/** What a branch is made of; the rest follows. */
export interface BranchFacts
  extends Pick<Branch, "id" | "kind" | "about" | "short" | "peakA" | "lastingA" | "atV" | "cableField" | "fuse"> {
  readonly box?: Branch["box"];
  readonly sending?: readonly string[];
  /** What its wire must carry, and the current at which its drop is taken, A; by peak and lasting current, and the peak, when left out. */
  readonly wireA?: number;
  readonly dropA?: number;
  readonly stated: Cable | undefined;
  /** What counts where no wire is stated: a cable that runs count with too, or the length of one to be found. */
  readonly usual: Cable | number;
  readonly behind?: readonly (Protected | null)[];
}

/** One conductor, with a wire that is assumed where none is stated. */
export function makeBranch(context: LimitContext, facts: BranchFacts): Branch {
  const { peakA, lastingA, atV, stated, usual, fuse } = facts;
  const { sending = [], wireA = designA(peakA, lastingA), dropA = peakA, behind = [] } = facts;
  const asked = {
    dropA,
    mostDropV: context.targetDropShare * atV,
    carriesA: wireA,
    fuseA: fuse === null ? 0 : (neededFuseA(fuse) ?? Number.POSITIVE_INFINITY),
    airC: context.warmestC,
  };
  const { scenario } = context.run.prepared;
  const cable = stated ?? (typeof usual === "number" ? assumedCable(scenario, usual, asked) : usual);
  return {
    id: facts.id,
    kind: facts.kind,
    about: facts.about,
    short: facts.short,
    ...(facts.box === undefined ? {} : { box: facts.box }),
    peakA,
    lastingA,
    sending,
    wireA,
    dropA,
    atV,
    cable,
    isCableAssumed: stated === undefined,
    cableField: facts.cableField,
    fuse,
    behind: behind.flatMap((part) => (part === null ? [] : [part])),
  };
}

/** The fuse of a branch that carries loads. */
export function loadFuse(peakA: number, lastingA: number, ratingA: number | undefined, field: string): BranchFuse {
  const needA = designA(peakA, lastingA);
  return { ratingA: ratingA ?? null, needA, isPeakBound: isPeakBound(peakA, lastingA), field };
}

/** The smallest fuse that is sold which a branch can have, A; null where none carries what flows. */
export function neededFuseA({ needA, isPeakBound: isAbove }: BranchFuse): number | null {
  return isAbove ? fuseFor(needA, 0, null) : fuseFor(0, needA / CONTINUOUS, null);
}
const CONTINUOUS = designA(0, 1);

/** A holder, a switch or a bar of a stated rating; null where none is stated. */
export const ratedPart = (name: string, mostA: number | undefined): Protected | null =>
  mostA === undefined ? null : { name, mostA };

/** The holder of a lead's fuse. */
export const holderOf = (lead: Lead | undefined): Protected | null => ratedPart("holder", lead?.holderA);

/** All that the fuse of a branch protects, its wire first. */
export function protectedParts({ cable, behind }: Branch, { warmestC }: Pick<LimitContext, "warmestC">): Protected[] {
  const wire = cable === null ? [] : [{ name: "wire", mostA: largestFuseA(cable, warmestC) ?? 0 }];
  return [...wire, ...behind];
}

/** The part that asks for the smallest fuse; null where nothing is known. */
export function weakestPart(parts: readonly Protected[]): Protected | null {
  return parts.length === 0 ? null : parts.reduce((least, part) => (part.mostA < least.mostA ? part : least));
}
