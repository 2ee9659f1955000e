import type { LimitsReport } from "../../checks/limits.ts";
import { csvText } from "../../csvText.ts";

/** Every line with its rule and source, for a sheet of one's own. */
export function limitsCsv({ lines }: LimitsReport): string {
  const rounded = (value: number | null) => (value === null ? "" : String(Number(value.toPrecision(6))));
  const rows = lines.map((line) => [
    line.verdict,
    line.about,
    line.quantity,
    rounded(line.value),
    line.bound === "most" ? "at most" : "at least",
    rounded(line.limit),
    line.unit,
    line.isAssumed ? "as usual" : "stated",
    rounded(line.marginShare === null ? null : 100 * line.marginShare),
    line.change,
    line.rule.words,
    line.rule.source,
  ]);
  const heads = ["verdict", "where", "what", "value", "bound", "limit", "unit", "limit is", "margin %"];
  return csvText([[...heads, "what to change", "rule", "source"], ...rows]);
}
