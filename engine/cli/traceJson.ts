import { ledger } from "../run/ledger.ts";
import type { Trace } from "../run/trace.ts";
import { sixDecimals } from "./figures.ts";

/** Version of the JSON that `trace --json` prints; it grows only when a field changes its meaning or goes away. */
const TRACE_JSON_VERSION = 1;

const rounded = (values: ArrayLike<number>) => Array.from(values, sixDecimals);

/** Everything a trace knows, as plain JSON; documented in `docs/command-line.md`. Lists have one value per step. */
export function traceJson(trace: Trace): unknown {
  const { prepared, record, details } = trace;
  const { scenario, grid, loads } = prepared;
  const { steps } = grid;
  const slice = (values: Float64Array, k: number) => rounded(values.subarray(k * steps, (k + 1) * steps));
  return {
    format: "duskline-trace",
    version: TRACE_JSON_VERSION,
    scenario: { name: scenario.name, place: scenario.place, note: scenario.note ?? null },
    time: { zone: grid.zone, startMs: grid.startMs, stepMs: grid.stepMs, steps, dates: grid.dates },
    nights: prepared.nights,
    remarks: prepared.remarks,
    verdict: trace.verdict,
    days: trace.days,
    ledger: ledger(trace),
    bank: { fullAh: sixDecimals(prepared.bank.fullAh), reserveAh: sixDecimals(prepared.bank.reserveAh) },
    steps: {
      middleMs: Array.from(grid.middleMs),
      sunAzimuthDeg: rounded(prepared.sun.azimuthDeg),
      sunElevationDeg: rounded(prepared.sun.elevationDeg),
      ghiWm2: rounded(prepared.light.ghiWm2),
      dniWm2: rounded(prepared.light.dniWm2),
      dhiWm2: rounded(prepared.light.dhiWm2),
      airTempC: rounded(prepared.airTempC),
      solarW: rounded(record.solarW),
      spilledW: rounded(record.spilledW),
      demandW: rounded(record.demandW),
      servedW: rounded(record.servedW),
      unservedW: rounded(record.unservedW),
      bankW: rounded(record.bankW),
      bankA: rounded(record.bankA),
      bankV: rounded(record.bankV),
      bankLossW: rounded(trace.bankLossW),
      connected: rounded(record.connected),
    },
    /** One value more than there are steps: the charge at each step's start, and at the end. */
    chargeShare: rounded(trace.chargeShare),
    panels: prepared.groups.map((group, g) => ({
      id: group.id,
      name: scenario.panels[g]!.name,
      busW: slice(record.groupW, g),
      planeBeforeWm2: rounded(details[g]!.planeBeforeWm2),
      planeWm2: rounded(details[g]!.planeWm2),
      effectiveWm2: rounded(details[g]!.effectiveWm2),
      cellTempC: rounded(details[g]!.cellTempC),
      sectionsConducting: rounded(details[g]!.sectionsConducting),
      mppV: rounded(details[g]!.mppV),
      dcW: rounded(details[g]!.dcW),
      shadeLossW: rounded(details[g]!.shadeLossW),
    })),
    sources: prepared.sources.map((source, s) => ({
      id: source.id,
      name: source.name,
      busW: slice(record.sourceW, s),
      fuelL: slice(record.fuelL, s),
    })),
    loads: loads.devices.map((device) => ({
      id: device.id,
      name: device.name,
      alwaysW: rounded(device.alwaysW),
      usedW: rounded(device.usedW),
    })),
    stations: loads.stations.map((station, s) => ({
      id: station.id,
      name: station.name,
      minimumV: station.minimumV,
      staffedShare: rounded(station.staffedShare),
      sendingShare: rounded(station.sendingShare),
      /** 0 while nobody is there or the disconnect is open. */
      radioV: slice(record.radioV, s),
    })),
  };
}
