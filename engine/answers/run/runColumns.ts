import type { Trace } from "../../run/trace.ts";
import type { LoadParts } from "./loadParts.ts";

/** A figure of each step, under a title that ends with its unit. */
export interface StepColumn {
  readonly title: string;
  readonly values: Float64Array;
}

/** What a run says of each step, as its table and its file show it. */
export function runColumns(trace: Trace, { alwaysW, usedW, sendingW }: LoadParts): StepColumn[] {
  const { prepared, record, details } = trace;
  const { steps } = prepared.grid;
  const of = (title: string, values: Float64Array): StepColumn => ({ title, values: values.slice(0, steps) });
  const part = (values: Float64Array, k: number) => values.subarray(k * steps, (k + 1) * steps);
  return [
    of("charge_share", trace.chargeShare),
    of("stored_Ah", record.storedAh),
    of("bank_V", record.bankV),
    of("bank_A", record.bankA),
    of("bank_W", record.bankW),
    of("solar_W", record.solarW),
    of("spilled_W", record.spilledW),
    of("demand_W", record.demandW),
    of("served_W", record.servedW),
    of("served_always_W", alwaysW),
    of("served_used_W", usedW),
    of("served_sending_W", sendingW),
    of("unserved_W", record.unservedW),
    of("ghi_Wm2", prepared.light.ghiWm2),
    of("air_C", prepared.airTempC),
    ...prepared.groups.map(({ id }, g) => of(`panels_${id}_W`, part(record.groupW, g))),
    ...prepared.groups.map(({ id }, g) => of(`shade_${id}_W`, details[g]!.shadeLossW)),
    ...prepared.sources.map(({ id }, s) => of(`source_${id}_W`, part(record.sourceW, s))),
    ...prepared.loads.stations.map(({ id }, s) => of(`radio_${id}_V`, part(record.radioV, s))),
  ];
}
