import type { Column } from "../answers/column.ts";
import type { DriversPicture } from "../answers/drivers/driversPicture.ts";
import { HIGH_END, LOW_END, SHARES, SHEDDING } from "../answers/drivers/rows.ts";
import { KINDS } from "../answers/kinds.ts";
import { DRIVERS_FEWEST_MEMBERS, DRIVERS_MOST_MEMBERS } from "../drivers/drivers.ts";
import type { DriverLine } from "../drivers/driversReport.ts";
import type { Sampled } from "../drivers/driversShares.ts";
import { USUAL_MEMBERS } from "../library/askOptions.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { answerTo } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { percent, sixDecimals } from "./figures.ts";
import { seedOf } from "./memberRange.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const driversVerb: Verb = {
  name: "drivers",
  usage: "drivers SCENARIO [--variant ID] [--members N] [--seed TEXT] [--json]",
  purpose: "Says what the outcome depends on: weather, sending, idle draw …, and which load to switch off first.",
  options: {
    members: { type: "string", help: `rows of the sample, two members each (${USUAL_MEMBERS} when left out)` },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    json: { type: "boolean", help: "print it as JSON" },
  },
  run: async ({ scenario, variant, values, context, print }) => {
    const rows = rowsOf(values.members);
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const found = await answerTo(KINDS.drivers, [opened.value], {}, { seed: seedOf(values.seed), to: rows });
    if (!found.ok) return found;
    const say = values.json === true ? driversJson : driversText;
    print(say(opened.value.scenario, found.value));
    return { ok: true };
  },
};

function rowsOf(value: string | boolean | undefined): number {
  if (value === undefined) return USUAL_MEMBERS;
  const rows = /^\d{1,9}$/.test(String(value)) ? Number(value) : Number.NaN;
  if (!(rows >= DRIVERS_FEWEST_MEMBERS && rows <= DRIVERS_MOST_MEMBERS)) {
    throw new CallError(
      `--members is "${value}" but must be a whole number from ${DRIVERS_FEWEST_MEMBERS} to ${DRIVERS_MOST_MEMBERS}; write such a number.`,
    );
  }
  return rows;
}

/** What `drivers --json` prints; documented in `docs/command-line.md`. */
function driversJson({ name, place }: Scenario, { report, remarks }: DriversPicture): string {
  return JSON.stringify(
    { format: "duskline-drivers", version: 1, scenario: { name, place }, remarks, ...report },
    (_key, value: unknown) => (typeof value === "number" ? sixDecimals(value) : value),
  );
}

/** Estimates may come out below nothing or above all; both are said as what they are estimates of. */
const share = (value: number) => (value < 0.005 ? "about 0" : value > 0.995 ? "about 100 %" : percent(value));
const sum = (of: Sampled | null) => (of === null ? "–" : `${share(of.value)} ± ${Math.round(100 * of.plusMinus)}`);

interface EndLine {
  readonly line: DriverLine;
  readonly isLow: boolean;
}

/** Both ends of a factor, one under the other: a column of either, as one. */
const ofEnd = (name: keyof typeof LOW_END): Column<EndLine> => ({
  head: LOW_END[name].head,
  cell: ({ line, isLow }) => (isLow ? LOW_END : HIGH_END)[name].cell(line),
});

const END_COLUMNS: readonly Column<EndLine>[] = [
  { ...SHARES.name, cell: ({ line, isLow }) => (isLow ? line.name : "") },
  { head: "end", cell: ({ isLow }) => (isLow ? "low" : "high"), isWords: true },
  { ...ofEnd("value"), head: "which is" },
  ofEnd("holds"),
  ofEnd("gained"),
  ofEnd("margin"),
];

function driversText({ name, place }: Scenario, { report, remarks }: DriversPicture): string {
  const ends = report.factors
    .filter(({ low, high }) => low !== null && high !== null)
    .flatMap((line) => [true, false].map((isLow): EndLine => ({ line, isLow })));
  const median = report.medianFailing;
  return [
    `${name} · ${place.name}`,
    "",
    ...report.sentences,
    "",
    "Share of what the lowest charge, and holding or not, differ by from member to member:",
    textTable(report.factors, Object.values<Column<DriverLine>>(SHARES)),
    `All of them alone: margin ${sum(report.marginFirstSum)}, holding ${sum(report.holdsFirstSum)}. What is missing to 100 % lies in several acting together.`,
    "",
    "If it were at its low or high end, of 100 members so many hold:",
    textTable(ends, END_COLUMNS),
    "",
    ...(report.shedding.length > 0
      ? ["Switched off for the whole event, one at a time:", textTable(report.shedding, Object.values(SHEDDING)), ""]
      : []),
    ...(median === null
      ? []
      : [
          `Until the reserve: on member ${median.member}, the middle one of those that fail, which falls below it after ${median.failsAfterH.toFixed(1)} h.`,
        ]),
    "Margin: lowest charge less reserve, less what loads went without, in percent of a full bank.",
    `An end is where one in ten lies beyond. ${report.members} rows, ${report.runs} runs, seed ${report.seed}; ± holds the true value in 95 of 100 samples.`,
    ...remarks.map((remark) => `Weather: ${remark}`),
  ].join("\n");
}
