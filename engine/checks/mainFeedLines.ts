import { internalOhmFull } from "../bank/bankOhm.ts";
import type { Branch } from "./branch.ts";
import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";
import { putRight } from "./putRight.ts";

/** Most conductor between post and fuse: 7 in, or 72 in where it runs in a sheath (33 CFR 183.455), m. */
const BARE_M = 0.178;
const SHEATHED_M = 1.83;
/** What the fuse of a lithium bank must interrupt where its maker says nothing, A (ABYC E-13). */
const LITHIUM_SHORT_A = 20_000;

/**
 * What a dead short across the full bank drives, A: as its maker states; else 20 kA for lithium, and for lead its open volts when full over the
 * smallest resistance that it has then.
 */
export function shortCircuitA(context: Pick<LimitContext, "fullOpenV" | "run">): number {
  const { bank, scenario } = context.run.prepared;
  if (scenario.bank.shortCircuitA !== undefined) return scenario.bank.shortCircuitA;
  if (scenario.bank.chemistry === "lfp") return LITHIUM_SHORT_A;
  const ohm = Math.min(bank.suddenOhm, internalOhmFull(bank));
  return ohm > 0 ? context.fullOpenV / ohm : LITHIUM_SHORT_A;
}

/** What the main feed has besides its wire and its fuse: how near the fuse sits, what it interrupts, switch, distribution, converter. */
export function mainFeedLines(context: LimitContext, branches: readonly Branch[]): LimitLine[] {
  const { scenario } = context.run.prepared;
  const { mainFeed: feed, converter } = scenario;
  const main = branches.find(({ id }) => id === "main")!;
  const out = branches.find(({ kind }) => kind === "converterOut");
  const common = { run: "main", about: "main feed", cautions: ["fire"] };
  const rated = (
    branch: Branch,
    id: string,
    quantity: string,
    value: number,
    limit: number | undefined,
    fill: string,
  ) =>
    limitLine({
      ...common,
      run: branch.id,
      id,
      quantity,
      value,
      unit: "A",
      limit: limit ?? null,
      rule: LIMIT_RULES.ratingHolds,
      change: changeFor(branch, context, id, value),
      fill,
    });
  return [
    limitLine({
      ...common,
      id: "main-fuse-near",
      quantity: "wire from post to fuse",
      value: feed?.fuseFromPostM ?? null,
      unit: "m",
      limit: feed?.fuseLeadSheathed === true ? SHEATHED_M : BARE_M,
      closeWithin: 0,
      rule: LIMIT_RULES.fuseNear,
      change: "Move the fuse to the post: up to it nothing guards the wire.",
      fill: "mainFeed.fuseFromPostM",
    }),
    limitLine({
      ...common,
      id: "main-fuse-breaks",
      quantity: "short-circuit current of the full bank",
      value: shortCircuitA(context),
      unit: "A",
      limit: feed?.fuseBreaksA ?? null,
      closeWithin: 0,
      isAssumed: scenario.bank.shortCircuitA === undefined,
      rule: LIMIT_RULES.fuseBreaks,
      change: "Fit a fuse with a higher breaking capacity; one that cannot interrupt the arc burns on.",
      fill: "mainFeed.fuseBreaksA",
    }),
    rated(main, "main-disconnect", "current through the switch", main.wireA, feed?.disconnectA, "mainFeed.disconnectA"),
    rated(
      out ?? main,
      "main-distribution",
      "current in the distribution",
      (out ?? main).wireA,
      feed?.distributionA,
      "mainFeed.distributionA",
    ),
    ...(out === undefined
      ? []
      : [
          rated(
            out,
            "converter-amps",
            "peak out of the converter",
            out.peakA,
            converter!.maxOutputA,
            "converter.maxOutputA",
          ),
        ]),
  ];
}

/** What must change about a rated part: all about its branch where that is over, and the part itself. */
function changeFor(branch: Branch, context: LimitContext, id: string, needA: number): string {
  const whole = putRight(branch, context);
  if (id === "converter-amps") {
    const larger = `Bring a converter that gives ${Math.ceil(needA)} A or more, or make the peak smaller.`;
    return whole === null ? larger : `${larger} ${whole}`;
  }
  return whole ?? `Fit one for ${Math.ceil(needA)} A or more, or make the peak smaller.`;
}
