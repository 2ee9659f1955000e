import { type Lesson, learnedPicture } from "../answers/readings/learnedPicture.ts";
import { LEARNED_COLUMNS, learnedRows } from "../answers/readings/learnedRows.ts";
import { workLesson } from "../answers/readings/work.ts";
import { LEARN_FEWEST_MEMBERS, LEARN_MOST_MEMBERS } from "../learn/learn.ts";
import { learnReport } from "../learn/learnReport.ts";
import { USUAL_MEMBERS } from "../library/askOptions.ts";
import type { Problem } from "../scenario/problem.ts";
import { answerBy } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { orDash, sixDecimals } from "./figures.ts";
import { seedOf } from "./memberRange.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const learnVerb: Verb = {
  name: "learn",
  usage: "learn SCENARIO --readings FILE [--variant ID] [--members N] [--seed TEXT] [--confirm] [--json]",
  purpose: "Takes readings in: odds before and after, what has been learned of the plan, and what can still be done.",
  options: {
    readings: {
      type: "string",
      takes: "FILE",
      help: "what was read off the station, as JSON; docs/command-line.md says how",
    },
    members: {
      type: "string",
      help: `how many, ${LEARN_FEWEST_MEMBERS} to ${LEARN_MOST_MEMBERS} (1000 when left out)`,
    },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    confirm: { type: "boolean", help: "the readings are really so, however odd they look" },
    json: { type: "boolean", help: "print everything as JSON" },
  },
  run: async ({ scenario, variant, values, context, print }) => {
    if (typeof values.readings !== "string") {
      throw new CallError("learn needs the readings: duskline learn SCENARIO --readings FILE.");
    }
    const members = membersOf(values.members);
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const document = await context.textOf(values.readings);
    const drawn = { seed: seedOf(values.seed), to: members };
    const choices = { document, isConfirmed: values.confirm === true };
    const found = await answerBy(workLesson, [opened.value], choices, drawn);
    if (!found.ok) return { ok: false, problems: found.problems.map(withWayOut) };
    print(values.json === true ? JSON.stringify(learnJson(found.value)) : learnText(found.value));
    return { ok: true };
  },
};

/** What is asked before a reading counts: here there is nobody to answer but the next call. */
const withWayOut = ({ message, ...problem }: Problem): Problem => ({
  ...problem,
  message:
    problem.code === "doubtful"
      ? `${message} Correct it, give it "isConfirmed": true, or confirm all with --confirm.`
      : message,
});

function membersOf(value: string | boolean | undefined): number {
  if (value === undefined) return USUAL_MEMBERS;
  const members = /^\d{1,6}$/.test(String(value)) ? Number(value) : 0;
  if (members >= LEARN_FEWEST_MEMBERS && members <= LEARN_MOST_MEMBERS) return members;
  throw new CallError(
    `--members is "${value}" but must be a whole number from ${LEARN_FEWEST_MEMBERS} to ${LEARN_MOST_MEMBERS}; write one of them.`,
  );
}

/** What `learn --json` prints; documented in `docs/command-line.md`. */
function learnJson({ learned, helps }: Lesson): unknown {
  const { ensemble } = learned;
  const { grid, scenario } = ensemble.prepared;
  // Whole reports of either side are what `odds --json` prints; here stand the figures that the readings move.
  const { before, after, charge, ...rest } = learnReport(learned);
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

const ROWS_MS = 3 * 3_600_000;

function learnText(lesson: Lesson): string {
  const { learned, helps } = lesson;
  const { ensemble, readings } = learned;
  const { scenario } = ensemble.prepared;
  const picture = learnedPicture(lesson, helps);
  const { report } = picture;
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
    textTable(learnedRows(picture, ROWS_MS), LEARNED_COLUMNS),
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
