import { csvText } from "../csvText.ts";
import { localMoment } from "../run/localClock.ts";
import type { Trace } from "../run/trace.ts";
import { sixDecimals } from "./figures.ts";

/** One row a step with a header row; powers are means over the step, charge is that at its start. */
export function traceCsv(trace: Trace): string {
  const { prepared, record } = trace;
  const { grid, scenario, loads } = prepared;
  const { steps } = grid;
  const columns: [title: string, value: (i: number) => number | string][] = [
    ["local", (i) => localMoment(grid, grid.startMs + i * grid.stepMs).words],
    ["utc", (i) => new Date(grid.startMs + i * grid.stepMs).toISOString()],
    ["charge_share", (i) => trace.chargeShare[i]!],
    ["stored_Ah", (i) => record.storedAh[i]!],
    ["bank_V", (i) => record.bankV[i]!],
    ["bank_A", (i) => record.bankA[i]!],
    ["bank_W", (i) => record.bankW[i]!],
    ["solar_W", (i) => record.solarW[i]!],
    ["spilled_W", (i) => record.spilledW[i]!],
    ["demand_W", (i) => record.demandW[i]!],
    ["served_W", (i) => record.servedW[i]!],
    ["unserved_W", (i) => record.unservedW[i]!],
    ["ghi_Wm2", (i) => prepared.light.ghiWm2[i]!],
    ["air_C", (i) => prepared.airTempC[i]!],
    ...prepared.groups.map((group, g): [string, (i: number) => number] => [
      `panels_${group.id}_W`,
      (i) => record.groupW[g * steps + i]!,
    ]),
    ...scenario.panels.map((group, g): [string, (i: number) => number] => [
      `shade_${group.id}_W`,
      (i) => trace.details[g]!.shadeLossW[i]!,
    ]),
    ...prepared.sources.map((source, s): [string, (i: number) => number] => [
      `source_${source.id}_W`,
      (i) => record.sourceW[s * steps + i]!,
    ]),
    ...loads.stations.map((station, s): [string, (i: number) => number] => [
      `radio_${station.id}_V`,
      (i) => record.radioV[s * steps + i]!,
    ]),
  ];
  const rows = Array.from({ length: steps }, (_, i) =>
    columns.map(([, value]) => {
      const cell = value(i);
      return typeof cell === "number" ? String(sixDecimals(cell)) : cell;
    }),
  );
  return `${csvText([columns.map(([title]) => title), ...rows])}\n`;
}
