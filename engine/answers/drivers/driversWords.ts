import type { DriverLine, DriversReport, SheddingLine } from "../../drivers/driversReport.ts";
import { figure, THIN } from "../../words/numbers.ts";

/** Factors by how much depends on them, with others; those that differ in nothing come last. */
export function byWeight({ factors }: DriversReport): DriverLine[] {
  return [...factors].sort((a, b) => (b.margin?.total.value ?? -1) - (a.margin?.total.value ?? -1));
}

/** What decides it, in one sentence, with what follows closest. */
export function driversSentence(report: DriversReport): string {
  const [first, second] = byWeight(report);
  if (first?.margin == null) return report.sentences[0] ?? "";
  const share = (line: DriverLine) =>
    `${inHundredths(line.margin!.total.value)} of what skies and people make the lowest charge differ by`;
  const next =
    second?.margin == null ? "" : `; then ${second.name.toLowerCase()}, ${inHundredths(second.margin.total.value)}`;
  return `${first.name} decides most: ${share(first)}${next}.`;
}

/** A share of variance as per cent; below what can be told, "about 0". */
export function inHundredths(share: number): string {
  const rounded = Math.round(100 * share);
  return rounded <= 0 ? "about 0" : `${rounded}${THIN}%`;
}

export const plusMinus = (share: number) => `±${THIN}${Math.round(100 * share)}`;

/** "+4.5" */
export function signed(value: number, decimals = 1): string {
  const text = figure(value, decimals);
  return value > 0 && text !== "0" ? `+${text}` : text;
}

/** What the value of an end means: "5.9 kWh/m²", "87 % of plan". */
export function endWords({ unit }: DriverLine, value: number): string {
  if (unit === "of plan" || unit === "of full") return `${figure(100 * value)}${THIN}% ${unit}`;
  return `${figure(value, value < 100 ? 1 : 0)}${THIN}${unit}`;
}

/** How much later the middle failing member comes under the reserve. */
export function gainedWords({ gainedH, medianHolds }: SheddingLine): string {
  if (medianHolds) return "holds then";
  return gainedH === null ? "–" : `${signed(gainedH, Math.abs(gainedH) < 10 ? 1 : 0)}${THIN}h`;
}
