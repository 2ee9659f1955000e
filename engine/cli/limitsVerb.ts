import { KINDS } from "../answers/kinds.ts";
import type { LimitsPicture } from "../answers/limits/ask.ts";
import { chargeFromWords, coldFromWords } from "../answers/limits/limitsWords.ts";
import type { CableRun } from "../checks/cableRuns.ts";
import { type Caution, NO_PERMIT } from "../checks/cautions.ts";
import type { LimitLine } from "../checks/limitLine.ts";
import type { LimitRule } from "../checks/limitRules.ts";
import type { BranchCurrent, LimitsReport, RadioAtPeak } from "../checks/limits.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { answerTo } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { percent, sixDecimals } from "./figures.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

/** Characters in a line of the printed report. */
const WIDTH = 100;

export const limitsVerb: Verb = {
  name: "limits",
  usage: "limits SCENARIO [--variant ID] [--drop N] [--charge N] [--coldest N] [--sheet FILE] [--json]",
  purpose:
    "Holds currents, fuses, wires, panel volts and the volts at the radios against their limits; what to change.",
  options: {
    drop: { type: "string", help: "percent of its volts that a run may lose (3 when left out)" },
    charge: { type: "string", help: "percent of charge at which the peaks are met (the run's lowest when left out)" },
    coldest: {
      type: "string",
      help: "coldest air in °C that panels may meet (the place's record, by estimate, when left out)",
    },
    sheet: {
      type: "string",
      takes: "FILE",
      help: "write the wiring sheet into this file: a page to print, or a picture if it ends in .svg",
    },
    json: { type: "boolean", help: "print everything as JSON" },
  },
  run: async ({ scenario, variant, values, context, print, write }) => {
    const drop = numberOf("drop", values.drop, 0.1, 50);
    const charge = numberOf("charge", values.charge, 0, 100);
    const coldest = numberOf("coldest", values.coldest, -90, 60);
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const found = await answerTo(KINDS.limits, [opened.value], {
      ...(drop === undefined ? {} : { targetDropShare: drop / 100 }),
      ...(charge === undefined ? {} : { lowestShare: charge / 100 }),
      ...(coldest === undefined ? {} : { coldestC: coldest }),
    });
    if (!found.ok) return found;
    if (typeof values.sheet === "string") await write(values.sheet, await sheetText(values.sheet, found.value));
    const say = values.json === true ? limitsJson : limitsText;
    print(say(found.value, opened.value.scenario));
    return { ok: true };
  },
};

function numberOf(name: string, text: string | boolean | undefined, low: number, high: number): number | undefined {
  if (typeof text !== "string") return undefined;
  const number = text.trim() === "" ? Number.NaN : Number(text);
  if (number >= low && number <= high) return number;
  throw new CallError(`--${name} is "${text}" but must be a number from ${low} to ${high}, such as --${name} 3.`);
}

/** The wiring sheet in the form that the file's name asks for. What draws is loaded when it is wanted. */
async function sheetText(path: string, report: LimitsPicture): Promise<string> {
  if (/\.svg$/i.test(path)) {
    const [{ svgDocument }, { wiringDrawing }, { drawingRules }] = await Promise.all([
      import("../drawing/svgDocument.ts"),
      import("../answers/limits/wiringDrawing.ts"),
      import("../report/drawingRules.ts"),
    ]);
    return svgDocument(wiringDrawing(report), drawingRules);
  }
  if (!/\.html?$/i.test(path))
    throw new CallError(`--sheet is "${path}" but must end in .html (a page to print) or .svg (a picture).`);
  const { wiringSheet } = await import("../answers/limits/wiringSheet.ts");
  return wiringSheet(report);
}

function limitsJson(
  { name: _, sheetOf: _sheet, remarks, ...report }: LimitsPicture,
  { name, place }: Scenario,
): string {
  return JSON.stringify(
    { format: "duskline-limits", version: 1, scenario: { name, place }, remarks, ...report },
    (_, value: unknown) => (typeof value === "number" ? sixDecimals(value) : value),
  );
}

function limitsText(report: LimitsPicture, { name }: Scenario): string {
  const rules: LimitRule[] = [];
  for (const { rule } of report.lines) if (!rules.includes(rule)) rules.push(rule);
  const ruleOf = (line: LimitLine) => rules.indexOf(line.rule) + 1;
  const toChange = report.lines.filter((line) => line.verdict !== "within");
  return [
    `${name}: wiring and limits`,
    "",
    ...report.sentences.flatMap((sentence) => wrapped(sentence)),
    ...wrapped(NO_PERMIT),
    ...wrapped(basis(report)),
    "",
    branchTable(report.branches),
    "",
    ...(report.runs.length > 0 ? [runTable(report), ""] : []),
    ...(report.radios.length > 0 ? [radioTable(report.radios), ""] : []),
    lineTable(report.lines, ruleOf),
    "",
    ...(report.lines.some((line) => line.isAssumed || line.verdict === "assumed") ? [...wrapped(ASSUMED), ""] : []),
    ...(toChange.length > 0 ? ["What to do:", ...changes(toChange), ""] : []),
    "Rules:",
    ...rules.flatMap((rule, r) => wrapped(`${rule.words} Source: ${rule.source}.`, `  ${r + 1}. `)),
    "",
    "Cautions:",
    ...report.cautions.flatMap(cautionLines),
  ].join("\n");
}

const ASSUMED =
  "* what is usual for such gear, or a lead that would do, because the scenario states none: state it. A line that rests on a lead nobody stated is assumed and not within.";

