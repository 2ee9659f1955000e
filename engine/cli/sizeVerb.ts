import { workMap } from "../answers/sizing/work.ts";
import { USUAL_DAYS, USUAL_MEMBERS, USUAL_TARGET_SHARE } from "../library/askOptions.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { readSizeWish, type SizeAxis, type SizeWish } from "../size/sizeAxis.ts";
import { sizeFixedWords } from "../size/sizeFixedWords.ts";
import type { SizeMap } from "../size/sizeMap.ts";
import type { SizeReport } from "../size/sizeReport.ts";
import { isSize, type SizeRow } from "../size/sizeTally.ts";
import { answerBy } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { seedOf } from "./memberRange.ts";
import { openDocument } from "./openScenario.ts";
import { sizeTable } from "./sizeTable.ts";
import type { Verb, VerbCall } from "./verb.ts";

const MOST_MEMBERS = 100_000;

export const sizeVerb: Verb = {
  name: "size",
  usage:
    "size SCENARIO [--variant ID] [--x FIELD=FROM:TO:COUNT] [--y FIELD=VALUE,VALUE] [--target 95] [--members 1000] [--seed TEXT] [--days-autonomy 2] [--json]",
  purpose:
    "Maps the odds over two numbers of the scenario, bank against panels unless others are named, and finds the least that meets a target.",
  options: {
    x: {
      type: "string",
      help: "across: bank.blockAh=100:400:7 or bank.blockAh=100,200,280 (sizes about the present one)",
    },
    y: { type: "string", help: "down: likewise (modules of the first panel group); none for a single row" },
    target: { type: "string", help: "skies in 100 in which the bank is to hold (95)" },
    members: { type: "string", help: "skies and operators drawn (1000); all cells meet the same ones" },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    "days-autonomy": { type: "string", help: "days without sun for the handbook's answer (2)" },
    json: { type: "boolean", help: "print it as JSON" },
  },
  run: async ({ scenario: path, variant, values, context, print }) => {
    const target = numberOf(values, "target", 100 * USUAL_TARGET_SHARE, 1, 100);
    const members = numberOf(values, "members", USUAL_MEMBERS, 1, MOST_MEMBERS);
    if (!Number.isInteger(members)) throw new CallError(`--members is "${values.members}" but must be a whole number.`);
    const autonomyDays = numberOf(values, "days-autonomy", USUAL_DAYS, 0.1, 60);
    const opened = await openDocument(path, variant, context);
    if (!opened.ok) return opened;
    const [x, y] = [wishOf(values.x, "x"), values.y === "none" ? null : wishOf(values.y, "y")];
    const choices = {
      ...(x === undefined ? {} : { x }),
      ...(y === undefined ? {} : { y }),
      aims: { targetShare: target / 100, autonomyDays },
    };
    const drawn = { seed: seedOf(values.seed), to: members };
    const found = await answerBy(workMap, [opened.value], choices, drawn);
    if (!found.ok) return found;
    const { map, report } = found.value;
    const { name } = opened.value.scenario;
    print(values.json === true ? JSON.stringify(sizeJson(name, map, report)) : sizeText(name, map, report));
    return { ok: true };
  },
};

function numberOf(values: VerbCall["values"], name: string, usual: number, low: number, high: number): number {
  const given = values[name];
  if (given === undefined) return usual;
  const value = Number(given);
  if (String(given).trim() === "" || !(value >= low && value <= high)) {
    throw new CallError(`--${name} is "${given}" but must be a number from ${low} to ${high}.`);
  }
  return value;
}

function wishOf(given: string | boolean | undefined, name: string): SizeWish | undefined {
  if (typeof given !== "string") return undefined;
  const read = readSizeWish(given);
  if (!read.ok) throw new CallError(`--${name}: ${read.problems[0]!.message}`);
  return read.wish;
}

/** What `size --json` prints; documented in `docs/command-line.md`. */
function sizeJson(name: string, map: SizeMap, report: SizeReport): unknown {
  return {
    format: "duskline-sizes",
    version: 1,
    scenario: { name, place: map.base.scenario.place },
    remarks: map.remarks,
    ...report,
  };
}

function sizeText(name: string, map: SizeMap, report: SizeReport): string {
  const { scenario } = map.base;
  const { x, y, rows } = report;
  const yTitle = y === null ? [] : [y.at];
  const hasWatts = y !== null && /^panels\..*\.(count|module\.ratedW)$/.test(y.at);
  const columns = x.values.length;
  const labels = rows.map((row, r) => [
    ...(row.y === null ? [] : [`${row.y}${row.y === y?.present ? " (now)" : ""}`]),
    ...(hasWatts ? [panelWatts(map.cells[r * columns]!.scenario).toFixed(0)] : []),
    enoughText(row, x),
  ]);
  const isAh = x.at === "bank.blockAh";
  const titles = [...yTitle, ...(hasWatts ? ["panels, W"] : []), isSize(x) ? "least enough" : "enough"];
  const target = report.targetShare === 1 ? "every member" : `${+(100 * report.targetShare).toFixed(3)} in 100`;
  return [
    `${name} · ${scenario.place.name}`,
    "",
    ...report.sentences,
    "",
    `Members in 100 that hold, ${x.at}${isAh ? " in Ah" : ""} across${x.present === null ? "" : ` (now ${x.present})`}; the stair marks the target, ${target}.`,
    "",
    sizeTable(report, labels, titles),
    "",
    ...(rows.some((row) => row.cells.some((cell) => cell.isOpen)) && report.targetShare < 1
      ? ["~ the sample leaves open on which side of the target this lies; more members would tell."]
      : []),
    ...sizeFixedWords(map),
    ...map.remarks.map((remark) => `Weather: ${remark}`),
    `${report.members} members, seed ${report.seed}: all cells meet the same skies and operators. The intervals are those of the sample, not of the model.`,
  ].join("\n");
}

/** The least size that is enough; or the range of values, of which more may be worse. */
function enoughText({ smallest, largest }: SizeRow, x: SizeAxis): string {
  if (smallest === null) return "–";
  return isSize(x) || smallest.x === largest!.x ? String(smallest.x) : `${smallest.x} to ${largest!.x}`;
}

function panelWatts(scenario: Scenario): number {
  return scenario.panels.reduce((sum, group) => sum + group.count * group.module.ratedW, 0);
}
