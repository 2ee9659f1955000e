import type { Column } from "../answers/column.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { doubtsAbout } from "../learn/doubts.ts";
import { LEARN_FEWEST_MEMBERS, LEARN_MOST_MEMBERS, learn } from "../learn/learn.ts";
import { type LearnReport, learnReport } from "../learn/learnReport.ts";
import { type PlacedReading, readReadings } from "../learn/readReadings.ts";
import { type StillHelps, whatStillHelps } from "../learn/whatStillHelps.ts";
import { USUAL_MEMBERS } from "../library/askOptions.ts";
import { localMoment } from "../run/localClock.ts";
import type { Problem } from "../scenario/problem.ts";
import { CallError } from "./callError.ts";
import { orDash, percent, sixDecimals } from "./figures.ts";
import { seedOf } from "./memberRange.ts";
import { openEnsemble, textOf } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const learnVerb: Verb = {
  name: "learn",
  usage: "learn SCENARIO --readings FILE [--variant ID] [--members N] [--seed TEXT] [--confirm] [--json]",
  purpose: "Takes readings in: odds before and after, what has been learned of the plan, and what can still be done.",
  options: {
    readings: { type: "string", help: "what was read off the station, as JSON; docs/command-line.md says how" },
    members: {
      type: "string",
      help: `how many, ${LEARN_FEWEST_MEMBERS} to ${LEARN_MOST_MEMBERS} (1000 when left out)`,
    },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    confirm: { type: "boolean", help: "the readings are really so, however odd they look" },
    json: { type: "boolean", help: "print everything as JSON" },
  },
  run: async ({ scenario, variant, values, print }) => {
    if (typeof values.readings !== "string") {
      throw new CallError("learn needs the readings: duskline learn SCENARIO --readings FILE.");
    }
    const members = membersOf(values.members);
    const opened = await openEnsemble(scenario, variant, seedOf(values.seed));
    if (!opened.ok) return opened;
    const ensemble = opened.value;
    const read = readReadings(await textOf(values.readings), ensemble.prepared.grid);
    if (!read.ok) return read;
    const readings = values.confirm === true ? read.readings.map(confirmed) : read.readings;
    const doubts = doubtsOf(readings, ensemble);
    if (doubts.length > 0) return { ok: false, problems: doubts };
    const say = process.stderr.isTTY ? (done: number) => process.stderr.write(`\r${done} particles `) : undefined;
    const hooks = say === undefined ? {} : { progress: say };
    const learned = await learn(ensemble, readings, members, hooks);
    const report = learnReport(learned);
    const helps = await whatStillHelps(learned, hooks);
    if (say !== undefined) process.stderr.write("\r\u001b[K");
    const isJson = values.json === true;
    print(isJson ? JSON.stringify(learnJson(ensemble, report, helps)) : learnText(ensemble, readings, report, helps));
    return { ok: true };
  },
};

const confirmed = (placed: PlacedReading): PlacedReading => ({
  ...placed,
  reading: { ...placed.reading, isConfirmed: true },
});

/** What is asked before a reading counts: here there is nobody to answer but the next call. */
function doubtsOf(readings: readonly PlacedReading[], { prepared }: PreparedEnsemble): Problem[] {
  const all = readings.map(({ reading }) => reading);
  return readings.flatMap(({ reading, number }) =>
    doubtsAbout(reading, all, prepared.scenario).map((sentence) => ({
      code: "doubtful",
      path: ["readings", number],
      message: `readings.${number + 1} (${reading.at.replace("T", " ")}): ${sentence} Correct it, give it "isConfirmed": true, or confirm all with --confirm.`,
    })),
  );
}

function membersOf(value: string | boolean | undefined): number {
  if (value === undefined) return USUAL_MEMBERS;
  const members = /^\d{1,6}$/.test(String(value)) ? Number(value) : 0;
  if (members >= LEARN_FEWEST_MEMBERS && members <= LEARN_MOST_MEMBERS) return members;
  throw new CallError(
    `--members is "${value}" but must be a whole number from ${LEARN_FEWEST_MEMBERS} to ${LEARN_MOST_MEMBERS}; write one of them.`,
  );
}

