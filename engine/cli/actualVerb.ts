import { acceptCorrection } from "../actual/acceptCorrection.ts";
import type { Correction } from "../actual/fitCorrection.ts";
import type { LoggedSteps } from "../actual/loggedSteps.ts";
import type { Miss, PlanAgainstActual } from "../actual/planAgainstActual.ts";
import { workLog } from "../answers/actual/work.ts";
import type { MeterFinding } from "../meter/meterLog.ts";
import { METER_QUANTITIES, type MeterMapping, readMeterMapping } from "../meter/meterMapping.ts";
import { isUnit } from "../meter/meterUnits.ts";
import { readMeterLog } from "../meter/readMeterLog.ts";
import type { Problem } from "../scenario/problem.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import { answerBy } from "./answerTo.ts";
import type { CallContext } from "./callContext.ts";
import { CallError } from "./callError.ts";
import { sixDecimals } from "./figures.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

const SETTINGS = ["zone", "shiftMinutes", "stamp", "timeForm", "decimal", "currentSign", "chargeUnit"] as const;
const COLUMNS = ["time", "date", ...METER_QUANTITIES] as const;

export const actualVerb: Verb = {
  name: "actual",
  usage: "actual SCENARIO --log FILE [--map NAME=TITLE,…|FILE.json] [--variant ID] [--json]",
  purpose:
    "Holds a scenario against what a meter logged: by how much the plan missed and why, and which of its figures to correct.",
  options: {
    log: { type: "string", takes: "FILE", help: "the meter's log, a table with titles (needed)" },
    map: {
      type: "string",
      takes: "FILE",
      help: 'what is in which column, such as "charge=SOC,zone=UTC"; the rest is found',
    },
    json: { type: "boolean", help: "print everything, the rows on the plan's steps included, as JSON" },
  },
  run: async ({ scenario: path, variant, values, context, print }) => {
    if (typeof values.log !== "string") throw new CallError("actual needs a meter's log: write --log FILE.");
    const opened = await openDocument(path, variant, context);
    if (!opened.ok) return opened;
    const { scenario } = opened.value;
    const reading = readMeterLog(
      await context.textOf(values.log),
      await mappingOf(values.map, context),
      zoneOf(scenario.place),
    );
    if (!reading.ok) return { ok: false, problems: [...reading.problems, ...soFar(reading.suggestion)] };
    const held = await answerBy(workLog, [opened.value], { log: reading.log });
    if (!held.ok) return held;
    const { against, fit } = held.value;
    if (!fit.ok) return fit;
    const findings = [...reading.findings, ...against.findings];
    const accepted = acceptCorrection(scenario, fit.correction);
    const changes = accepted.changes.length === 0 ? null : { ...accepted };
    print(
      values.json === true
        ? JSON.stringify(actualJson(against, reading.mapping, findings, fit.correction, changes))
        : actualText(against, reading.mapping, findings, fit.correction),
    );
    return { ok: true };
  },
};

async function mappingOf(map: string | boolean | undefined, context: CallContext): Promise<MeterMapping> {
  if (typeof map !== "string") return {};
  let value: unknown;
  if (map.endsWith(".json")) {
    try {
      value = JSON.parse(await context.textOf(map));
    } catch (error) {
      if (error instanceof CallError) throw error;
      throw new CallError(`${map} is not JSON; name a file with the mapping that --json prints.`);
    }
  } else value = mappingOfPairs(map);
  const read = readMeterMapping(value);
  if (!read.ok) throw new CallError(`--map does not fit: ${read.problems.map(({ message }) => message).join(" ")}`);
  return read.mapping;
}

function mappingOfPairs(map: string): unknown {
  const columns: [string, string][] = [];
  const units: [string, string][] = [];
  const settings: [string, string | number][] = [];
  for (const pair of map.split(",")) {
    const at = pair.indexOf("=");
    const [name, value] = [pair.slice(0, at).trim(), pair.slice(at + 1).trim()];
    if (at > 0 && COLUMNS.some((each) => each === name)) {
      const [, title, unit] = /^(.+):([^:\s]{1,6})$/.exec(value) ?? [];
      const isUnitSaid = unit !== undefined && METER_QUANTITIES.some((each) => each === name) && isUnit(unit);
      columns.push([name, isUnitSaid ? title! : value]);
      if (isUnitSaid) units.push([name, unit]);
    } else if (at > 0 && name === "shiftMinutes") settings.push([name, Number(value)]);
    else if (at > 0 && SETTINGS.some((each) => each === name)) settings.push([name, value]);
    else {
      throw new CallError(
        `--map has "${pair}"; write name=title with ${COLUMNS.join(", ")}, or one of ${SETTINGS.join(", ")}. Titles with commas go into a file: --map FILE.json.`,
      );
    }
  }
  const said = units.length > 0 ? { units: Object.fromEntries(units) } : {};
  return {
    ...Object.fromEntries(settings),
    ...said,
    ...(columns.length > 0 ? { columns: Object.fromEntries(columns) } : {}),
  };
}

