import type { MeterLog } from "../meter/meterLog.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";

/** Panels at the edge of a cloud pass their rating for seconds by up to a quarter (common practice, no source); half as much again is another unit. */
const MOST_OF_RATED = 1.5;
/** A few cells may be a meter's fault; one row in fifty is not. */
const MOST_ROWS_SHARE = 0.02;
/** Volts that a 12 V bank shows under load and on charge (common practice, no source). */
const V_PER_12V = [8, 17] as const;

/** What of a log cannot be this plan's, with the likely reason: answers from such a log would look like answers. */
export function impossibleLog(log: MeterLog, { panels, bank }: Scenario): Problem[] {
  return [...sunBeyond(log, panels), ...otherVolts(log, bank.nominalV)];
}

function sunBeyond({ pvW }: MeterLog, panels: Scenario["panels"]): Problem[] {
  const ratedW = panels.reduce((sum, { count, module }) => sum + count * module.ratedW, 0);
  if (pvW === null || !isMostly(pvW, (watts) => watts > MOST_OF_RATED * ratedW)) return [];
  const most = Math.round(pvW.reduce((high, watts) => Math.max(high, watts), 0));
  const message = `The log's panels give up to ${most} W, and the plan's have ${ratedW} W in all: the column is in another unit (say it: pvW=TITLE:mW), or the log is of another station.`;
  return [{ code: "too-much-sun", path: ["columns", "pvW"], message }];
}

function otherVolts({ bankV }: MeterLog, nominalV: number): Problem[] {
  const [low, high] = V_PER_12V.map((volts) => (volts * nominalV) / 12) as [number, number];
  if (bankV === null || !isMostly(bankV, (volts) => volts < low || volts > high)) return [];
  const odd = bankV.find((volts) => volts < low || volts > high)!;
  const message = `The log's bank is at ${odd.toFixed(1)} V, and the plan's is a ${nominalV} V bank: the column is another one or in another unit (say it: bankV=TITLE:mV), or the log is of another station.`;
  return [{ code: "other-volts", path: ["columns", "bankV"], message }];
}

function isMostly(cells: Float64Array, isOdd: (value: number) => boolean): boolean {
  const numbers = cells.filter(Number.isFinite);
  return numbers.length > 0 && numbers.filter(isOdd).length > MOST_ROWS_SHARE * numbers.length;
}
