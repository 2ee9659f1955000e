import { ampacityA } from "./ampacityA.ts";
import type { Branch, BranchFuse, Protected } from "./branch.ts";
import type { LimitContext } from "./limitContext.ts";
import { neededFuseA, protectedParts, weakestPart } from "./makeBranch.ts";
import { cableDropV, sizeInWords, smallestSize } from "./wireSizes.ts";

/** What is asked of a branch's wire, its fuse left out. */
export function askedOf(branch: Branch, context: Pick<LimitContext, "targetDropShare" | "warmestC">) {
  return {
    dropA: branch.dropA,
    mostDropV: context.targetDropShare * branch.atV,
    carriesA: branch.wireA,
    airC: context.warmestC,
  };
}

/**
 * All that must change about a branch for every line of it to come right: wire, fuse, holder, switch, distribution, in one sentence; null
 * where nothing has to. A fuse that alone does it is proposed first; else the smallest fuse that carries what flows, and every part that it asks for.
 */
export function putRight(branch: Branch, context: LimitContext): string | null {
  const { cable, fuse } = branch;
  if (cable === null) return divided(branch, context);
  const wireIsBad = isThin(branch, context);
  const parts = protectedParts(branch, context);
  if (fuse === null)
    return wireIsBad || partsUnder(branch.behind, branch.wireA).length > 0 ? withoutFuse(branch, context) : null;
  const weakestA = weakestPart(parts)?.mostA ?? Number.POSITIVE_INFINITY;
  const fits = fuse.ratingA !== null && carries(fuse, fuse.ratingA);
  if (!wireIsBad) {
    if (fits && fuse.ratingA! <= weakestA) return null;
    const alone = smallestFuse(fuse, weakestA);
    if (alone !== null) return `Fit ${aFuse(alone)}.`;
  }
  if (wireIsBad && fits) {
    // The fuse may stay: a wire that may stand behind it, and no other part too small.
    const under = partsUnder(branch.behind, fuse.ratingA!);
    const size = smallestSize(cable, { ...askedOf(branch, context), fuseA: fuse.ratingA! });
    const isDropAlone = (ampacityA(cable, context.warmestC) ?? 0) >= branch.wireA;
    if (size !== null && under.length === 0)
      return `Fit ${sizeInWords(size)} or thicker${isDropAlone ? ", or shorten the run" : ""}.`;
  }
  return allOf(branch, context, fuse);
}

/** Wire, fuse and what stands behind it, for the smallest fuse that carries what flows. */
function allOf(branch: Branch, context: LimitContext, fuse: BranchFuse): string {
  const { cable } = branch;
  const fuseA = neededFuseA(fuse);
  const asked = { ...askedOf(branch, context), fuseA: fuseA ?? 0 };
  const size = fuseA === null ? null : smallestSize(cable!, asked);
  if (fuseA === null || size === null) return divided(branch, context);
  const keepsWire = sizeInWords(size) === sizeInWords(cable!) || isEnoughBehind(branch, context, fuseA);
  const things = [
    ...(keepsWire ? [] : [`wire of ${sizeInWords(size)} or thicker`]),
    ...partsUnder(branch.behind, fuseA).map(({ name }) => `a ${name} for ${fuseA} A or more`),
    ...(fuse.ratingA === fuseA ? [] : [aFuse(fuseA)]),
  ];
  return `Fit ${listed(things)}${branch.kind === "main" || branch.kind === "station" ? ", or make the peak smaller" : ""}.`;
}

function withoutFuse(branch: Branch, context: LimitContext): string {
  const size = smallestSize(branch.cable!, askedOf(branch, context));
  if (size === null) return divided(branch, context);
  const isDropAlone = (ampacityA(branch.cable!, context.warmestC) ?? 0) >= branch.wireA;
  const things = [
    ...(isThin(branch, context) ? [`${sizeInWords(size)} or thicker`] : []),
    ...partsUnder(branch.behind, branch.wireA).map(({ name }) => `a ${name} for ${Math.ceil(branch.wireA)} A or more`),
  ];
  return `Fit ${listed(things)}${isDropAlone && things.length === 1 && isThin(branch, context) ? ", or shorten the run" : ""}.`;
}

/** More runs side by side than this are a busbar's work (our choice, no source). */
const MOST_RUNS = 6;

/** Where no single wire does it: so many runs side by side, each with its own fuse, and what all of it goes through. */
function divided(branch: Branch, context: LimitContext): string {
  const { kind, fuse, behind, cable, wireA } = branch;
  const like = cable ?? { awg: "4/0" as const, oneWayM: 1, tempC: 25 };
  for (let runs = 2; runs <= MOST_RUNS; runs++) {
    const fuseA = fuse === null ? 0 : neededFuseA({ ...fuse, needA: fuse.needA / runs });
    const asked = askedOf(branch, context);
    const each = { ...asked, dropA: asked.dropA / runs, carriesA: asked.carriesA / runs };
    const size = fuseA === null ? null : smallestSize(like, { ...each, fuseA });
    if (size === null) continue;
    const parts = partsUnder(
      behind.filter(({ name }) => name !== "holder"),
      wireA,
    );
    const things = [
      `${runs} runs of ${sizeInWords(size)} side by side${fuse === null ? "" : `, each with ${aFuse(fuseA)}`}`,
      ...parts.map(({ name }) => `a ${name} for ${Math.ceil(wireA)} A or more`),
    ];
    return `No single wire that is sold will do: fit ${listed(things)}, or make the current smaller or the run shorter.`;
  }
  const instead =
    kind === "panels" ? "wire more modules in series if their volts allow it" : "make the current smaller";
  return `No wire that is sold will do, nor ${MOST_RUNS} side by side: shorten the run, or ${instead}.`;
}

/** Whether a wire carries too little or loses too much. */
function isThin({ cable, wireA, dropA, atV }: Branch, { warmestC, targetDropShare }: LimitContext): boolean {
  const thin = (ampacityA(cable!, warmestC) ?? 0) < wireA * (1 - ROUNDING);
  return thin || cableDropV(cable!, dropA) > targetDropShare * atV * (1 + ROUNDING);
}

function isEnoughBehind(branch: Branch, context: LimitContext, fuseA: number): boolean {
  const wire = protectedParts({ ...branch, behind: [] }, context)[0]!;
  return !isThin(branch, context) && wire.mostA >= fuseA;
}

/** Whether a fuse carries what flows. */
export function carries({ needA, isPeakBound }: BranchFuse, ratingA: number): boolean {
  return isPeakBound ? ratingA > needA * (1 + ROUNDING) : ratingA >= needA * (1 - ROUNDING);
}

function smallestFuse(fuse: BranchFuse, mostA: number): number | null {
  const found = neededFuseA(fuse);
  return found === null || found > mostA ? null : found;
}

const partsUnder = (parts: readonly Protected[], fuseA: number) => parts.filter(({ mostA }) => mostA < fuseA);

const listed = (things: readonly string[]) =>
  things.length <= 1 ? things.join("") : `${things.slice(0, -1).join(", ")} and ${things.at(-1)}`;

/** "a 25 A fuse", "an 80 A fuse". */
const aFuse = (amps: number | null) => `a${String(amps).startsWith("8") ? "n" : ""} ${amps} A fuse`;

const ROUNDING = 1e-9;
