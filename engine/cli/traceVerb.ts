import type { Column } from "../answers/column.ts";
import { replayMember } from "../odds/odds.ts";
import type { DayFigures } from "../run/dayFigures.ts";
import { dayWords, localMoment } from "../run/localClock.ts";
import { type Trace, tracePrepared } from "../run/trace.ts";
import { CallError } from "./callError.ts";
import { orDash, percent, wattHours } from "./figures.ts";
import { seedOf } from "./memberRange.ts";
import { inputsOf, type Opened, openEnsemble, openPrepared } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import { traceCsv } from "./traceCsv.ts";
import { traceJson } from "./traceJson.ts";
import type { Verb, VerbCall } from "./verb.ts";
import { FORCE_OPTION, writeText } from "./writeFile.ts";

export const traceVerb: Verb = {
  name: "trace",
  usage: "trace SCENARIO [--variant ID] [--member N --seed TEXT] [--json] [--csv FILE] [--svg FILE] [--force]",
  purpose: "Runs a scenario once under its stated weather: verdict, a table of days, the lowest hour.",
  options: {
    json: { type: "boolean", help: "print everything, step by step, as JSON" },
    csv: { type: "string", help: "write one row a step into this file" },
    svg: { type: "string", help: "write the picture into this file" },
    ...FORCE_OPTION,
    member: { type: "string", help: "replay this member of an ensemble instead of the stated weather" },
    seed: { type: "string", help: "seed of that ensemble, any text" },
  },
  run: async ({ scenario, variant, values, print }) => {
    const traced = await traceFor(scenario, variant, values);
    if (!traced.ok) return traced;
    const trace = traced.value;
    const choice = { force: values.force === true, inputs: inputsOf(scenario, trace.prepared.scenario) };
    if (typeof values.csv === "string") await writeText(values.csv, traceCsv(trace), choice);
    if (typeof values.svg === "string") {
      const { traceSvg } = await import("../report/traceSvg.ts");
      await writeText(values.svg, traceSvg(trace), choice);
    }
    print(values.json === true ? JSON.stringify(traceJson(trace)) : traceText(trace));
    return { ok: true };
  },
};

/** The run under stated weather, or one member of an ensemble. */
async function traceFor(
  scenario: string,
  variant: string | undefined,
  values: VerbCall["values"],
): Promise<Opened<Trace>> {
  if (values.member === undefined) {
    const opened = await openPrepared(scenario, variant);
    return opened.ok ? { ok: true, value: tracePrepared(opened.value) } : opened;
  }
  const member = Number(values.member);
  if (!/^\d{1,6}$/.test(String(values.member))) {
    throw new CallError(
      `--member is "${values.member}" but must be a whole number from 0 to 999999, such as the one that odds names.`,
    );
  }
  const opened = await openEnsemble(scenario, variant, seedOf(values.seed));
  return opened.ok ? { ok: true, value: replayMember(opened.value, member) } : opened;
}

function traceText(trace: Trace): string {
  const { prepared, verdict } = trace;
  const { scenario, grid } = prepared;
  const clock = (ms: number | null) => (ms === null ? null : localMoment(grid, ms).clock);
  const columns: Column<DayFigures>[] = [
    { head: "day", cell: (day) => dayWords(day.date), isWords: true },
    { head: "hours", cell: (day) => String(+day.hours.toFixed(2)) },
    { head: "sunrise", cell: (day) => orDash(clock(day.sunriseMs)) },
    { head: "sunset", cell: (day) => orDash(clock(day.sunsetMs)) },
    ...prepared.groups.map(
      (group, g): Column<DayFigures> => ({ head: `${group.id} Wh`, cell: (day) => wattHours(day.groupWh[g]!) }),
    ),
    { head: "shade took", cell: (day) => wattHours(day.shadeLossWh) },
    { head: "spilled", cell: (day) => wattHours(day.spilledWh) },
    ...(prepared.sources.length > 0
      ? [{ head: "sources Wh", cell: (day: DayFigures) => wattHours(day.sourceWh) }]
      : []),
    { head: "wanted Wh", cell: (day) => wattHours(day.demandWh) },
    { head: "unserved", cell: (day) => wattHours(day.unservedWh) },
    { head: "start", cell: (day) => percent(day.startShare) },
    { head: "lowest", cell: (day) => percent(day.lowestShare) },
    { head: "end", cell: (day) => percent(day.endShare) },
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
    textTable(trace.days, columns),
    "",
    `Lowest: ${percent(verdict.lowestShare)}, ${verdict.lowestAh.toFixed(0)} of ${prepared.bank.fullAh.toFixed(0)} Ah, ${verdict.lowestAt.words}.`,
    ...(radios.length > 0 ? ["Volts at the radios:", ...radios] : []),
    ...prepared.remarks.map((remark) => `Weather: ${remark}`),
    "One run, not a chance: real days differ; odds puts a chance on it.",
  ].join("\n");
}
