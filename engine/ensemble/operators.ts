import { nextNormal, nextWord, openStream, STREAM_WORDS, wordsFor } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { FIGURE_IDLE_SHARE } from "../run/memberFigures.ts";
import type { MemberInputs } from "../run/memberInputs.ts";
import type { Prepared } from "../run/prepare.ts";
import { keennessAt, keennessTable } from "./keenness.ts";
import { raisedShares } from "./raisedShares.ts";

/** How operators differ from plan, ready to be drawn. One of these for each thread: it holds the last member's draws. */
export interface PreparedOperators {
  /** From the normal value to a factor on the planned share, for `keennessAt`. */
  readonly keenness: Float64Array;
  /** Weights of the three draws in the normal value: event, day, hour; their squares add up to 1. */
  readonly eventWeight: number;
  readonly dayWeight: number;
  readonly hourWeight: number;
  readonly days: number;
  readonly hours: number;
  /** Where each hour's steps begin; one more value than hours. */
  readonly firstStepOfHour: Int32Array;
  /** Local day in which each hour begins. */
  readonly dayOfHour: Int32Array;
  readonly stations: readonly PreparedStationChance[];
  readonly state: Uint32Array;
  readonly dayNormal: Float64Array;
  readonly hourFactor: Float64Array;
  /** What all behind one interlock would send together, one value per step; one array for each interlock that several share. */
  readonly groupSending: readonly Float64Array[];
}

interface PreparedStationChance {
  /** Words of the station's own stream: taking another station away moves none of its draws. */
  readonly words: Int32Array;
  readonly sendingExtraW: number;
  /** Place in `groupSending`; -1 for a station that shares the clock with nobody. */
  readonly group: number;
  readonly staffedShare: Float64Array;
  /** Hours in which anybody is there for some of the time: in the others nothing is sent. */
  readonly staffedHours: Int32Array;
  /**
   * Sending while staffed, one value per step, raised so that after the caps at the whole of the clock its mean is the
   * plan's.
   */
  readonly raisedShare: Float64Array;
}

/**
 * Prepares how much the operators transmit. Keenness differs from event to event and from day to day for everybody
 * alike, and from hour to hour for each station. The factor on the planned share is log-normal with mean 1 and the stated
 * spreads, capped where a station, or all behind one interlock, would send for more than the whole clock; what the caps take is given
 * back, so that the mean over members is what the plan says.
 * The log-normal form is common practice for rates that cannot fall below nothing, no source.
 */
export function prepareOperators(prepared: Prepared, words: Int32Array): PreparedOperators {
  const { grid, loads, scenario } = prepared;
  const { betweenEventsShare, betweenDaysShare, byHourShare } = scenario.operators;
  // Spreads multiply, so their logarithms' variances add.
  const logVariance = (spread: number) => Math.log(1 + spread * spread);
  const parts = [betweenEventsShare, betweenDaysShare, byHourShare].map(logVariance);
  const total = parts.reduce((sum, part) => sum + part, 0);
  const weight = (part: number) => (total > 0 ? toGrid(Math.sqrt(part / total)) : 0);
  const [eventWeight, dayWeight, hourWeight] = parts.map(weight) as [number, number, number];
  const keenness = keennessTable(total);
  const firstHour = Math.floor(grid.startMinute / 60);
  const hourOfStep = Int32Array.from(
    grid.middleMs,
    (middleMs) => firstHour + Math.floor((middleMs - grid.startMs) / 3_600_000),
  );
  const names = scenario.stations.map((station, s) => station.interlock ?? `/${s}`);
  const groupNames = [...new Set(names)];
  const groupOfStation = Int32Array.from(names, (name) => groupNames.indexOf(name));
  const shared = groupNames.filter((name) => names.indexOf(name) !== names.lastIndexOf(name));
  const commonWeight = Math.sqrt(eventWeight * eventWeight + dayWeight * dayWeight);
  const raised = raisedShares(loads.stations, groupOfStation, commonWeight, hourWeight, keenness);
  const hours = (hourOfStep.at(-1) ?? 0) + 1;
  const staffedHours = (staffedShare: Float64Array) =>
    Int32Array.from(new Set(Array.from(hourOfStep).filter((_, i) => staffedShare[i]! > 0)));
  return {
    keenness,
    eventWeight,
    dayWeight,
    hourWeight,
    days: grid.dates.length,
    hours,
    firstStepOfHour: Int32Array.from({ length: hours + 1 }, (_, hour) => {
      const first = hourOfStep.findIndex((each) => each >= hour);
      return first < 0 ? grid.steps : first;
    }),
    dayOfHour: Int32Array.from({ length: hours }, (_, hour) => grid.localDay[Math.max(0, hourOfStep.indexOf(hour))]!),
    stations: loads.stations.map((station, s) => ({
      words: wordsFor(words, station.id),
      sendingExtraW: station.sendingExtraW,
      group: shared.indexOf(names[s]!),
      staffedShare: station.staffedShare,
      staffedHours: staffedHours(station.staffedShare),
      raisedShare: raised[s]!,
    })),
    state: new Uint32Array(STREAM_WORDS),
    dayNormal: new Float64Array(grid.dates.length),
    hourFactor: new Float64Array(hours * loads.stations.length),
    groupSending: shared.map(() => new Float64Array(grid.steps)),
  };
}