/** What could be made out of a log that could not be read, as one more line. */
function soFar(suggestion: MeterMapping): Problem[] {
  const columns = Object.entries(suggestion.columns ?? {}).filter(([, title]) => title !== null);
  if (columns.length === 0) return [];
  const message = `Found so far: ${columns.map(([name, title]) => `${name} in "${title}"`).join(", ")}.`;
  return [{ code: "suggestion", path: ["columns"], message }];
}

function actualText(
  against: PlanAgainstActual,
  mapping: MeterMapping,
  findings: readonly MeterFinding[],
  correction: Correction,
): string {
  const { scenario } = against.plan.prepared;
  const columns = Object.entries(mapping.columns ?? {})
    .filter(([, title]) => title !== null)
    .map(([name, title]) => `${name} from "${title}"`);
  const lines = [
    `${scenario.name}, held against a log of ${correction.coveredH.toFixed(1)} h (${Math.round(100 * against.coveredShare)} % of the plan).`,
    `Read: ${columns.join(", ")}; clock ${mapping.zone}.`,
    ...findings.map(({ message }) => `  ${message}`),
    "",
    ...(against.miss === null ? [] : missLines(against.miss, against.widest)),
    "What the log says of the plan's figures:",
    ...correction.figures.map(({ sentence }) => `  ${sentence}`),
    ...correction.remarks.map((remark) => `  ${remark}`),
  ];
  return lines.join("\n");
}

/** Under this difference the widest miss tells nothing that the end does not. */
const WIDER_SHARE = 0.02;

function missLines(miss: Miss, widest: Miss | null): string[] {
  const isWider = widest !== null && Math.abs(widest.share) > Math.abs(miss.share) + WIDER_SHARE;
  const rows = [
    { name: "load, Wh", ...miss.loadWh },
    { name: "sun, Wh", ...miss.sunWh },
  ].filter((row): row is { name: string; planned: number; actual: number } => row.planned !== undefined);
  const table = textTable(rows, [
    { head: "  over the logged steps", cell: (row) => `  ${row.name}`, isWords: true },
    { head: "planned", cell: (row) => row.planned.toFixed(0) },
    { head: "metered", cell: (row) => row.actual.toFixed(0) },
  ]);
  const wider = isWider ? ["", "Farthest from the plan:", ...widest.sentences.map((sentence) => `  ${sentence}`)] : [];
  return [...miss.sentences, ...wider, "", ...(rows.length > 0 ? [table, ""] : [])];
}

/** What `actual --json` prints; documented in `docs/command-line.md`. */
function actualJson(
  against: PlanAgainstActual,
  mapping: MeterMapping,
  findings: readonly MeterFinding[],
  correction: Correction,
  variant: object | null,
): unknown {
  const { plan, actual, miss, widest } = against;
  const { grid, scenario } = plan.prepared;
  const list = (values: Float64Array | null) =>
    values === null ? null : Array.from(values, (value) => (Number.isFinite(value) ? sixDecimals(value) : null));
  const { chargeShare, loadW, pvW, bankA, bankV, coverageShare }: LoggedSteps = actual;
  return {
    format: "duskline-actual",
    version: 1,
    scenario: scenario.name,
    time: { zone: grid.zone, startMs: grid.startMs, stepMs: grid.stepMs, steps: grid.steps },
    mapping,
    findings,
    coveredShare: against.coveredShare,
    plan: {
      chargeShare: list(plan.chargeShare),
      loadW: list(plan.record.demandW),
      solarW: list(plan.record.solarW),
      spilledW: list(plan.record.spilledW),
    },
    actual: {
      chargeShare: list(chargeShare),
      loadW: list(loadW),
      pvW: list(pvW),
      bankA: list(bankA),
      bankV: list(bankV),
      coverageShare: list(coverageShare),
    },
    days: against.days,
    miss,
    widest,
    correction,
    variant,
  };
}
