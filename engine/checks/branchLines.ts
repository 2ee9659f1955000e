import { ampacityA } from "./ampacityA.ts";
import type { Branch, BranchKind } from "./branch.ts";
import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES, type LimitRule } from "./limitRules.ts";
import { protectedParts, weakestPart } from "./makeBranch.ts";
import { putRight } from "./putRight.ts";
import { cableDropV, sizeInWords } from "./wireSizes.ts";

/** What one kind of branch is called in ids, words and rules. */
interface BranchWords {
  /** Ids of its lines; what follows the first slash of the branch's own id is put behind them. */
  readonly fuse: string;
  readonly protects: string;
  readonly wire: string;
  readonly flows: string;
  readonly fuseRule: LimitRule;
  readonly wireRule: LimitRule;
}

const LOAD = {
  flows: "current through the fuse",
  fuseRule: LIMIT_RULES.fuseCarries,
  wireRule: LIMIT_RULES.wireCarries,
};
const CHARGE = {
  flows: "1.25 × charging current",
  fuseRule: LIMIT_RULES.controllerFuse,
  wireRule: LIMIT_RULES.wireCarries,
};
const named = (id: string, protects = `${id}-fuse-wire`) => ({ fuse: `${id}-fuse`, protects, wire: `${id}-wire` });
const WORDS: Readonly<Record<BranchKind, BranchWords>> = {
  string: { ...named("string-lead"), ...LOAD },
  main: { fuse: "main-fuse-carries", protects: "main-fuse-protects", wire: "main-wire-carries", ...LOAD },
  converterIn: { ...named("converter-in"), ...LOAD },
  converterOut: { ...named("converter-out"), ...LOAD },
  panels: { ...named("panel"), ...LOAD, wireRule: LIMIT_RULES.panelWire },
  controller: { ...named("controller"), ...CHARGE },
  source: { ...named("source"), ...CHARGE },
  station: { fuse: "lead-fuse-carries", protects: "lead-fuse-wire", wire: "lead-wire-carries", ...LOAD },
  gear: { ...named("gear"), ...LOAD },
};

/** What every conductor is held against: its fuse carries what flows and protects what is behind it, its wire carries it, and its drop. */
export function branchLines(branch: Branch, context: LimitContext): LimitLine[] {
  const { about, cable, cableField, isCableAssumed, fuse, kind, wireA } = branch;
  const words = WORDS[kind];
  const behind = branch.id.includes("/") ? branch.id.slice(branch.id.indexOf("/")) : "";
  const change = putRight(branch, context) ?? "Nothing.";
  const lead = isCableAssumed ? { assumed: assumedWords(branch) } : {};
  const common = { run: branch.id, about, cautions: ["fire"], change };
  const lines: LimitLine[] = [];
  if (fuse !== null) {
    lines.push(
      limitLine({
        ...common,
        id: `${words.fuse}${behind}`,
        quantity: words.flows,
        value: fuse.needA,
        unit: "A",
        limit: fuse.ratingA,
        closeWithin: 0,
        isAbove: fuse.isPeakBound,
        isOverWhereMissing: `No fuse is stated, and without one a short burns the wire. ${change} Then state ${fuse.field}.`,
        rule: words.fuseRule,
      }),
    );
    const weakest = weakestPart(protectedParts(branch, context));
    if (fuse.ratingA !== null && weakest !== null) {
      const isWire = weakest.name === "wire";
      lines.push(
        limitLine({
          ...common,
          ...(isWire ? lead : {}),
          id: `${words.protects}${behind}`,
          quantity: `fuse for the ${weakest.name} behind it`,
          value: fuse.ratingA,
          unit: "A",
          limit: weakest.mostA,
          closeWithin: 0,
          rule: isWire ? LIMIT_RULES.fuseForWire : LIMIT_RULES.fuseForGear,
        }),
      );
    }
  }
  lines.push(
    limitLine({
      ...common,
      ...lead,
      id: `${words.wire}${behind}`,
      quantity: "current the wire must carry",
      value: wireA,
      unit: "A",
      limit: cable === null ? null : ampacityA(cable, context.warmestC),
      rule: words.wireRule,
      fill: cableField,
      ...(cable === null || ampacityA(cable, context.warmestC) === null ? { isOverWhereMissing: change } : {}),
    }),
  );
  if (cable !== null) lines.push(dropLine(branch, context, { ...common, ...lead }));
  return lines;
}

function dropLine(
  { id, cable, dropA, atV }: Branch,
  context: LimitContext,
  common: { readonly run: string; readonly about: string; readonly change: string; readonly assumed?: string },
): LimitLine {
  return limitLine({
    ...common,
    cautions: [],
    id: `drop/${id}`,
    quantity: `drop at ${dropA.toFixed(1)} A (${cable!.oneWayM} m of ${sizeInWords(cable!)} out and back)`,
    value: cableDropV(cable!, dropA) / atV,
    unit: "share",
    limit: context.targetDropShare,
    rule: LIMIT_RULES.drop,
  });
}

/** What is counted with where nobody stated the lead. */
function assumedWords({ cable, cableField }: Branch): string {
  const counts = cable === null ? "" : `: this counts with ${sizeInWords(cable)} over ${cable.oneWayM} m one way`;
  return `State ${cableField}${counts}.`;
}