/**
 * Draws what one member's operators do and writes what the site then wants. Never below receiving, never above what
 * staffing and interlocks allow: a group in which all would send for more than the whole clock shares it in proportion.
 * @param words from `seedWords`
 * @param inputs the member's inputs; its figures are already drawn, its wanted watts are written here
 * @memberLoop
 */
export function drawOperators(
  prepared: Prepared,
  operators: PreparedOperators,
  words: Int32Array,
  member: number,
  inputs: MemberInputs,
): void {
  const { state, dayNormal, hourFactor, stations } = operators;
  openStream(state, words, member, "activity");
  const eventNormal = nextNormal(state);
  for (let day = 0; day < operators.days; day++) dayNormal[day] = nextNormal(state);
  const { hours } = operators;
  for (let s = 0; s < stations.length; s++) {
    const { words: own, staffedHours } = stations[s]!;
    openStream(state, own, member, "activity");
    let hour = 0;
    for (let k = 0; k < staffedHours.length; k++) {
      const staffed = staffedHours[k]!;
      for (; hour < staffed; hour++) nextWord(state); // an hour without anybody has its draw, which nobody looks at
      hour++;
      const day = operators.dayOfHour[staffed]!;
      const common = operators.eventWeight * eventNormal + operators.dayWeight * dayNormal[day]!;
      const normal = common + operators.hourWeight * nextNormal(state);
      hourFactor[s * hours + staffed] = keennessAt(operators.keenness, normal);
    }
  }
  writeWanted(prepared, operators, inputs);
}

/**
 * Writes what the site wants in each step, from how keen the stations are in each hour (`operators.hourFactor`). One station after
 * the other and hour by hour: what holds for the hour stays at hand.
 * @memberLoop
 */
export function writeWanted(prepared: Prepared, operators: PreparedOperators, inputs: MemberInputs): void {
  const { hours, hourFactor, firstStepOfHour, stations, groupSending } = operators;
  const { converterShare, grid } = prepared;
  const { quietW } = prepared.loads;
  const { wantedW } = inputs;
  const { steps } = grid;
  const idleShare = inputs.figures[FIGURE_IDLE_SHARE]!;
  for (let i = 0; i < steps; i++) wantedW[i] = quietW[i]! * idleShare;
  for (let g = 0; g < groupSending.length; g++) {
    const together = groupSending[g]!;
    for (let i = 0; i < steps; i++) together[i] = 0;
  }
  for (let s = 0; s < stations.length; s++) {
    const { group, staffedHours, staffedShare, raisedShare } = stations[s]!;
    if (group < 0) continue;
    const together = groupSending[group]!;
    for (let k = 0; k < staffedHours.length; k++) {
      const hour = staffedHours[k]!;
      const factor = hourFactor[s * hours + hour]!;
      const end = firstStepOfHour[hour + 1]!;
      for (let i = firstStepOfHour[hour]!; i < end; i++) {
        together[i]! += staffedShare[i]! * Math.min(1, raisedShare[i]! * factor);
      }
    }
  }
  for (let s = 0; s < stations.length; s++) {
    const { group, staffedHours, staffedShare, raisedShare, sendingExtraW } = stations[s]!;
    const together = group < 0 ? null : groupSending[group]!;
    for (let k = 0; k < staffedHours.length; k++) {
      const hour = staffedHours[k]!;
      const factor = hourFactor[s * hours + hour]!;
      const end = firstStepOfHour[hour + 1]!;
      for (let i = firstStepOfHour[hour]!; i < end; i++) {
        let sending = staffedShare[i]! * Math.min(1, raisedShare[i]! * factor);
        if (together !== null && together[i]! > 1) sending /= together[i]!;
        wantedW[i]! += sending * sendingExtraW;
      }
    }
  }
  if (converterShare === 1) return;
  const perConverter = 1 / converterShare;
  for (let i = 0; i < steps; i++) wantedW[i]! *= perConverter;
}
