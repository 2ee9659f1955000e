import { BESIDE_BANK_M } from "./assumedCable.ts";
import type { Branch } from "./branch.ts";
import { designA } from "./fuseFor.ts";
import type { LimitContext } from "./limitContext.ts";
import { holderOf, loadFuse, makeBranch, ratedPart } from "./makeBranch.ts";

/** Each string's lead where strings stand side by side, the main feed, and into and out of the converter. */
export function mainBranches(context: LimitContext): Branch[] {
  const { scenario } = context.run.prepared;
  return [
    ...(scenario.bank.inParallel > 1 ? [stringBranch(context)] : []),
    mainBranch(context),
    ...(scenario.converter === undefined ? [] : [converterIn(context), converterOut(context)]),
  ];
}

function stringBranch(context: LimitContext): Branch {
  const { bank } = context.run.prepared.scenario;
  const { inParallel, stringLead } = bank;
  const [peakA, lastingA] = [context.siteA / inParallel, context.siteLastingA / inParallel];
  return makeBranch(context, {
    id: "string-lead",
    kind: "string",
    about: `lead of each of ${inParallel} strings`,
    short: `Each of ${inParallel} strings`,
    box: { title: `${inParallel} strings`, detail: bankWords(context) },
    peakA,
    lastingA,
    atV: bank.nominalV,
    stated: stringLead?.cable,
    usual: BESIDE_BANK_M,
    cableField: "bank.stringLead.cable",
    fuse: loadFuse(peakA, lastingA, stringLead?.fuseA, "bank.stringLead.fuseA"),
    behind: [holderOf(stringLead)],
  });
}

function mainBranch(context: LimitContext): Branch {
  const { prepared } = context.run;
  const { scenario } = prepared;
  const feed = scenario.mainFeed;
  const { siteA: peakA, siteLastingA: lastingA } = context;
  return makeBranch(context, {
    id: "main",
    kind: "main",
    about: "main feed",
    short: "Main feed",
    box: { title: "Bank", detail: bankWords(context) },
    peakA,
    lastingA,
    sending: context.peaks.site.sending.map((s) => scenario.stations[s]!.name),
    atV: scenario.bank.nominalV,
    stated: feed?.cable,
    usual: BESIDE_BANK_M,
    cableField: "mainFeed.cable",
    fuse: loadFuse(peakA, lastingA, feed?.fuseA, "mainFeed.fuseA"),
    behind: [
      ratedPart("holder", feed?.holderA),
      ratedPart("switch", feed?.disconnectA),
      // Behind a converter the distribution meets its current, and stands behind its fuse.
      scenario.converter === undefined ? ratedPart("distribution", feed?.distributionA) : null,
    ],
  });
}

/** Into the converter: the whole load at the bank's volts. Where it has no fuse of its own the main fuse stands before it. */
function converterIn(context: LimitContext): Branch {
  const { scenario } = context.run.prepared;
  const lead = scenario.converter!.input;
  const { siteA: peakA, siteLastingA: lastingA } = context;
  return makeBranch(context, {
    id: "converter-in",
    kind: "converterIn",
    about: "lead into the converter",
    short: "Main feed to converter",
    peakA,
    lastingA,
    atV: scenario.bank.nominalV,
    stated: lead?.cable,
    usual: BESIDE_BANK_M,
    cableField: "converter.input.cable",
    fuse: loadFuse(peakA, lastingA, lead?.fuseA ?? scenario.mainFeed?.fuseA, "converter.input.fuseA"),
    behind: [holderOf(lead)],
  });
}

/** Out of the converter: the load at its own volts. One whose most is stated holds itself to it, and its lead needs no fuse but has to carry that. */
function converterOut(context: LimitContext): Branch {
  const { scenario } = context.run.prepared;
  const { outputV, maxOutputA, output: lead } = scenario.converter!;
  const [peakA, lastingA] = [context.loadW / outputV, context.loadLastingW / outputV];
  const holdsItself = lead?.fuseA === undefined && maxOutputA !== undefined;
  return makeBranch(context, {
    id: "converter-out",
    kind: "converterOut",
    about: "lead out of the converter",
    short: "Converter to distribution",
    box: { title: "Converter", detail: maxOutputA === undefined ? "" : `${maxOutputA} A` },
    peakA,
    lastingA,
    wireA: Math.max(designA(peakA, lastingA), holdsItself ? maxOutputA : 0),
    atV: LOAD_V,
    stated: lead?.cable,
    usual: BESIDE_BANK_M,
    cableField: "converter.output.cable",
    fuse: holdsItself ? null : loadFuse(peakA, lastingA, lead?.fuseA, "converter.output.fuseA"),
    behind: [holderOf(lead), ratedPart("distribution", scenario.mainFeed?.distributionA)],
  });
}

const CHEMISTRY = { lfp: "LFP", agm: "AGM", flooded: "flooded" };

/** "280 Ah LFP" */
function bankWords({ run }: LimitContext): string {
  const { blockAh, inParallel, chemistry, nominalV } = run.prepared.scenario.bank;
  const ah = `${blockAh * inParallel} Ah`;
  return nominalV === 12 ? `${ah} ${CHEMISTRY[chemistry]}` : `${ah}, ${nominalV} V`;
}

/** Volts that 12 V gear is made for. */
const LOAD_V = 12;
