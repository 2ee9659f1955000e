import type { LimitLine, LimitVerdict } from "../../checks/limitLine.ts";
import type { LimitsReport } from "../../checks/limits.ts";
import { figure, percent, THIN, volts } from "../../words/numbers.ts";

/** What each verdict is called over its lines, worst first. */
export const VERDICTS: readonly { readonly verdict: LimitVerdict; readonly title: string; readonly word: string }[] = [
  { verdict: "over", title: "Over the limit", word: "over" },
  { verdict: "close", title: "Close to it", word: "close" },
  { verdict: "unknown", title: "Not stated, so not checked", word: "not stated" },
  { verdict: "assumed", title: "Good with a lead that nobody stated", word: "assumed" },
  { verdict: "within", title: "Within", word: "within" },
];

export const linesOf = ({ lines }: LimitsReport, verdict: LimitVerdict) =>
  lines.filter((line) => line.verdict === verdict);

const NUMBERS = ["Nothing", "One thing", "Two things", "Three things", "Four things", "Five things", "Six things"];
const MOST_NAMED = 4;

/** "Two things are over their limit: lead of HF, fuse for its wire; and …" */
export function limitsSentence(report: LimitsReport): string {
  const [over, close, unknown, assumed] = (["over", "close", "unknown", "assumed"] as const).map((verdict) =>
    linesOf(report, verdict),
  );
  if (over!.length > 0) return `${things(over!)} over ${its(over!)} limit: ${named(over!)}.`;
  if (close!.length > 0) return `Nothing is over its limit; ${small(things(close!))} close to it: ${named(close!)}.`;
  if (unknown!.length > 0) return `Nothing that is stated is over its limit; ${small(things(unknown!))} not stated.`;
  if (assumed!.length > 0)
    return `Nothing that is stated is over its limit; ${leads(report)} not stated, and only assumed here.`;
  return "Everything that is stated stays within its limit.";
}

/** "one lead is", "3 leads are": those that no field states. */
function leads({ wiring }: LimitsReport): string {
  const count = wiring.filter(({ isAssumed }) => isAssumed).length;
  return count === 1 ? "one lead is" : `${count} leads are`;
}

/** What else there is to say beside the sentence. */
export function limitsMore(report: LimitsReport): string {
  const [over, close, unknown, assumed] = (["over", "close", "unknown", "assumed"] as const).map((verdict) =>
    linesOf(report, verdict),
  );
  const parts = [
    over!.length > 0 && close!.length > 0 ? `${things(close!)} close to ${its(close!)} limit.` : "",
    unknown!.length > 0 && over!.length + close!.length > 0
      ? `${things(unknown!)} not stated in the scenario and could not be checked.`
      : "",
    assumed!.length > 0 && over!.length + close!.length + unknown!.length > 0
      ? `${capital(leads(report))} not stated, and only assumed here (*).`
      : "",
  ];
  return parts.filter(Boolean).join(" ");
}

const things = (lines: readonly LimitLine[]) =>
  `${NUMBERS[lines.length] ?? `${lines.length} things`} ${lines.length === 1 ? "is" : "are"}`;
const its = (lines: readonly LimitLine[]) => (lines.length === 1 ? "its" : "their");
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const small = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** Lines by where they are, so that no place is named twice. */
function named(lines: readonly LimitLine[]): string {
  const shown = lines.slice(0, MOST_NAMED);
  const places = [...new Set(shown.map(({ about }) => about))].map((place) => {
    const what = shown.filter(({ about }) => about === place).map((line) => briefQuantity(line).replace(/ \(.*$/, ""));
    return `${place} (${what.join(", ")})`;
  });
  const rest = lines.length - shown.length;
  return `${places.join("; ")}${rest > 0 ? `; and ${rest} more` : ""}`;
}

/** What was checked, without the side remark: the weak link has a drawing of its own. */
export const briefQuantity = ({ quantity }: LimitLine) => quantity.replace(/;.*$/, "");

/** At which charge, cold and heat everything was met. */
export function basisWords(report: LimitsReport): string {
  const charge = chargeFromWords(report.lowestFrom, "as chosen");
  const cold = coldFromWords(report.coldestFrom, "as chosen");
  return `Peaks are met at ${percent(report.lowestShare)} charge, ${volts(report.openV)} at rest: ${charge}. Panels meet ${figure(report.coldestC)}${THIN}°C: ${cold}. Wires meet ${figure(report.warmestC)}${THIN}°C, the event's warmest.`;
}

/** Where the charge comes from at which peaks are met. */
export function chargeFromWords(from: LimitsReport["lowestFrom"], given: string): string {
  if (from === "given") return given;
  return from === "run"
    ? "the lowest of the run while loads are connected"
    : "the reserve, which the plan may come down to";
}

/** Where the cold comes from that panels meet. */
export function coldFromWords(from: LimitsReport["coldestFrom"], given: string): string {
  if (from === "given") return given;
  return from === "event"
    ? "the coldest hour of this run; a record morning may be colder"
    : "the coldest morning on record there, estimated from the place's climate";
}

/** "51.0 A"; "?" where the scenario does not say. */
export function valueWords(value: number | null, unit: string): string {
  if (value === null) return "?";
  if (unit === "share") return `${figure(100 * value, 1)}${THIN}%`;
  const decimals = unit === "V" || unit === "m" ? 2 : unit === "" || Math.abs(value) >= 1000 ? 0 : 1;
  const grouped = Math.abs(value) >= 1000 ? figure(value) : value.toFixed(decimals).replace("-", "−");
  return `${grouped}${unit === "" ? "" : `${THIN}${unit}`}`;
}

/** "at most 40.0 A"; with "as usual" where the scenario states none. */
export function limitWords({ limit, unit, bound, isAssumed, verdict }: LimitLine): string {
  if (limit === null) return "?";
  return `${bound === "most" ? "at most" : "at least"} ${valueWords(limit, unit)}${isAssumed ? (verdict === "assumed" || verdict === "over" ? "*" : ", as usual") : ""}`;
}

/** "28 % over", "5 % to spare" */
export function marginWords({ marginShare }: LimitLine): string {
  if (marginShare === null) return "–";
  const hundredths = Math.round(100 * Math.abs(marginShare));
  const size = hundredths === 0 && marginShare !== 0 ? "under 1" : String(hundredths);
  return marginShare < 0 ? `${size}${THIN}% beyond` : `${size}${THIN}% to spare`;
}

/** The rules that the lines rest on, each once, in the order in which they are met. */
export function rulesOf({ lines }: LimitsReport): LimitLine["rule"][] {
  const words = new Map(lines.map(({ rule }) => [rule.words, rule]));
  return [...words.values()];
}

/** The cautions of the lines that are over, close or open. */
export function cautionsBeside(report: LimitsReport): LimitsReport["cautions"] {
  const wanted = new Set(
    report.lines.filter(({ verdict }) => verdict !== "within").flatMap(({ cautions }) => [...cautions]),
  );
  return report.cautions.filter(({ id }) => wanted.has(id));
}
