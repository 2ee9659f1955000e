import type { Column } from "../answers/column.ts";
import { DRIVERS_FEWEST_MEMBERS, DRIVERS_MOST_MEMBERS } from "../drivers/drivers.ts";
import type { DriverLine, DriversReport, EndEffect, SheddingLine } from "../drivers/driversReport.ts";
import type { Sampled } from "../drivers/driversShares.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { CallError } from "./callError.ts";
import { percent, sixDecimals } from "./figures.ts";
import { seedOf } from "./memberRange.ts";
import { openEnsemble } from "./openScenario.ts";
import { runDrivers } from "./pool.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

/** Rows when none are asked for: shares are then good to some percent, in seconds. */
export const USUAL_ROWS = 500;

export const driversVerb: Verb = {
  name: "drivers",
  usage: "drivers SCENARIO [--variant ID] [--members N] [--seed TEXT] [--json]",
  purpose: "Says what the outcome depends on: weather, sending, idle draw …, and which load to switch off first.",
  options: {
    members: { type: "string", help: `rows of the sample, two members each (${USUAL_ROWS} when left out)` },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    json: { type: "boolean", help: "print it as JSON" },
  },
  run: async ({ scenario, variant, values, print }) => {
    const rows = rowsOf(values.members);
    const opened = await openEnsemble(scenario, variant, seedOf(values.seed));
    if (!opened.ok) return opened;
    const ensemble = opened.value;
    const run = await runDrivers(ensemble, rows, { onProgress: sayHowFar });
    if (!run.ok) return run;
    const report = run.part;
    print(values.json === true ? JSON.stringify(driversJson(ensemble, report)) : driversText(ensemble, report));
    return { ok: true };
  },
};

function rowsOf(value: string | boolean | undefined): number {
  if (value === undefined) return USUAL_ROWS;
  const rows = /^\d{1,9}$/.test(String(value)) ? Number(value) : Number.NaN;
  if (!(rows >= DRIVERS_FEWEST_MEMBERS && rows <= DRIVERS_MOST_MEMBERS)) {
    throw new CallError(
      `--members is "${value}" but must be a whole number from ${DRIVERS_FEWEST_MEMBERS} to ${DRIVERS_MOST_MEMBERS}; write such a number.`,
    );
  }
  return rows;
}

/** On a terminal, in its last line; nowhere else. */
function sayHowFar(done: number, of: number): void {
  if (process.stderr.isTTY) process.stderr.write(done < of ? `\r${percent(done / of)}  ` : "\r\u001b[K");
}

/** What `drivers --json` prints; documented in `docs/command-line.md`. */
function driversJson(ensemble: PreparedEnsemble, report: DriversReport): unknown {
  const { scenario } = ensemble.prepared;
  const document = {
    format: "duskline-drivers",
    version: 1,
    scenario: { name: scenario.name, place: scenario.place },
    remarks: ensemble.remarks,
    ...report,
  };
  return JSON.parse(
    JSON.stringify(document, (_key, value: unknown) => (typeof value === "number" ? sixDecimals(value) : value)),
  );
}

const sampled = ({ value, plusMinus }: Sampled) => `${share(value)} ± ${Math.round(100 * plusMinus)}`;
/** Estimates may come out below nothing or above all; both are said as what they are estimates of. */
const share = (value: number) => (value < 0.005 ? "about 0" : value > 0.995 ? "about 100 %" : percent(value));
const shareOrDash = (found: Sampled | undefined) => (found === undefined ? "–" : sampled(found));

const signed = (value: number, digits: number) =>
  `${Math.abs(value) < 0.5 * 10 ** -digits ? "" : value < 0 ? "−" : "+"}${Math.abs(value).toFixed(digits)}`;
const points = ({ value, plusMinus }: Sampled) => `${signed(100 * value, 1)} ± ${(100 * plusMinus).toFixed(1)}`;

interface EndLine {
  readonly line: DriverLine;
  readonly end: EndEffect;
  readonly isLow: boolean;
}

function endValue({ line, end }: EndLine): string {
  if (line.unit === "of plan" || line.unit === "of full") return `${percent(end.value)} ${line.unit}`;
  return `${end.value.toFixed(line.unit === "Wh" ? 0 : 1)} ${line.unit}`;
}

function driversText(ensemble: PreparedEnsemble, report: DriversReport): string {
  const { scenario } = ensemble.prepared;
  const shares: Column<DriverLine>[] = [
    { head: "share of what differs", cell: (line) => line.name, isWords: true },
    { head: "margin: alone", cell: (line) => shareOrDash(line.margin?.first) },
    { head: "with others", cell: (line) => shareOrDash(line.margin?.total) },
    { head: "holding: alone", cell: (line) => shareOrDash(line.holds?.first) },
    { head: "with others", cell: (line) => shareOrDash(line.holds?.total) },
  ];
  const ends = report.factors.flatMap((line): EndLine[] =>
    line.low === null || line.high === null
      ? []
      : [
          { line, end: line.low, isLow: true },
          { line, end: line.high, isLow: false },
        ],
  );
  const endColumns: Column<EndLine>[] = [
    { head: "if it were at its", cell: ({ line, isLow }) => (isLow ? line.name : ""), isWords: true },
    { head: "end", cell: ({ isLow }) => (isLow ? "low" : "high"), isWords: true },
    { head: "which is", cell: endValue },
    { head: "holds", cell: ({ end }) => percent(end.holds.share) },
    { head: "of 100, change", cell: ({ end }) => points(end.holdsGain) },
    { head: "margin, points", cell: ({ end }) => points(end.marginGain) },
  ];
  const shedding: Column<SheddingLine>[] = [
    { head: "switched off all the time", cell: (line) => line.name, isWords: true },
    { head: "holds", cell: (line) => percent(line.holds.share) },
    { head: "of 100, gain", cell: (line) => points(line.holdsGain) },
    { head: "margin, points", cell: (line) => points(line.marginGain) },
    { head: "until the reserve", cell: (line) => untilReserve(line, report) },
  ];
  const sums = [report.marginFirstSum, report.holdsFirstSum].map((sum) => (sum === null ? "–" : sampled(sum)));
  const median = report.medianFailing;
  return [
    `${scenario.name} · ${scenario.place.name}`,
    "",
    ...report.sentences,
    "",
    textTable(report.factors, shares),
    `All of them alone: margin ${sums[0]}, holding ${sums[1]}. What is missing to 100 % lies in several acting together.`,
    "",
    textTable(ends, endColumns),
    "",
    ...(report.shedding.length > 0 ? [textTable(report.shedding, shedding), ""] : []),
    ...(median === null
      ? []
      : [
          `Until the reserve: on member ${median.member}, the middle one of those that fail, which falls below it after ${median.failsAfterH.toFixed(1)} h.`,
        ]),
    "Margin: lowest charge less reserve, less what loads went without, in percent of a full bank.",
    `An end is where one in ten lies beyond. ${report.members} rows, ${report.runs} runs, seed ${report.seed}; ± holds the true value in 95 of 100 samples.`,
    ...ensemble.remarks.map((remark) => `Weather: ${remark}`),
  ].join("\n");
}

function untilReserve({ gainedH, medianHolds }: SheddingLine, { medianFailing }: DriversReport): string {
  if (medianFailing === null) return "–";
  return medianHolds || gainedH === null ? "holds" : `${signed(gainedH, 1)} h`;
}
