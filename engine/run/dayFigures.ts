import type { RunResult } from "./runResult.ts";

/** One local day of the event in figures; energies in Wh at the bank's terminals, charges as shares of full. */
export interface DayFigures {
  readonly date: string;
  /** Sunrise and sunset within the event and this day; null when there is none. */
  readonly sunriseMs: number | null;
  readonly sunsetMs: number | null;
  readonly hours: number;
  readonly solarWh: number;
  /** Solar energy by panel group. */
  readonly groupWh: readonly number[];
  readonly spilledWh: number;
  readonly shadeLossWh: number;
  readonly sourceWh: number;
  readonly demandWh: number;
  readonly unservedWh: number;
  readonly startShare: number;
  readonly lowestShare: number;
  readonly highestShare: number;
  readonly endShare: number;
}

/** Sums a run up by local day; the first and last are as short as the event makes them. */
export function dayFigures({ prepared, record, details, chargeShare }: RunResult): DayFigures[] {
  const { grid, nights } = prepared;
  const { steps, stepH } = grid;
  return grid.dates.flatMap((date, day): DayFigures[] => {
    const first = grid.localDay.indexOf(day);
    if (first < 0) return [];
    const last = grid.localDay.lastIndexOf(day);
    const sumWh = (values: Float64Array, offset = 0) => {
      let sum = 0;
      for (let i = first; i <= last; i++) sum += values[offset + i]!;
      return sum * stepH;
    };
    const fromMs = grid.startMs + first * grid.stepMs;
    const toMs = grid.startMs + (last + 1) * grid.stepMs;
    const within = (ms: number | undefined) => (ms !== undefined && ms > fromMs && ms < toMs ? ms : null);
    const charges = chargeShare.subarray(first, last + 2);
    return [
      {
        date,
        sunriseMs: within(nights.map((night) => night.endMs).find((ms) => within(ms) !== null)),
        sunsetMs: within(nights.map((night) => night.startMs).find((ms) => within(ms) !== null)),
        hours: (last - first + 1) * stepH,
        solarWh: sumWh(record.solarW),
        groupWh: prepared.groups.map((_, g) => sumWh(record.groupW, g * steps)),
        spilledWh: sumWh(record.spilledW),
        shadeLossWh: details.reduce((sum, detail) => sum + sumWh(detail.shadeLossW), 0),
        sourceWh: prepared.sources.reduce((sum, _, s) => sum + sumWh(record.sourceW, s * steps), 0),
        demandWh: sumWh(record.demandW),
        unservedWh: sumWh(record.unservedW),
        startShare: charges[0]!,
        lowestShare: charges.reduce((least, share) => Math.min(least, share)),
        highestShare: charges.reduce((most, share) => Math.max(most, share)),
        endShare: charges.at(-1)!,
      },
    ];
  });
}
