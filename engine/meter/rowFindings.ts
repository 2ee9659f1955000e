import { clipped } from "../scenario/shown.ts";
import { finding } from "./finding.ts";
import type { MeterFinding } from "./meterLog.ts";
import type { MeterMapping, MeterQuantity } from "./meterMapping.ts";
import { METER_RANGE } from "./meterRange.ts";
import type { MeterTally } from "./meterTally.ts";

/**
 * What is to be said of rows and cells that did not read.
 * @param total rows that did
 */
export function rowFindings(
  tally: MeterTally,
  mapping: MeterMapping,
  quantities: readonly MeterQuantity[],
  total: number,
): MeterFinding[] {
  const findings: MeterFinding[] = [];
  const say = (...what: Parameters<typeof finding>) => findings.push(finding(...what));
  const time = tally.get("time");
  if (time !== undefined) {
    // A few titles or sums between the rows are usual; if most rows fail, the form is the suspect.
    const remedy = time.rows > total ? "; check the form of its dates" : "";
    say(
      "bad-time",
      `${time.rows} rows have no date and time that reads, the first on line ${time.line}; they were left out${remedy}.`,
      time.rows,
      time.line,
    );
  }
  const wide = tally.get("wide");
  if (wide !== undefined) {
    const remedy =
      mapping.delimiter === "," ? "a decimal comma without quotes makes two cells of one" : "check the separator";
    say(
      "too-wide",
      `${wide.rows} rows have more cells than there are titles, the first on line ${wide.line}; they were left out (${remedy}).`,
      wide.rows,
      wide.line,
    );
  }
  for (const quantity of quantities) {
    const title = clipped(mapping.columns![quantity]!);
    const unreadable = tally.get(`unreadable ${quantity}`);
    if (unreadable !== undefined) {
      const other = mapping.decimal === "," ? "." : ",";
      const proposal: MeterMapping | null = unreadable.rows > total / 2 ? { decimal: other } : null;
      say(
        "unreadable",
        `${unreadable.rows} cells of "${title}" are no numbers with "${mapping.decimal}" as the decimal mark, the first on line ${unreadable.line}; they count as missing.`,
        unreadable.rows,
        unreadable.line,
        proposal,
      );
    }
    const range = tally.get(`range ${quantity}`);
    if (range !== undefined) {
      const [low, high, unit] = METER_RANGE[quantity];
      say(
        "impossible",
        `${range.rows} cells of "${title}" lie outside ${Math.ceil(low)} to ${high} ${unit}, the first on line ${range.line}; they count as missing.`,
        range.rows,
        range.line,
      );
    }
  }
  return findings;
}