/** What `learn --json` prints; documented in `docs/command-line.md`. */
function learnJson(ensemble: PreparedEnsemble, report: LearnReport, helps: readonly StillHelps[]): unknown {
  const { grid, scenario } = ensemble.prepared;
  // Whole reports of either side are what `odds --json` prints; here stand the figures that the readings move.
  const { before, after, charge, ...rest } = report;
  return {
    format: "duskline-learned",
    version: 1,
    scenario: { name: scenario.name, place: scenario.place },
    time: { zone: grid.zone, startMs: grid.startMs, stepMs: grid.stepMs, steps: grid.steps },
    remarks: ensemble.remarks,
    ...rest,
    lowestBefore: before.lowestShare,
    lowestAfter: after.lowestShare,
    darkBefore: before.dark,
    darkAfter: after.dark,
    charge: Object.fromEntries(
      Object.entries(charge).map(([name, values]) => [name, Array.from(values as Float64Array, sixDecimals)]),
    ),
    helps,
  };
}

interface Row {
  readonly when: string;
  readonly at: number;
}

const BETWEEN_ROWS_H = 3;

function learnText(
  ensemble: PreparedEnsemble,
  readings: readonly PlacedReading[],
  report: LearnReport,
  helps: readonly StillHelps[],
): string {
  const { scenario } = ensemble.prepared;
  const { charge } = report;
  const rows = bandRows(ensemble, report);
  const columns: Column<Row>[] = [
    { head: "charge", cell: (row) => row.when, isWords: true },
    { head: "5 %", cell: (row) => percent(charge.p5[row.at]!) },
    { head: "25 %", cell: (row) => percent(charge.p25[row.at]!) },
    { head: "half", cell: (row) => percent(charge.p50[row.at]!) },
    { head: "75 %", cell: (row) => percent(charge.p75[row.at]!) },
    { head: "95 %", cell: (row) => percent(charge.p95[row.at]!) },
  ];
  const hours = (value: number | null) => orDash(value === null ? null : value.toFixed(1));
  const { p10, p50, p90 } = report.hoursLeft;
  const list = helps.flatMap(({ sentence, takes, caution }, k) => [
    `  ${k + 1}. ${sentence} Takes: ${takes}.`,
    ...(caution === null ? [] : [`     Caution: ${caution}`]),
  ]);
  return [
    `${scenario.name} · ${scenario.place.name} · ${readings.length === 1 ? "1 reading" : `${readings.length} readings`}`,
    "",
    ...report.sentences,
    "",
    textTable(rows, columns),
    "",
    `Hours left above the reserve, in 10, 50 and 90 of 100: ${hours(p10)}, ${hours(p50)}, ${hours(p90)} (– where not before the end).`,
    "",
    ...(list.length > 0
      ? ["What can still be done, by what it gains under the same skies and operators:", ...list]
      : ["Nothing that was tried would gain 1 in 100 skies or 1 point of charge."]),
    "",
    `Seed ${report.seed}; ${report.members} members, worth ${Math.round(report.fewestEffective)} at the least; ${report.founders} of them have something left in the end.`,
  ].join("\n");
}

/** Every three hours of the local clock from now to the end, and the end. */
function bandRows(ensemble: PreparedEnsemble, report: LearnReport): Row[] {
  const { grid } = ensemble.prepared;
  const every = Math.max(1, Math.round(BETWEEN_ROWS_H / grid.stepH));
  const left = grid.steps - report.now.step;
  const places = Array.from({ length: Math.ceil(left / every) }, (_, k) => k * every);
  return [...places, left].map((at) => ({
    at,
    when: localMoment(grid, grid.startMs + (report.now.step + at) * grid.stepMs).words,
  }));
}
