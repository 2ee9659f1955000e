import { type LocalMoment, localMoment } from "./localClock.ts";
import type { RunResult } from "./runResult.ts";
import { type VoltsLost, voltsLostAt, voltsLostWords } from "./voltsLost.ts";

/** The answer, in figures and in words. */
export interface Verdict {
  /** Whether the charge never falls below the reserve and no load ever goes unserved. */
  readonly holds: boolean;
  /** Whether any load ever goes unserved. */
  readonly dark: boolean;
  readonly lowestShare: number;
  readonly lowestAh: number;
  readonly lowestMs: number;
  readonly lowestAt: LocalMoment;
  readonly endShare: number;
  /** Charge above the reserve at the lowest, share of full; negative below it. */
  readonly marginShare: number;
  readonly belowReserveFromMs: number | null;
  readonly belowReserveH: number;
  readonly darkFromMs: number | null;
  readonly darkH: number;
  readonly unservedWh: number;
  /** Stations whose socket falls below its least voltage on a transmit peak while there is still energy. */
  readonly radios: readonly RadioVerdict[];
  /** The answer as one or more plain sentences. */
  readonly sentences: readonly string[];
}

export interface RadioVerdict {
  readonly id: string;
  readonly name: string;
  readonly minimumV: number;
  /** Lowest volts on a peak while staffed and connected; null if it never is. */
  readonly lowestV: number | null;
  readonly lowestMs: number | null;
  /** Where the volts went at that moment, V; null if there is none. */
  readonly lost: VoltsLost | null;
  /** Staffed hours during which a peak would fall below the minimum. */
  readonly dropoutH: number;
}

/** Smallest shortfall that counts: below it, it is rounding. */
const NOTHING_W = 1e-6;

export function verdictOf(run: RunResult): Verdict {
  const { prepared, record, chargeShare } = run;
  const { grid, bank } = prepared;
  const reserveShare = bank.reserveAh / bank.fullAh;
  let lowest = 0;
  let belowFrom: number | null = null;
  let darkFrom: number | null = null;
  let belowSteps = 0;
  let darkSteps = 0;
  let unservedWh = 0;
  for (let i = 0; i <= grid.steps; i++) {
    if (chargeShare[i]! < chargeShare[lowest]!) lowest = i;
    if (chargeShare[i]! < reserveShare - 1e-12) {
      belowFrom ??= i;
      if (i < grid.steps) belowSteps++;
    }
    if (i < grid.steps && record.unservedW[i]! > NOTHING_W) {
      darkFrom ??= i;
      darkSteps++;
      unservedWh += record.unservedW[i]! * grid.stepH;
    }
  }
  const at = (step: number | null) => (step === null ? null : grid.startMs + step * grid.stepMs);
  const lowestMs = grid.startMs + lowest * grid.stepMs;
  const figures = {
    holds: belowFrom === null && darkFrom === null,
    dark: darkFrom !== null,
    lowestShare: chargeShare[lowest]!,
    lowestAh: record.storedAh[lowest]!,
    lowestMs,
    lowestAt: localMoment(grid, lowestMs),
    endShare: chargeShare[grid.steps]!,
    marginShare: chargeShare[lowest]! - reserveShare,
    belowReserveFromMs: at(belowFrom),
    belowReserveH: belowSteps * grid.stepH,
    darkFromMs: at(darkFrom),
    darkH: darkSteps * grid.stepH,
    unservedWh,
    radios: prepared.loads.stations.map((_, s) => radioVerdict(run, s)),
  };
  return { ...figures, sentences: sentences(figures, run, reserveShare) };
}

function radioVerdict(run: RunResult, s: number): RadioVerdict {
  const { prepared, record } = run;
  const { grid } = prepared;
  const station = prepared.loads.stations[s]!;
  let lowest: number | null = null;
  let dropoutH = 0;
  for (let i = 0; i < grid.steps; i++) {
    if (station.staffedShare[i]! <= 0 || record.connected[i] === 0) continue;
    const volts = record.radioV[s * grid.steps + i]!;
    if (lowest === null || volts < record.radioV[s * grid.steps + lowest]!) lowest = i;
    if (volts < station.minimumV) dropoutH += grid.stepH * station.staffedShare[i]!;
  }
  return {
    id: station.id,
    name: station.name,
    minimumV: station.minimumV,
    lowestV: lowest === null ? null : record.radioV[s * grid.steps + lowest]!,
    lowestMs: lowest === null ? null : grid.startMs + lowest * grid.stepMs,
    lost: lowest === null ? null : voltsLostAt(run, s, lowest),
    dropoutH,
  };
}

const percent = (share: number) => `${Math.round(share * 100)} %`;
const points = (share: number) => {
  const count = Math.round(100 * share);
  return count === 1 ? "1 point" : `${count} points`;
};
const hours = (h: number) => `${h < 10 ? +h.toFixed(1) : Math.round(h)} h`;

function sentences(verdict: Omit<Verdict, "sentences">, { prepared }: RunResult, reserveShare: number): string[] {
  const { grid } = prepared;
  const when = (ms: number) => localMoment(grid, ms).words;
  const end = when(grid.startMs + grid.steps * grid.stepMs);
  const lowest = `${percent(verdict.lowestShare)} (${Math.round(verdict.lowestAh)} Ah) on ${verdict.lowestAt.words}`;
  const said: string[] = [];
  const reserve = `the ${percent(reserveShare)} reserve`;
  if (verdict.belowReserveFromMs !== null) {
    said.push(
      `The bank does not hold: it falls below ${reserve} on ${when(verdict.belowReserveFromMs)} and is lowest at ${lowest}.`,
    );
  } else if (verdict.dark) {
    said.push(
      `The bank does not hold: loads go without although the charge stays above ${reserve}; it is lowest at ${lowest}.`,
    );
  } else {
    said.push(`The bank holds to ${end}: it is lowest at ${lowest}, ${points(verdict.marginShare)} above ${reserve}.`);
  }
  if (verdict.dark) {
    said.push(
      `It goes dark on ${when(verdict.darkFromMs!)}: ${hours(verdict.darkH)} with ${Math.round(verdict.unservedWh)} Wh unserved.`,
    );
  }
  for (const radio of verdict.radios) {
    if (radio.dropoutH <= 0) continue;
    said.push(
      `${radio.name} falls to ${radio.lowestV!.toFixed(1)} V on transmit peaks, below its ${radio.minimumV} V, in ${hours(radio.dropoutH)} of its staffed time: ${voltsLostWords(radio.lost!)}.`,
    );
  }
  return said;
}
