import type { Trace } from "../../run/trace.ts";

/** What the loads got in three parts, W at each step. */
export interface LoadParts {
  readonly alwaysW: Float64Array;
  readonly usedW: Float64Array;
  readonly sendingW: Float64Array;
}

/** Splits what the loads got: drawn anyway, drawn because somebody is there, drawn by sending. The sum is `servedW`. */
export function loadParts({ prepared, record }: Trace): LoadParts {
  const { scenario, loads, converterShare, controllersW } = prepared;
  const { steps } = prepared.grid;
  const sending = new Set(
    scenario.stations.flatMap((station) => [
      `${station.id}/send`,
      ...station.companions.filter((each) => each.works === "sending").map((each) => `${station.id}/${each.id}`),
    ]),
  );
  const alwaysW = new Float64Array(steps).fill(controllersW);
  const usedW = new Float64Array(steps);
  const sendingW = new Float64Array(steps);
  for (const device of loads.devices) {
    const into = sending.has(device.id) ? sendingW : usedW;
    for (let i = 0; i < steps; i++) {
      alwaysW[i]! += device.alwaysW[i]! / converterShare;
      into[i]! += device.usedW[i]! / converterShare;
    }
  }
  for (let i = 0; i < steps; i++) {
    const demandW = record.demandW[i]!;
    const servedShare = demandW > 0 ? record.servedW[i]! / demandW : 0;
    alwaysW[i]! *= servedShare;
    usedW[i]! *= servedShare;
    sendingW[i]! *= servedShare;
  }
  return { alwaysW, usedW, sendingW };
}
