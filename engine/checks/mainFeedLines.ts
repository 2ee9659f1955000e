import { ampacityA, largestFuseA } from "./ampacityA.ts";
import { sizeInWords, smallestBehind } from "./cableDropV.ts";
import { designA, fuseFor, isPeakBound } from "./fuseFor.ts";
import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";

/** Most conductor between post and fuse: 7 in, or 72 in where it runs in a sheath (33 CFR 183.455), m. */
const BARE_M = 0.178;
const SHEATHED_M = 1.83;
/** What the fuse of a lithium bank must interrupt where its maker says nothing, A (ABYC E-13). */
const LITHIUM_SHORT_A = 20_000;

/** What a dead short across the bank drives, A: as its maker states; else 20 kA for lithium, and for lead volts over resistance. */
export function shortCircuitA(context: Pick<LimitContext, "fullOpenV" | "run">): number {
  const { bank, scenario } = context.run.prepared;
  if (scenario.bank.shortCircuitA !== undefined) return scenario.bank.shortCircuitA;
  if (scenario.bank.chemistry === "lfp") return LITHIUM_SHORT_A;
  return bank.suddenOhm > 0 ? context.fullOpenV / bank.suddenOhm : LITHIUM_SHORT_A;
}

/** A part of the main feed that the fuse before it has to protect. */
interface Protected {
  readonly name: string;
  /** The largest fuse that it may stand behind, A. */
  readonly mostA: number;
}

/** What of the main feed asks for the smallest fuse; null where nothing is stated. */
function weakestBehind({ run, warmestC }: LimitContext): Protected | null {
  const parts = protectedParts(run.prepared.scenario.mainFeed, warmestC);
  return parts.length === 0 ? null : parts.reduce((least, part) => (part.mostA < least.mostA ? part : least));
}

function protectedParts(feed: LimitContext["run"]["prepared"]["scenario"]["mainFeed"], warmestC: number): Protected[] {
  const parts = [
    { name: "wire", mostA: feed?.cable === undefined ? undefined : (largestFuseA(feed.cable, warmestC) ?? 0) },
    { name: "switch", mostA: feed?.disconnectA },
    { name: "distribution", mostA: feed?.distributionA },
  ];
  return parts.flatMap(({ name, mostA }) => (mostA === undefined ? [] : [{ name, mostA }]));
}

/** All that must change, where no fuse carries the peak and protects what is behind it. */
function remedy({ run, warmestC, siteA, siteContinuousA }: LimitContext): string {
  const feed = run.prepared.scenario.mainFeed;
  const needed = fuseFor(siteA, siteContinuousA, null);
  if (needed === null) return "make the peak smaller: no single fuse that is sold carries it.";
  const small = protectedParts(feed, warmestC).filter(({ mostA }) => mostA < needed);
  const size = feed?.cable === undefined ? null : smallestBehind(needed, feed.cable, warmestC);
  const names = small.map(({ name }) =>
    name === "wire" && size !== null ? `wire of ${sizeInWords(size)} or thicker` : `a ${name} for ${needed} A or more`,
  );
  return `fit ${[...names, `a ${needed} A fuse`].join(" and ")}, or make the peak smaller.`;
}

/** Fuse, switch, wire and distribution that everything shares. */
export function mainFeedLines(context: LimitContext): LimitLine[] {
  const { warmestC } = context;
  const feed = context.run.prepared.scenario.mainFeed;
  const about = "main feed";
  const needA = designA(context.siteA, context.siteContinuousA);
  const wireA = feed?.cable === undefined ? null : ampacityA(feed.cable, warmestC);
  const weakest = weakestBehind(context);
  const fuse = fuseFor(context.siteA, context.siteContinuousA, weakest?.mostA ?? null);
  const fits =
    fuse === null
      ? `No fuse carries this peak and protects the ${weakest!.name} behind it: ${remedy(context)}`
      : `Fit a ${fuse} A fuse${weakest === null ? ", and wire and switches that it protects" : ""}.`;
  const thicker = "Fit thicker wire.";
  const fire = ["fire"];
  const holds = (id: string, quantity: string, limit: number | null, fill: string) =>
    limitLine({
      id,
      about,
      quantity,
      value: needA,
      unit: "A",
      limit,
      rule: LIMIT_RULES.ratingHolds,
      change: "Fit one with a higher continuous rating, or make the peak smaller.",
      fill,
      cautions: fire,
    });
  return [
    limitLine({
      id: "main-fuse-carries",
      about,
      quantity: "current through the fuse",
      value: needA,
      unit: "A",
      limit: feed?.fuseA ?? null,
      closeWithin: 0,
      isAbove: isPeakBound(context.siteA, context.siteContinuousA),
      isOverWhereMissing: `No main fuse is stated, and without one a short burns the wire. ${fits} Then state mainFeed.fuseA.`,
      rule: LIMIT_RULES.fuseCarries,
      change: fits,
      fill: "mainFeed.fuseA",
      cautions: fire,
    }),
    limitLine({
      id: "main-fuse-protects",
      about,
      quantity: `fuse for the ${weakest?.name ?? "wire"} behind it`,
      value: feed?.fuseA ?? null,
      unit: "A",
      limit: weakest?.mostA ?? null,
      closeWithin: 0,
      rule: weakest === null || weakest.name === "wire" ? LIMIT_RULES.fuseForWire : LIMIT_RULES.fuseForGear,
      change: fuse === null ? remedy(context) : `Fit a smaller fuse: ${fuse} A carries the peak.`,
      fill: feed?.cable === undefined ? "mainFeed.cable" : "mainFeed.fuseA",
      cautions: fire,
    }),
    limitLine({
      id: "main-wire-carries",
      about,
      quantity: "current in the wire",
      value: needA,
      unit: "A",
      limit: wireA,
      rule: LIMIT_RULES.wireCarries,
      change: thicker,
      fill: "mainFeed.cable",
      cautions: fire,
    }),
    limitLine({
      id: "main-fuse-near",
      about,
      quantity: "wire from post to fuse",
      value: feed?.fuseFromPostM ?? null,
      unit: "m",
      limit: feed?.fuseLeadSheathed === true ? SHEATHED_M : BARE_M,
      closeWithin: 0,
      rule: LIMIT_RULES.fuseNear,
      change: "Move the fuse to the post: up to it nothing guards the wire.",
      fill: "mainFeed.fuseFromPostM",
      cautions: fire,
    }),
    limitLine({
      id: "main-fuse-breaks",
      about,
      quantity: "short-circuit current",
      value: shortCircuitA(context),
      unit: "A",
      limit: feed?.fuseBreaksA ?? null,
      closeWithin: 0,
      isAssumed: context.run.prepared.scenario.bank.shortCircuitA === undefined,
      rule: LIMIT_RULES.fuseBreaks,
      change: "Fit a fuse with a higher breaking capacity; one that cannot interrupt the arc burns on.",
      fill: "mainFeed.fuseBreaksA",
      cautions: fire,
    }),
    holds("main-disconnect", "current through the switch", feed?.disconnectA ?? null, "mainFeed.disconnectA"),
    holds("main-distribution", "current in the distribution", feed?.distributionA ?? null, "mainFeed.distributionA"),
  ];
}
