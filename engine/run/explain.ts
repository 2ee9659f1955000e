import { wrapLongitudeDeg } from "../angle.ts";
import { chargingOhmAt, internalOhmAt } from "../bank/bankOhm.ts";
import { chargingV, openCircuitV, peukertFactorAt } from "../bank/bankVoltage.ts";
import type { DeviceLoad } from "../load/deviceLoad.ts";
import { drawnW } from "../scenario/draw.ts";
import { solarHour } from "../sky/solarDay.ts";
import { type ExplainedNumber, explained as n } from "./explained.ts";
import { explainGroup } from "./explainGroup.ts";
import { localMoment } from "./localClock.ts";
import { INPUT_PEAK_W } from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";
import { turbidityOf } from "./prepareSky.ts";
import type { RunResult } from "./runResult.ts";

export type { ExplainedNumber } from "./explained.ts";

export interface ExplainedPart {
  readonly title: string;
  readonly numbers: readonly ExplainedNumber[];
}

/**
 * Lays open one step of a trace: sun, clear sky, what arrives on each panel group before and after shade, cell temperature, controller,
 * loads, bank. Each number says how it comes from those above it, so that a doubter can follow with a calculator.
 * @param trace as `trace` gives it
 * @param ms an instant within the event, milliseconds since 1970 UTC; one outside it is taken as the first or the last step
 * @returns parts in the order of the arithmetic, each with its numbers: name, value, unit, and how it comes about
 * @throws nothing for any instant
 * @see docs/model.md for each equation with its source
 */
export function explain(trace: RunResult, ms: number): ExplainedPart[] {
  const { grid, scenario } = trace.prepared;
  const i = Math.min(grid.steps - 1, Math.max(0, Math.floor((ms - grid.startMs) / grid.stepMs)));
  const panels = scenario.panels.map((panel, g) => ({
    title: `Panels: ${panel.name}, ${panel.count} × ${panel.module.ratedW} W`,
    numbers: explainGroup(trace, g, i),
  }));
  return [sunPart(trace, i), skyPart(trace, i), ...panels, loadsPart(trace, i), bankPart(trace, i)];
}

function sunPart({ prepared }: RunResult, i: number): ExplainedPart {
  const { grid, sun, scenario } = prepared;
  const from = localMoment(grid, grid.startMs + i * grid.stepMs);
  const to = localMoment(grid, grid.startMs + (i + 1) * grid.stepMs);
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  return {
    title: `Step ${i + 1} of ${grid.steps}: ${from.words} to ${to.clock}, the sun taken in the middle`,
    numbers: [
      n("sun azimuth", sun.azimuthDeg[i]!, "°", "clockwise from true north"),
      n("sun elevation", sun.elevationDeg[i]!, "°", "apparent: refraction included; at or below 0 there is no light"),
      n("solar time", solarHour(grid.middleMs[i]!, longitudeDeg), "h"),
    ],
  };
}

function skyPart({ prepared }: RunResult, i: number): ExplainedPart {
  const { clear, grid, light, scenario } = prepared;
  const sinElevation = clear.sinElevation[i]!;
  return {
    title: "Sky",
    numbers: [
      n("above the air", clear.extraterrestrialWm2[i]!, "W/m²", "1361 × distance factor of the day (Spencer)"),
      n(
        "clear sky, level",
        clear.ghiWm2[i]!,
        "W/m²",
        `Ineichen–Perez, Linke turbidity ${turbidityOf(scenario, grid).toFixed(2)}, ${scenario.place.elevationM} m`,
      ),
      n("clear beam", clear.dniWm2[i]!, "W/m²", "Ineichen–Perez"),
      n("this sky, level", light.ghiWm2[i]!, "W/m²", "by the day's weather"),
      n("clear-sky index", clear.ghiWm2[i]! > 0 ? light.ghiWm2[i]! / clear.ghiWm2[i]! : 0, "", "this sky ÷ clear sky"),
      n("beam", light.dniWm2[i]!, "W/m²", "split off by Ridley, Boland and Lauret, or as the weather file has it"),
      n(
        "sky light, level",
        light.dhiWm2[i]!,
        "W/m²",
        `this sky, level − beam × ${figure(sinElevation)}, the sine of the sun's elevation`,
      ),
      n("air", prepared.airTempC[i]!, "°C"),
      n("wind", prepared.windMs[i]!, "m/s"),
    ],
  };
}

