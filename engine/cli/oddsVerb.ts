import type { Column } from "../answers/column.ts";
import { type CountedMembers, workMembers, workNone } from "../answers/forecast/work.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { type OddsReport, oddsReport, type Spread } from "../odds/odds.ts";
import { mergeOdds, type OddsPart } from "../odds/oddsPart.ts";
import { oddsPartJson, readOddsPart } from "../odds/oddsPartJson.ts";
import type { Odds } from "../odds/wilson.ts";
import { answerBy } from "./answerTo.ts";
import type { CallContext } from "./callContext.ts";
import { CallError } from "./callError.ts";
import { percent, sixDecimals, wattHours } from "./figures.ts";
import { memberRange, seedOf } from "./memberRange.ts";
import { type Opened, type OpenedDocument, openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const oddsVerb: Verb = {
  name: "odds",
  usage: "odds SCENARIO [--variant ID] [--members N|FROM:TO] [--seed TEXT] [--json] [--part FILE | --parts FILE,FILE]",
  purpose: "Runs a scenario under many skies and operators: in how many the bank holds, and when it fails.",
  options: {
    members: { type: "string", help: "how many, or which, such as 500:1000 (1000 when left out)" },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    json: { type: "boolean", help: "print everything, bands included, as JSON" },
    part: { type: "string", takes: "FILE", help: "write these members into a file, to be put together later" },
    parts: { type: "string", help: "put together files that --part wrote, and run nothing" },
  },
  run: async ({ scenario, variant, values, context, print, write, requireRoom }) => {
    if (typeof values.part === "string") await requireRoom(values.part);
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const seed = seedOf(values.seed);
    const found =
      typeof values.parts === "string"
        ? await putTogether(values.parts, opened.value, seed)
        : await answerBy(workMembers, [opened.value], {}, { seed, ...memberRange(values.members) });
    if (!found.ok) return found;
    const { ensemble, part } = found.value;
    if (typeof values.part === "string") {
      await write(values.part, JSON.stringify(oddsPartJson(part, ensemble.prepared.scenario.name)));
    }
    const report = oddsReport(ensemble, part);
    print(values.json === true ? JSON.stringify(oddsJson(ensemble, report)) : oddsText(ensemble, report));
    return { ok: true };
  },
};

/** Members that were run before, with what it takes to say what they came to. */
async function putTogether(paths: string, opened: OpenedDocument, seed: string): Promise<Opened<CountedMembers>> {
  const ready = await answerBy(workNone, [opened], {}, { seed, to: 0 });
  if (!ready.ok) return ready;
  const { value: ensemble } = ready;
  const found = await partsOf(paths, ensemble, opened.context);
  return found.ok ? { ok: true, value: { ensemble, part: found.value } } : found;
}

async function partsOf(paths: string, ensemble: PreparedEnsemble, context: CallContext): Promise<Opened<OddsPart>> {
  const parts: OddsPart[] = [];
  for (const path of paths.split(",")) {
    const text = await context.textOf(path);
    let json: unknown;
    try {
      json = JSON.parse(text);
    } catch {
      throw new CallError(`${path} is not JSON; name files that odds --part wrote.`);
    }
    const read = readOddsPart(json, ensemble.prepared.scenario.name);
    if (!read.ok)
      return {
        ok: false,
        problems: read.problems.map((problem) => ({ ...problem, message: `${path}: ${problem.message}` })),
      };
    parts.push(read.part);
  }
  try {
    return { ok: true, value: mergeOdds(parts) };
  } catch (error) {
    throw new CallError(`The parts do not go together: ${(error as Error).message}.`);
  }
}

/** What `odds --json` prints; documented in `docs/command-line.md`. */
function oddsJson(ensemble: PreparedEnsemble, report: OddsReport): unknown {
  const { grid, scenario } = ensemble.prepared;
  const lists = (bands: object) =>
    Object.fromEntries(
      Object.entries(bands).map(([name, values]) => [name, Array.from(values as Float64Array, sixDecimals)]),
    );
  return {
    format: "duskline-odds",
    version: 1,
    scenario: { name: scenario.name, place: scenario.place },
    time: { zone: grid.zone, startMs: grid.startMs, stepMs: grid.stepMs, steps: grid.steps },
    remarks: ensemble.remarks,
    ...report,
    charge: lists(report.charge),
    solarW: lists(report.solarW),
    loadW: lists(report.loadW),
    belowShare: Array.from(report.belowShare, sixDecimals),
    darkShare: Array.from(report.darkShare, sixDecimals),
  };
}

interface Line {
  readonly name: string;
  readonly spread: Spread;
  readonly print: (value: number) => string;
}

function oddsText(ensemble: PreparedEnsemble, report: OddsReport): string {
  const { scenario, bank } = ensemble.prepared;
  const share = ({ count, of, low, high }: Odds) => `${count} of ${of} members (${percent(low)} to ${percent(high)})`;
  const hours = (value: number) => value.toFixed(1);
  const columns: Column<Line>[] = [
    { head: "over the event", cell: (line) => line.name, isWords: true },
    { head: "5 %", cell: (line) => line.print(line.spread.p5) },
    { head: "25 %", cell: (line) => line.print(line.spread.p25) },
    { head: "half", cell: (line) => line.print(line.spread.p50) },
    { head: "75 %", cell: (line) => line.print(line.spread.p75) },
    { head: "95 %", cell: (line) => line.print(line.spread.p95) },
    { head: "mean", cell: (line) => line.print(line.spread.mean) },
  ];
  const hasGenerator = scenario.sources.some((source) => source.kind === "generator");
  const lines: Line[] = [
    { name: "lowest charge", spread: report.lowestShare, print: percent },
    { name: "lowest charge, Ah", spread: report.lowestShare, print: (value) => (value * bank.fullAh).toFixed(0) },
    { name: "charge at the end", spread: report.endShare, print: percent },
    { name: "sun, Wh", spread: report.solarWh, print: wattHours },
    { name: "spilled, Wh", spread: report.spilledWh, print: wattHours },
    { name: "wanted, Wh", spread: report.demandWh, print: wattHours },
    { name: "unserved, Wh", spread: report.unservedWh, print: wattHours },
    { name: "dark, h", spread: report.darkH, print: hours },
    ...(hasGenerator
      ? [
          { name: "generator, h", spread: report.generatorH, print: hours },
          { name: "fuel, L", spread: report.fuelL, print: hours },
        ]
      : []),
  ];
  const without = report.unservedByDevice.filter((device) => device.meanWh >= 0.5);
  return [
    `${scenario.name} · ${scenario.place.name}`,
    "",
    ...report.sentences,
    "",
    `holds:        ${share(report.holds)}`,
    `ever dark:    ${share(report.dark)}`,
    `radio volts:  ${share(report.dropouts)} fall short on a transmit peak`,
    "",
    textTable(lines, columns),
    "",
    ...(without.length > 0 && scenario.shedding.length > 0
      ? [
          `Goes without, Wh on average: ${without.map((device) => `${device.name} ${wattHours(device.meanWh)}`).join(", ")}.`,
        ]
      : []),
    `One sky in twenty is worse than member ${report.tailMember}: duskline trace … --member ${report.tailMember} --seed ${report.seed} replays it.`,
    ...ensemble.remarks.map((remark) => `Weather: ${remark}`),
    `Seed ${report.seed}; the intervals are those of the sample, not of the model.`,
  ].join("\n");
}
