import { dayColumns } from "../answers/days/dayRows.ts";
import { stepsCsv } from "../answers/run/runCsv.ts";
import { runPicture } from "../answers/run/runPicture.ts";
import { type RunChoices, workTrace } from "../answers/run/work.ts";
import type { DayFigures } from "../run/dayFigures.ts";
import { dayWords, localMoment } from "../run/localClock.ts";
import type { Trace } from "../run/trace.ts";
import { answerBy } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { percent } from "./figures.ts";
import { seedOf } from "./memberRange.ts";
import { openDocument } from "./openScenario.ts";
import { formOf } from "./printInto.ts";
import { textTable } from "./textTable.ts";
import { traceJson } from "./traceJson.ts";
import type { Verb } from "./verb.ts";

export const traceVerb: Verb = {
  name: "trace",
  usage: "trace SCENARIO [--variant ID] [--member N --seed TEXT] [--json] [--csv FILE] [--svg FILE]",
  purpose: "Runs a scenario once under its stated weather: verdict, a table of days, the lowest hour.",
  options: {
    json: { type: "boolean", help: "print everything, step by step, as JSON" },
    csv: { type: "string", takes: "FILE", help: "write one row a step into this file" },
    svg: { type: "string", takes: "FILE", help: "write the picture into this file" },
    member: { type: "string", help: "replay this member of an ensemble instead of the stated weather" },
    seed: { type: "string", help: "seed of that ensemble, any text" },
  },
  run: async ({ scenario, variant, values, context, print, write }) => {
    const which = memberOf(values.member);
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const traced = await answerBy(workTrace, [opened.value], which, { seed: seedOf(values.seed), to: 0 });
    if (!traced.ok) return traced;
    const trace = traced.value;
    if (typeof values.csv === "string") await write(values.csv, stepsCsv(runPicture(trace)));
    if (typeof values.svg === "string") await write(values.svg, await svgOf(trace));
    // The ending of -o FILE says the form, where --json does not.
    const form = values.json === true ? "json" : formOf(values.output);
    if (form === "csv") print(stepsCsv(runPicture(trace)));
    else if (form === "svg") print(await svgOf(trace));
    else print(form === "json" ? JSON.stringify(traceJson(trace)) : traceText(trace));
    return { ok: true };
  },
};

async function svgOf(trace: Trace): Promise<string> {
  // Its rules of style are fetched with it.
  const { traceSvg } = await import("../report/traceSvg.ts");
  return traceSvg(trace);
}

/** Which member is to be replayed; nothing for the run under stated weather. */
function memberOf(member: string | boolean | undefined): RunChoices {
  if (member === undefined) return {};
  if (!/^\d{1,6}$/.test(String(member))) {
    throw new CallError(
      `--member is "${member}" but must be a whole number from 0 to 999999, such as the one that odds names.`,
    );
  }
  return { member: Number(member) };
}

/** Characters of a head above figures of a day. */
const NARROW_HEAD = 8;

function traceText(trace: Trace): string {
  const { prepared, verdict } = trace;
  const { scenario, grid } = prepared;
  const { ruler, incoming, days } = runPicture(trace);
  const { day, hours, rises, sets, groups, shade, spilled, sources, wanted, unserved, start, lowest, end } = dayColumns(
    {
      ruler,
      incoming,
    },
  );
  const date = { ...day, cell: ({ date: of }: DayFigures) => dayWords(of) }; // no ruler above says the month
  const others = prepared.sources.length > 0 ? [sources] : [];
  const columns = [
    date,
    hours,
    rises,
    sets,
    ...groups,
    shade,
    spilled,
    ...others,
    wanted,
    unserved,
    start,
    lowest,
    end,
  ];
  const radios = verdict.radios
    .filter((radio) => radio.lowestV !== null)
    .map(
      (radio) =>
        `  ${radio.name}: ${radio.lowestV!.toFixed(2)} V at worst on a transmit peak (${localMoment(grid, radio.lowestMs!).words}), needs ${radio.minimumV} V`,
    );
  return [
    `${scenario.name} · ${scenario.place.name}`,
    "",
    ...verdict.sentences,
    "",
    textTable(days, columns, NARROW_HEAD),
    "",
    `Lowest: ${percent(verdict.lowestShare)}, ${verdict.lowestAh.toFixed(0)} of ${prepared.bank.fullAh.toFixed(0)} Ah, ${verdict.lowestAt.words}.`,
    ...(radios.length > 0 ? ["Volts at the radios:", ...radios] : []),
    ...prepared.remarks.map((remark) => `Weather: ${remark}`),
    "One run, not a chance: real days differ; odds puts a chance on it.",
  ].join("\n");
}