function loadsPart(trace: RunResult, i: number): ExplainedPart {
  const { prepared, record, servedShare } = trace;
  const { grid, bank, loads, inputs } = prepared;
  const { steps } = grid;
  const packOhm = internalOhmAt(bank, record.storedAh[i]!, i);
  const stations = loads.stations.flatMap((station, s) => [
    n(`${station.name}: staffed`, station.staffedShare[i]!, "", "share of the step"),
    n(`${station.name}: sending`, station.sendingShare[i]!, "", "share of the step"),
    n(
      `${station.name}: peak of the site`,
      inputs.rows[i * inputs.stride + INPUT_PEAK_W + s]!,
      "W",
      "all that may send together with it at their peaks, at the bank's terminals; 0 while nobody is there",
    ),
    n(`${station.name}: volts on a peak`, record.radioV[s * steps + i]!, "V", peakVoltsWords(prepared, s, packOhm)),
  ]);
  return {
    title: "Loads",
    numbers: [
      ...loads.devices.map((device) =>
        n(device.name, device.alwaysW[i]! + device.usedW[i]!, "W", drawOf(trace, device, i)),
      ),
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
  };
}

function bankPart({ prepared, record, chargeShare }: RunResult, i: number): ExplainedPart {
  const { grid, bank } = prepared;
  const { steps } = grid;
  const before = record.storedAh[i]!;
  const isCharging = record.bankW[i]! > 0;
  const minutes = grid.stepMs / 60_000;
  const ohm = isCharging ? chargingOhmAt(bank, before, i) : internalOhmAt(bank, before, i);
  const amps = record.bankA[i]!;
  const { polarisationA } = bank;
  const polarisationV = bank.polarisationV * bank.chargingCold[i]!;
  const addedV = isCharging ? chargingV(amps, ohm, polarisationV, polarisationA) : amps * ohm;
  const halfwayV = record.bankV[i]! - addedV;
  return {
    title: "Bank",
    numbers: [
      n("charge before", before, "Ah", `${(100 * chargeShare[i]!).toFixed(2)} % of ${bank.fullAh.toFixed(1)} Ah`),
      n("open-circuit voltage before", openCircuitV(bank, before), "V", "from the curve"),
      n("temperature", bank.tempC[i]!, "°C"),
      n("out of reach in this cold", bank.floorAh[i]!, "Ah"),
      n("most charging current allowed", bank.maxChargeA[i]!, "A"),
      n("most current out", bank.maxDischargeAt[i]!, "A"),
      n(
        "resistance",
        ohm,
        "Ω",
        `${figure(bank.fixedOhm)} + cells at this charge × ${figure((isCharging ? bank.chargingCold : bank.internalCold)[i]!)} in this cold, ${isCharging ? "charging" : "drawing"}`,
      ),
      n("solar offered", record.solarW[i]!, "W", "sum of the panel groups"),
      n("solar spilled", record.spilledW[i]!, "W"),
      ...prepared.sources.map((source, s) => n(source.name, record.sourceW[s * steps + i]!, "W")),
      n("served", record.servedW[i]!, "W", "wanted − unserved"),
      n("power", record.bankW[i]!, "W", "solar offered − solar spilled + sources − served; positive charges"),
      n(
        "open-circuit voltage halfway",
        halfwayV,
        "V",
        bank.hasOwnCurve
          ? "mean of your own curve over the charge that the step moves"
          : "from the curve, at the charge halfway through the step",
      ),
      n(
        "voltage",
        record.bankV[i]!,
        "V",
        isCharging && polarisationV > 0
          ? `open-circuit voltage halfway + current × resistance + ${figure(polarisationV)} V, of which under ${figure(polarisationA)} A only current ÷ ${figure(polarisationA)} A`
          : "open-circuit voltage halfway + current × resistance",
      ),
      n("current", record.bankA[i]!, "A", "power ÷ voltage"),
      n(
        "disconnect closed",
        record.connected[i]!,
        "",
        `opens below ${bank.disconnectV} V, closes at ${bank.reconnectV} V`,
      ),
      ...(isCharging || !bank.hasPeukert
        ? []
        : [n("Peukert factor", peukertFactorAt(bank, -record.bankA[i]!), "", "from the exponent, 1 at least")]),
      n(
        "charge after",
        record.storedAh[i + 1]!,
        "Ah",
        `charge before + current × ${minutes} ÷ 60 h${isCharging ? ` × ${bank.coulombicShare}, full at most` : bank.hasPeukert ? " × Peukert factor" : ""}`,
      ),
    ],
  };
}

const figure = (value: number) => String(Number(value.toPrecision(5)));

/** How a device's draw comes about: gear by its use, a station's devices by who is there and who sends. */
function drawOf({ prepared }: RunResult, device: DeviceLoad, i: number): string {
  const { scenario, loads } = prepared;
  const thing = scenario.gear.find(({ id }) => id === device.id); // no id of gear has the slash of a station's
  if (thing !== undefined) {
    const idleW = figure(drawnW(thing.idle));
    const workingW = figure(drawnW(thing.working));
    const extraW = (drawnW(thing.working) - drawnW(thing.idle)) * thing.count * thing.use.share;
    const atWork = thing.use.when === "always" ? 1 : extraW === 0 ? 0 : device.usedW[i]! / extraW;
    return `${thing.count} × (${idleW} W + ${figure(atWork)} at work × ${thing.use.share} × (${workingW} − ${idleW}) W)`;
  }
  const station = loads.stations.find(({ devices }) => devices.includes(device));
  if (station === undefined) return "what its thermostat asks of it in this cold";
  if (station.sending === device) {
    const share = station.sendingShare[i]!;
    return share > 0 ? `sending × ${figure(device.usedW[i]! / share)} W above receiving, mean of its modes` : "";
  }
  return "";
}

/** How the volts at a radio come about, with the figures that are fixed. */
function peakVoltsWords({ converterV, mainFeedOhm, feedOhm, loads }: Prepared, s: number, packOhm: number): string {
  const lead = `${figure(loads.stations[s]!.peakA)} A × ${figure(feedOhm[s]!)} Ω of its feed`;
  if (converterV > 0) return `${converterV} V of the converter − ${lead}`;
  const pack = `E open-circuit voltage before, R ${figure(packOhm)} Ω, I = 2 P ÷ (E + √(E² − 4 R P)), P = peak of the site − charging`;
  if (mainFeedOhm === 0) return `E − R × I − ${lead}; ${pack}`;
  const main = `V = E − R × I, M ${figure(mainFeedOhm)} Ω of the main feed, J = 2 Q ÷ (V + √(V² − 4 M Q)), Q = peak of the site`;
  return `E − R × I − M × J − ${lead}; ${pack}; ${main}`;
}