function basis(report: LimitsReport): string {
  const charge = `${percent(report.lowestShare)} charge (${report.openV.toFixed(2)} V at rest), ${chargeFromWords(report.lowestFrom, "as given")}`;
  const cold = `${Math.round(report.coldestC)} °C, ${coldFromWords(report.coldestFrom, "as given")}${report.coldestFrom === "given" ? "" : " (--coldest)"}`;
  return `Peaks are met at ${charge}. Panels: ${cold}. Wires: ${Math.round(report.warmestC)} °C at the warmest.`;
}

function branchTable(branches: readonly BranchCurrent[]): string {
  return textTable(branches, [
    { head: "branch", cell: (branch) => clipped(branch.about, 40), isWords: true },
    { head: "peak A", cell: (branch) => branch.peakA.toFixed(1) },
    { head: "lasting A", cell: (branch) => branch.continuousA.toFixed(1) },
    {
      head: "sending at the peak",
      cell: (branch) => clipped(branch.id === "main" ? branch.sending.join(", ") || "nobody" : "", 38),
      isWords: true,
    },
  ]);
}

function runTable({ runs, targetDropShare }: LimitsReport): string {
  return textTable<CableRun>(runs, [
    { head: "cable", cell: (run) => clipped(run.about, 32), isWords: true },
    { head: "size", cell: (run) => `${run.size}${run.isAssumed ? "*" : ""}`, isWords: true },
    { head: "one way m", cell: (run) => String(run.oneWayM) },
    { head: "°C", cell: (run) => String(run.tempC) },
    { head: "A", cell: (run) => run.currentA.toFixed(1) },
    { head: "drop V", cell: (run) => run.dropV.toFixed(2) },
    { head: "drop", cell: (run) => `${(100 * run.dropShare).toFixed(1)} %` },
    {
      head: `for ${+(100 * targetDropShare).toFixed(1)} %`,
      cell: (run) => run.smallest ?? "none",
      isWords: true,
    },
  ]);
}

function radioTable(radios: readonly RadioAtPeak[]): string {
  const lost = (radio: RadioAtPeak, part: RegExp) =>
    radio.links.reduce((sum, { link, lostV }) => sum + (part.test(link) ? lostV : 0), 0).toFixed(2);
  return textTable(radios, [
    { head: "radio on the worst peak", cell: (radio) => clipped(radio.name, 28), isWords: true },
    { head: "V", cell: (radio) => radio.radioV.toFixed(2) },
    { head: "least V", cell: (radio) => radio.minimumV.toFixed(2) },
    { head: "pack −V", cell: (radio) => lost(radio, /^pack/) },
    { head: "main −V", cell: (radio) => lost(radio, /^main/) },
    { head: "lead −V", cell: (radio) => lost(radio, /lead/) },
    { head: "weak link", cell: (radio) => radio.weakLink.link, isWords: true },
  ]);
}

function lineTable(lines: readonly LimitLine[], ruleOf: (line: LimitLine) => number): string {
  return textTable(lines, [
    { head: "", cell: (line) => (line.verdict === "over" ? "OVER" : line.verdict), isWords: true },
    { head: "where", cell: (line) => clipped(line.about, 22), isWords: true },
    { head: "what", cell: (line) => clipped(line.quantity.replace(/ \(.*$/, ""), 29), isWords: true },
    { head: "value", cell: (line) => figure(line.value, line.unit) },
    {
      head: "limit",
      cell: (line) =>
        `${bound(line)}${figure(line.limit, line.unit)}${line.isAssumed && line.limit !== null ? "*" : ""}`,
    },
    { head: "margin", cell: (line) => (line.marginShare === null ? "–" : `${Math.round(100 * line.marginShare)} %`) },
    { head: "rule", cell: (line) => String(ruleOf(line)) },
  ]);
}

const bound = (line: LimitLine) => (line.limit === null ? "" : line.bound === "most" ? "≤ " : "≥ ");

function figure(value: number | null, unit: string): string {
  if (value === null) return "?";
  if (unit === "share") return `${(100 * value).toFixed(1)} %`;
  const digits = unit === "V" || unit === "m" ? 2 : unit === "" || Math.abs(value) >= 1000 ? 0 : 1;
  return `${value.toFixed(digits)}${unit === "" ? "" : ` ${unit}`}`;
}

/** Like advice for several places is said once. */
function changes(lines: readonly LimitLine[]): string[] {
  const said = new Map<string, string[]>();
  for (const line of lines) {
    const key = line.verdict === "unknown" ? "" : line.change;
    const what = line.verdict === "unknown" ? line.change : `${line.about}, ${line.quantity}`;
    said.set(key, [...(said.get(key) ?? []), what]);
  }
  return [...said].flatMap(([change, places]) =>
    change === ""
      ? wrapped(`not stated: ${[...new Set(places.map(fieldIn))].join(", ")}.`, "  - ")
      : wrapped(`${places.join("; ")}: ${change}`, "  - "),
  );
}

/** "State mainFeed.fuseA, from the label …" names the field. */
const fieldIn = (change: string) => /^State (\S+),/.exec(change)?.[1] ?? change;

function cautionLines(caution: Caution): string[] {
  const why = caution.why === null ? "" : ` (${caution.why})`;
  return wrapped(`${caution.title}${why}: ${caution.words}`, "  - ");
}

function clipped(text: string, width: number): string {
  return text.length <= width ? text : `${text.slice(0, width - 1).trimEnd()}…`;
}

/** Words in lines of at most `WIDTH` characters; the first begins with `head` and the others stand under its text. */
function wrapped(text: string, head = ""): string[] {
  const lines: string[] = [];
  let line = head;
  for (const word of text.split(" ")) {
    const isEmpty = line.trim() === "" || line === head;
    if (!isEmpty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = " ".repeat(head.length) + word;
    } else line = isEmpty ? line + word : `${line} ${word}`;
  }
  return [...lines, line];
}
