import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";

/** Strings that may stand side by side (common practice, no source). */
const MOST_STRINGS = 4;
/** Room above the disconnect that counts as enough, for 12 V (our choice, no source). */
const ROOM_PER_12V = 0.3;

/** What the loads ask of the bank itself. */
export function bankLines(context: LimitContext): LimitLine[] {
  const { prepared } = context.run;
  const { bank, scenario } = prepared;
  const stated = scenario.bank;
  const about = "bank";
  const together = namesOf(context);
  const peakLimitA = stated.peakDischargeA ?? bank.maxDischargeA;
  const isAssumed = stated.maxDischargeA === undefined;
  const bankV = context.openV - context.packOhm * context.siteA;
  const in12V = stated.nominalV / 12;
  const lines = [
    limitLine({
      id: "bank-peak",
      about,
      quantity: `peak current${together}`,
      value: context.siteA,
      unit: "A",
      limit: peakLimitA,
      isAssumed: stated.peakDischargeA === undefined && isAssumed,
      rule: LIMIT_RULES.bankPeak,
      change:
        "Interlock stations, turn power down, or bring a bank that gives more; its electronics may cut everything off.",
      fill: "bank.maxDischargeA",
      cautions: ["fire"],
    }),
    limitLine({
      id: "bank-continuous",
      about,
      quantity: "greatest current that lasts ten minutes",
      value: context.siteLastingA,
      unit: "A",
      limit: bank.maxDischargeA,
      isAssumed,
      rule: LIMIT_RULES.bankContinuous,
      change: "Switch loads off, send less, or bring a larger bank.",
      fill: "bank.maxDischargeA",
    }),
  ];
  if (bank.disconnectV > 0) {
    lines.push(
      limitLine({
        id: "bank-cut",
        about,
        quantity: "volts on the worst peak",
        value: bankV,
        unit: "V",
        limit: bank.disconnectV,
        bound: "least",
        closeWithin: ROOM_PER_12V * in12V,
        isAssumed: stated.disconnectV === undefined,
        rule: LIMIT_RULES.bankCut,
        change:
          "Keep the bank fuller, make the peak smaller, or set the disconnect lower or with a delay, as its maker allows.",
        fill: "bank.disconnectV",
      }),
    );
  }
  if (stated.inParallel > 1) lines.push(...parallelLines(context, isAssumed));
  return lines;
}

function parallelLines(context: LimitContext, isAssumed: boolean): LimitLine[] {
  const { prepared } = context.run;
  const { inParallel, chemistry, peakDischargeA, stringLead } = prepared.scenario.bank;
  const ratedA = peakDischargeA ?? prepared.bank.maxDischargeA;
  const fuseA = stringLead?.fuseA;
  const cautions = [chemistry === "lfp" ? "lithium" : "lead", "fire"];
  return [
    limitLine({
      id: "parallel-strings",
      about: "blocks side by side",
      quantity: "strings",
      value: inParallel,
      unit: "",
      limit: MOST_STRINGS,
      closeWithin: 0,
      isAssumed: true,
      rule: LIMIT_RULES.parallelStrings,
      change: "Use fewer and larger blocks, or as many as the maker allows.",
      cautions,
    }),
    limitLine({
      id: "lost-block",
      about: "blocks side by side",
      quantity: "peak with one string gone",
      value: context.siteA,
      unit: "A",
      limit: Math.min(ratedA * (1 - 1 / inParallel), (fuseA ?? Number.POSITIVE_INFINITY) * (inParallel - 1)),
      isAssumed,
      rule: LIMIT_RULES.lostBlock,
      change:
        "Plan to send with less power when a block drops out, or bring blocks and string fuses that carry the peak without it.",
      fill: "bank.maxDischargeA",
      cautions,
    }),
  ];
}

function namesOf({ peaks, run }: LimitContext): string {
  const count = peaks.site.sending.length;
  if (count === 0) return "";
  const names = peaks.site.sending.map((s) => run.prepared.scenario.stations[s]!.name);
  return count === 1 ? ` (${names[0]} sending)` : ` (${count} stations sending)`;
}
