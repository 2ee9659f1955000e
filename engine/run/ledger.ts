import { storedWh } from "../bank/bankVoltage.ts";
import type { RunResult } from "./runResult.ts";

/** One line of the ledger: energy over the whole event, Wh. */
export interface LedgerLine {
  readonly id: string;
  readonly name: string;
  /** Taken whether or not anybody uses it. */
  readonly alwaysWh: number;
  /** Taken because it was used. */
  readonly usedWh: number;
  readonly totalWh: number;
  /** Share of everything that loads took. */
  readonly share: number;
}

/** Where a panel group's light went, Wh over the event; the lines add up from what stands first to what reaches the bank. */
export interface HarvestLine {
  readonly id: string;
  readonly name: string;
  /** What the group would have given at the bank with nothing standing about. */
  readonly unshadedWh: number;
  readonly shadeLossWh: number;
  /** Lost in soiling, mismatch, connections and the rest of the stated chain; in the cable; in the controller; to its current limit. */
  readonly lossesWh: number;
  readonly cableLossWh: number;
  readonly controllerLossWh: number;
  readonly limitedWh: number;
  /** Offered at the bank's terminals. */
  readonly offeredWh: number;
}

/** Where the energy of an event came from and went to, Wh. */
export interface Ledger {
  readonly hours: number;
  /** Largest first. */
  readonly loads: readonly LedgerLine[];
  readonly alwaysWh: number;
  readonly usedWh: number;
  readonly wantedWh: number;
  readonly unservedWh: number;
  readonly harvest: readonly HarvestLine[];
  readonly solarWh: number;
  readonly spilledWh: number;
  readonly sources: readonly {
    readonly id: string;
    readonly name: string;
    readonly wh: number;
    readonly fuelL: number;
  }[];
  readonly bankInWh: number;
  readonly bankOutWh: number;
  readonly bankLossWh: number;
  readonly storedStartWh: number;
  readonly storedEndWh: number;
}

/**
 * Adds up a trace, device by device. Loads that went dark count with what they got; the converter's loss and the
 * controllers' own draw have lines of their own.
 * @param trace as `trace` gives it
 * @returns energies over the whole event in Wh, fuel in litres: loads with the largest first, what became of the light, sources, bank
 * @throws nothing for any trace
 * @see docs/model.md for where each loss is counted
 */
export function ledger(trace: RunResult): Ledger {
  const { prepared, record, details, servedShare, bankLossW } = trace;
  const { grid, loads, groups, scenario, bank } = prepared;
  const { steps, stepH } = grid;
  const served = (values: Float64Array) => {
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += values[i]! * servedShare[i]!;
    return sum * stepH;
  };
  const sumWh = (values: Float64Array, offset = 0) => {
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += values[offset + i]!;
    return sum * stepH;
  };
  const plain = loads.devices.map((device) => ({
    id: device.id,
    name: device.name,
    alwaysWh: served(device.alwaysW),
    usedWh: served(device.usedW),
  }));
  const gearWh = plain.reduce((sum, line) => sum + line.alwaysWh + line.usedWh, 0);
  if (prepared.converterShare < 1) {
    plain.push({
      id: "converter",
      name: "Voltage converter, loss",
      alwaysWh: 0,
      usedWh: gearWh / prepared.converterShare - gearWh,
    });
  }
  const rest = sumWh(record.servedW) - gearWh / prepared.converterShare;
  if (prepared.controllersW > 0)
    plain.push({ id: "controllers", name: "Charge controllers, own draw", alwaysWh: Math.max(0, rest), usedWh: 0 });
  const totalWh = plain.reduce((sum, line) => sum + line.alwaysWh + line.usedWh, 0);
  const lines = plain
    .map((line) => ({
      ...line,
      totalWh: line.alwaysWh + line.usedWh,
      share: totalWh > 0 ? (line.alwaysWh + line.usedWh) / totalWh : 0,
    }))
    .sort((a, b) => b.totalWh - a.totalWh || a.name.localeCompare(b.name, "en"));
  return {
    hours: steps * stepH,
    loads: lines,
    alwaysWh: lines.reduce((sum, line) => sum + line.alwaysWh, 0),
    usedWh: lines.reduce((sum, line) => sum + line.usedWh, 0),
    wantedWh: sumWh(record.demandW),
    unservedWh: sumWh(record.unservedW),
    harvest: groups.map((group, g): HarvestLine => {
      const detail = details[g]!;
      const offeredWh = sumWh(record.groupW, g * steps);
      const shadeLossWh = sumWh(detail.shadeLossW);
      return {
        id: group.id,
        name: scenario.panels[g]!.name,
        unshadedWh: offeredWh + shadeLossWh,
        shadeLossWh,
        lossesWh: sumWh(detail.lossesW),
        cableLossWh: sumWh(detail.cableLossW),
        controllerLossWh: sumWh(detail.controllerLossW),
        limitedWh: sumWh(detail.limitedW),
        offeredWh,
      };
    }),
    solarWh: sumWh(record.solarW),
    spilledWh: sumWh(record.spilledW),
    sources: prepared.sources.map((source, s) => ({
      id: source.id,
      name: source.name,
      wh: sumWh(record.sourceW, s * steps),
      fuelL: sumWh(record.fuelL, s * steps) / stepH,
    })),
    bankInWh: sumWh(record.bankW.map((watts) => Math.max(0, watts))),
    bankOutWh: sumWh(record.bankW.map((watts) => Math.max(0, -watts))),
    bankLossWh: sumWh(bankLossW),
    storedStartWh: storedWh(bank, record.storedAh[0]!),
    storedEndWh: storedWh(bank, record.storedAh[steps]!),
  };
}
