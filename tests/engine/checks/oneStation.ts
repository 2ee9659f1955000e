import { type LimitLine, type LimitOptions, type LimitsReport, limits } from "../../../engine/checks/index.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { plainInput, traceInput } from "../../truth/run/plainScenario.ts";

export type StationInput = NonNullable<ScenarioInput["stations"]>[number];
export type PanelInput = NonNullable<ScenarioInput["panels"]>[number];

/** A 100 W set at full power, 20 A on 8 AWG: staffed all day unless said otherwise. */
export function stationOf(id: string, parts: Partial<StationInput> = {}): StationInput {
  return {
    id,
    name: `position ${id}`,
    radio: {
      ratedW: 100,
      receive: { drawA: 1, atV: 13.8 },
      fullPower: { drawA: 20, atV: 13.8 },
      bias: { drawA: 3, atV: 13.8 },
    },
    staffed: [{ from: "00:00", to: "24:00" }],
    modes: [{ mode: "fm", share: 1 }],
    transmitW: 100,
    sendingShare: 0.1,
    feed: { cable: { awg: "8", oneWayM: 2.4384, tempC: 25 }, contactsOhm: 0.01 },
    ...parts,
  };
}

/** Two modules of 22 V open and 7 A short circuit, in series before an MPPT controller of 20 A. */
export function panelOf(id: string, parts: Partial<PanelInput> = {}): PanelInput {
  return {
    id,
    name: `panels ${id}`,
    count: 2,
    inSeries: 2,
    module: { ratedW: 120, vmpV: 18.2, impA: 6.6, vocV: 22, iscA: 7, vocTempCoeffPerK: -0.003 },
    mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 },
    at: { eastM: 0, northM: -5, heightM: 0.5 },
    controller: { kind: "mppt", maxChargeA: 20, cable: { awg: "10", oneWayM: 6.096, tempC: 25 } },
    ...parts,
  };
}

/** A bank whose open voltage is the same at any charge, so that volts can be followed by hand. */
export const flatBank = (cellV: number, parts: Partial<ScenarioInput["bank"]> = {}): ScenarioInput["bank"] => ({
  chemistry: "lfp",
  blockAh: 100,
  startShare: 1,
  reserveShare: 0.2,
  temperature: 25,
  internalResistanceOhm: 0.02,
  disconnectV: 0,
  openCircuitCurve: [
    { share: 0, cellV },
    { share: 1, cellV },
  ],
  ...parts,
});

/** The limits of the plain scenario with parts laid over it; hourly steps. */
export function limitsOf(parts: Partial<ScenarioInput>, options?: LimitOptions): LimitsReport {
  const time = { start: "2026-06-12T00:00", end: "2026-06-13T00:00", stepMinutes: 60 as const };
  return limits(traceInput(plainInput({ time, ...parts })), options);
}

/** @throws Error if there is no line of that id */
export function lineOf(report: LimitsReport, id: string): LimitLine {
  const found = report.lines.find((line) => line.id === id);
  if (found === undefined) throw new Error(`no line ${id} among ${report.lines.map((line) => line.id).join(", ")}`);
  return found;
}
