import { quietSpans, type Span } from "../../ruler/quietSpans.ts";
import type { Ruler } from "../../ruler/ruler.ts";
import { rulerOf } from "../../ruler/rulerOf.ts";
import type { DayFigures } from "../../run/dayFigures.ts";
import { type Ledger, ledger } from "../../run/ledger.ts";
import type { Trace } from "../../run/trace.ts";
import type { Verdict } from "../../run/verdict.ts";
import { nightSpans } from "../../sky/nightSpans.ts";
import { type LoadParts, loadParts } from "./loadParts.ts";
import { runColumns, type StepColumn } from "./runColumns.ts";

/** A part of what comes in; one value per step, W at the bank's terminals. */
export interface IncomingPart {
  readonly id: string;
  readonly name: string;
  readonly powerW: Float64Array;
  /** What shade took from it; null where nothing shades, as with a charger. */
  readonly shadeLossW: Float64Array | null;
}

/** Volts of a station that drops out on its own transmit peaks; 0 while nobody is at it or it is cut off. */
export interface RadioVolts {
  readonly name: string;
  readonly minimumV: number;
  readonly volts: Float64Array;
}

/** A local day in figures, with the charge as the sun goes and comes; null when it does neither. */
export interface DayRow extends DayFigures {
  readonly duskShare: number | null;
  readonly dawnShare: number | null;
}

/** Everything that the page shows of one run: plain numbers, so that a worker can hand it over. */
export interface RunPicture extends LoadParts {
  readonly name: string;
  readonly placeName: string;
  readonly ruler: Ruler;
  /** From sunset to sunrise, over the whole ruler and not only the event. */
  readonly nights: readonly Span[];
  /** Hours in which no generator may run. */
  readonly quiet: readonly Span[];
  readonly startMs: number;
  readonly stepMs: number;
  readonly steps: number;
  readonly fullAh: number;
  readonly reserveShare: number;
  /** Charge at each step's start and at the end. */
  readonly chargeShare: Float64Array;
  readonly incoming: readonly IncomingPart[];
  readonly spilledW: Float64Array;
  /** What the loads did not get. */
  readonly unservedW: Float64Array;
  /** Every figure of every step, for the file. */
  readonly columns: readonly StepColumn[];
  readonly radios: readonly RadioVolts[];
  readonly days: readonly DayRow[];
  readonly verdict: Verdict;
  readonly ledger: Ledger;
  readonly remarks: readonly string[];
}

/** Takes from a trace what the page shows. */
export function runPicture(trace: Trace): RunPicture {
  const { prepared, record, chargeShare } = trace;
  const { grid, scenario, bank } = prepared;
  const { steps } = grid;
  const ruler = rulerOf(grid.dates, grid.zone);
  const parts = loadParts(trace);
  const { latitudeDeg, longitudeDeg } = scenario.place;
  const turnedDeg = longitudeDeg > 180 ? longitudeDeg - 360 : longitudeDeg;
  return {
    name: scenario.name,
    placeName: scenario.place.name,
    ruler,
    nights: nightSpans(latitudeDeg, turnedDeg, ruler.startMs, ruler.endMs),
    quiet: quietSpans(prepared),
    startMs: grid.startMs,
    stepMs: grid.stepMs,
    steps,
    fullAh: bank.fullAh,
    reserveShare: bank.reserveAh / bank.fullAh,
    chargeShare: chargeShare.slice(),
    incoming: [
      ...scenario.panels.map((group, g) => ({
        id: group.id,
        name: group.name,
        powerW: record.groupW.slice(g * steps, (g + 1) * steps),
        shadeLossW: trace.details[g]!.shadeLossW.slice(),
      })),
      ...scenario.sources.map((source, s) => ({
        id: source.id,
        name: source.name,
        powerW: record.sourceW.slice(s * steps, (s + 1) * steps),
        shadeLossW: null,
      })),
    ],
    spilledW: record.spilledW.slice(),
    ...parts,
    columns: runColumns(trace, parts),
    unservedW: record.unservedW.slice(),
    radios: trace.verdict.radios.flatMap((radio, s) =>
      radio.dropoutH > 0
        ? [
            {
              name: radio.name,
              minimumV: radio.minimumV,
              volts: record.radioV.slice(s * steps, (s + 1) * steps),
            },
          ]
        : [],
    ),
    days: trace.days.map((day) => ({
      ...day,
      duskShare: day.sunsetMs === null ? null : shareAt(trace, day.sunsetMs),
      dawnShare: day.sunriseMs === null ? null : shareAt(trace, day.sunriseMs),
    })),
    verdict: trace.verdict,
    ledger: ledger(trace),
    remarks: prepared.remarks,
  };
}

/** Charge at an instant between two steps. */
function shareAt({ prepared: { grid }, chargeShare }: Trace, ms: number): number {
  const at = (ms - grid.startMs) / grid.stepMs;
  const before = Math.min(grid.steps - 1, Math.max(0, Math.floor(at)));
  return chargeShare[before]! + (chargeShare[before + 1]! - chargeShare[before]!) * (at - before);
}
