import { clockOfLog } from "../../../engine/actual/clockOfLog.ts";
import type { KeptLog } from "../../../engine/answers/actual/doc.ts";
import { keptLog } from "../../../engine/answers/actual/keptLog.ts";
import type { MeterFinding } from "../../../engine/meter/meterLog.ts";
import { type MeterMapping, readMeterMapping } from "../../../engine/meter/meterMapping.ts";
import { meterTable } from "../../../engine/meter/meterTable.ts";
import { readMeterLog } from "../../../engine/meter/readMeterLog.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";
import { zoneOf } from "../../../engine/scenario/zoneOf.ts";

const SAMPLE_ROWS = 5;

/** How logs with these titles were read before. */
export interface RememberedMapping {
  readonly titles: readonly string[];
  readonly mapping: MeterMapping;
}

export interface LogAsked {
  readonly name: string;
  readonly text: string;
  /** Null for a log that is read for the first time: then what is remembered of its titles holds. */
  readonly mapping: MeterMapping | null;
  readonly remembered: readonly RememberedMapping[];
  readonly document: ScenarioInput;
  readonly takenAt: string;
}

/** A log as far as it could be read: plain data that a worker can hand over. */
export interface LogRead {
  readonly titles: readonly string[];
  readonly sample: readonly (readonly string[])[];
  /** What it was asked to be read with: remembered, or as given. */
  readonly given: MeterMapping;
  readonly isRemembered: boolean;
  /** What is in which column, as given or as found. */
  readonly mapping: MeterMapping;
  readonly findings: readonly MeterFinding[];
  /** What is wrong or has to be decided, in sentences; empty once the log can be taken. */
  readonly wrong: readonly string[];
  readonly log: KeptLog | null;
}

/** Reads a log for a plan: its columns, what there is to say of it, and what of it the notebook would keep. */
export function readLog({ name, text, mapping, remembered, document, takenAt }: LogAsked): LogRead {
  const scenario = readScenario(document);
  const table = meterTable(text.replace(/^\uFEFF/, ""), mapping ?? {});
  const titles = table?.titles ?? [];
  const sample = table?.rows.slice(table.firstRow, table.firstRow + SAMPLE_ROWS) ?? [];
  const known =
    mapping === null
      ? remembered.find((each) => same(each.titles, titles) && readMeterMapping(each.mapping).ok)
      : undefined;
  const given = mapping ?? known?.mapping ?? {};
  const begun = { titles, sample, given, isRemembered: known !== undefined };
  const stopped = (wrong: readonly string[], suggestion: MeterMapping): LogRead => ({
    ...begun,
    mapping: suggestion,
    findings: [],
    wrong,
    log: null,
  });
  if (!scenario.ok)
    return stopped(
      scenario.problems.slice(0, 3).map(({ message }) => message),
      given,
    );
  const zone = zoneOf(scenario.scenario.place);
  const laid = timeGrid(scenario.scenario.time, zone);
  if (!laid.ok)
    return stopped(
      laid.problems.map(({ message }) => message),
      given,
    );
  const reading = readMeterLog(text, given, zone);
  if (!reading.ok)
    return stopped(
      reading.problems.slice(0, 8).map(({ message }) => message),
      reading.suggestion,
    );
  const clock = clockOfLog(scenario.scenario, reading.log);
  const findings = clock === null ? reading.findings : [...reading.findings, clock];
  const origin = { name, takenAt, titles, mapping: reading.mapping, findings };
  const kept = keptLog(reading.log, laid.grid, origin);
  return {
    ...begun,
    mapping: reading.mapping,
    findings,
    wrong: kept.ok ? [] : [kept.sentence],
    log: kept.ok ? kept.log : null,
  };
}

function same(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((title, k) => title === b[k]);
}
