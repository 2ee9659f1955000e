import { wrapLongitudeDeg } from "../angle.ts";
import { HEAT_K_PER_WM2, MEAN_SHARE, OUT_SHARE } from "../array/slots.ts";
import { openCircuitV } from "../bank/bankVoltage.ts";
import { solarHour } from "../sky/solarDay.ts";
import { localMoment } from "./localClock.ts";
import type { RunResult } from "./runResult.ts";

/** One number on the way to the answer, with the arithmetic that gave it. */
export interface ExplainedNumber {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** How it comes from the numbers above it; empty where it is looked up or stated. */
  readonly how: string;
}

export interface ExplainedPart {
  readonly title: string;
  readonly numbers: readonly ExplainedNumber[];
}

const n = (name: string, value: number, unit: string, how = ""): ExplainedNumber => ({ name, value, unit, how });

/**
 * Lays open one step of a trace: sun, clear sky, what arrives on each panel group before and after shade, cell temperature, controller,
 * loads, bank. Each number says how it comes from those above it, so that a doubter can follow with a calculator.
 * @param ms an instant within the event
 */
export function explain(trace: RunResult, ms: number): ExplainedPart[] {
  const { prepared, record, details, chargeShare, servedShare } = trace;
  const { grid, sun, clear, light, scenario, bank, loads } = prepared;
  const { steps } = grid;
  const i = Math.min(steps - 1, Math.max(0, Math.floor((ms - grid.startMs) / grid.stepMs)));
  const from = localMoment(grid, grid.startMs + i * grid.stepMs);
  const to = localMoment(grid, grid.startMs + (i + 1) * grid.stepMs);
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  const sinElevation = clear.sinElevation[i]!;
  const parts: ExplainedPart[] = [
    {
      title: `Step ${i + 1} of ${steps}: ${from.words} to ${to.clock}, the sun taken in the middle`,
      numbers: [
        n("sun azimuth", sun.azimuthDeg[i]!, "°", "clockwise from true north"),
        n("sun elevation", sun.elevationDeg[i]!, "°", "apparent: refraction included; at or below 0 there is no light"),
        n("solar time", solarHour(grid.middleMs[i]!, longitudeDeg), "h"),
      ],
    },
    {
      title: "Sky",
      numbers: [
        n("above the air", clear.extraterrestrialWm2[i]!, "W/m²", "1361 × distance factor of the day (Spencer)"),
        n(
          "clear sky, level",
          clear.ghiWm2[i]!,
          "W/m²",
          `Ineichen–Perez, Linke turbidity ${scenario.weather.linkeTurbidity}, ${scenario.place.elevationM} m`,
        ),
        n("clear beam", clear.dniWm2[i]!, "W/m²"),
        n("this sky, level", light.ghiWm2[i]!, "W/m²", "beam × sin(elevation) + sky light"),
        n(
          "clear-sky index",
          clear.ghiWm2[i]! > 0 ? light.ghiWm2[i]! / clear.ghiWm2[i]! : 0,
          "",
          "this sky ÷ clear sky",
        ),
        n("beam", light.dniWm2[i]!, "W/m²"),
        n(
          "sky light, level",
          light.dhiWm2[i]!,
          "W/m²",
          `${light.ghiWm2[i]!.toFixed(1)} − ${light.dniWm2[i]!.toFixed(1)} × ${sinElevation.toFixed(4)}`,
        ),
        n("air", prepared.airTempC[i]!, "°C"),
        n("wind", prepared.windMs[i]!, "m/s"),
      ],
    },
  ];
  prepared.groups.forEach((group, g) => {
    const detail = details[g]!;
    const panel = scenario.panels[g]!;
    const ratedW = panel.count * panel.module.ratedW;
    const at = i * group.stride;
    const heat = group.perStep[at + HEAT_K_PER_WM2]!;
    const gamma = panel.module.powerTempCoeffPerK;
    parts.push({
      title: `Panels: ${panel.name}, ${panel.count} × ${panel.module.ratedW} W`,
      numbers: [
        n("set out", group.perStep[at + OUT_SHARE]!, "", "share of the step"),
        n(
          "on the plane, no shade",
          detail.planeBeforeWm2[i]!,
          "W/m²",
          `beam and sky light turned onto the panel (${scenario.models.transposition})`,
        ),
        n("on the plane, after shade", detail.planeWm2[i]!, "W/m²"),
        n(
          "beam that gets past",
          group.perStep[at + MEAN_SHARE]!,
          "",
          "mean over the modules; 1 where nothing stands in the way",
        ),
        n("behind the glass", detail.effectiveWm2[i]!, "W/m²", `after incidence loss (${scenario.models.incidence})`),
        n(
          "cells",
          detail.cellTempC[i]!,
          "°C",
          `${prepared.airTempC[i]!.toFixed(1)} + ${detail.planeWm2[i]!.toFixed(1)} × ${heat.toFixed(4)}`,
        ),
        n("sections conducting", detail.sectionsConducting[i]!, `of ${group.sections}`),
        n("panel voltage", detail.mppV[i]!, "V"),
        n(
          "DC power",
          detail.dcW[i]!,
          "W",
          `unshaded it is ${ratedW} × light ÷ 1000 × (1 ${gamma < 0 ? "−" : "+"} ${Math.abs(gamma)} × (cells − 25))`,
        ),
        n("stated losses", detail.lossesW[i]!, "W", `DC × (1 − ${group.keptShare.toFixed(4)})`),
        n("cable", detail.cableLossW[i]!, "W", `current² × ${group.cableOhm.toFixed(4)} Ω`),
        n("controller", detail.controllerLossW[i]!, "W", `efficiency ${group.efficiencyShare}`),
        n("held back by its limit", detail.limitedW[i]!, "W"),
        n("offered to the bank", record.groupW[g * steps + i]!, "W", "DC − losses − cable − controller − held back"),
        n("taken by shade", detail.shadeLossW[i]!, "W", "the same chain without shade, less this"),
      ],
    });
  });
  const stations = loads.stations.flatMap((station, s) => [
    n(`${station.name}: staffed`, station.staffedShare[i]!, "", "share of the step"),
    n(`${station.name}: sending`, station.sendingShare[i]!, "", "share of the step"),
    n(
      `${station.name}: volts on a peak`,
      record.radioV[s * steps + i]!,
      "V",
      `bank on the peak − ${station.peakA.toFixed(1)} A × ${prepared.feedOhm[s]!.toFixed(4)} Ω; 0 while nobody is there`,
    ),
  ]);
  parts.push({
    title: "Loads",
    numbers: [
      ...loads.devices.map((device) => n(device.name, device.alwaysW[i]! + device.usedW[i]!, "W")),
      n("all gear", loads.wantedW[i]!, "W", "sum"),
      ...(prepared.converterShare < 1
        ? [n("through the converter", loads.wantedW[i]! / prepared.converterShare, "W", `÷ ${prepared.converterShare}`)]
        : []),
      n("controllers' own draw", prepared.controllersW, "W"),
      n("wanted", record.demandW[i]!, "W", "sum"),
      n("unserved", record.unservedW[i]!, "W"),
      n("served share of gear", servedShare[i]!, ""),
      ...stations,
    ],
  });
  const before = record.storedAh[i]!;
  const charging = record.bankW[i]! > 0;
  parts.push({
    title: "Bank",
    numbers: [
      n("charge before", before, "Ah", `${(100 * chargeShare[i]!).toFixed(2)} % of ${bank.fullAh.toFixed(1)} Ah`),
      n("open-circuit voltage before", openCircuitV(bank, before), "V", "from the curve"),
      n("temperature", bank.tempC[i]!, "°C"),
      n("out of reach in this cold", bank.floorAh[i]!, "Ah"),
      n("most charging current allowed", bank.maxChargeA[i]!, "A"),
      n("solar offered", record.solarW[i]!, "W"),
      n("solar spilled", record.spilledW[i]!, "W"),
      ...prepared.sources.map((source, s) => n(source.name, record.sourceW[s * steps + i]!, "W")),
      n("power", record.bankW[i]!, "W", "solar − spilled + sources − served; positive charges"),
      n(
        "voltage",
        record.bankV[i]!,
        "V",
        `open-circuit volts halfway ${charging ? "+" : "−"} current × ${(charging ? bank.chargingOhm : bank.internalOhm).toFixed(4)} Ω`,
      ),
      n("current", record.bankA[i]!, "A", "power ÷ voltage"),
      n(
        "disconnect closed",
        record.connected[i]!,
        "",
        `opens below ${bank.disconnectV} V, closes at ${bank.reconnectV} V`,
      ),
      n(
        "charge after",
        record.storedAh[i + 1]!,
        "Ah",
        charging
          ? `before + current × ${bank.coulombicShare} × ${grid.stepH.toFixed(4)} h`
          : `before − current × Peukert factor × ${grid.stepH.toFixed(4)} h`,
      ),
    ],
  });
  return parts;
}
