import { normalQuantile } from "../chance/normalQuantile.ts";
import { nextNormal, openStream, STREAM_WORDS, wordsFor } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { FIGURE_IDLE_SHARE } from "./memberFigures.ts";
import { INPUT_WANTED_W, type MemberInputs } from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";

/** Nodes of the table that turns a normal draw into a factor, from −5 to 5. */
const FACTOR_NODES = 161;
const FARTHEST = 5;
/** Points at which the mean under the normal law is taken when a share is brought back to its plan. */
const QUADRATURE = 200;

/** How operators differ from plan, ready to be drawn. One of these for each thread: it holds the last member's draws. */
export interface PreparedOperators {
  /** Log-normal factor of mean 1 at even steps of the normal value. */
  readonly factor: Float64Array;
  /** Weights of the three draws in the normal value: event, day, hour; their squares add up to 1. */
  readonly eventWeight: number;
  readonly dayWeight: number;
  readonly hourWeight: number;
  readonly days: number;
  readonly hours: number;
  readonly hourOfStep: Int32Array;
  /** Local day in which each hour begins. */
  readonly dayOfHour: Int32Array;
  readonly stations: readonly PreparedStationChance[];
  /** Number of interlock groups, and for each station its group. */
  readonly groups: number;
  readonly groupOfStation: Int32Array;
  readonly state: Uint32Array;
  readonly dayNormal: Float64Array;
  readonly hourFactor: Float64Array;
  readonly sending: Float64Array;
  readonly groupSending: Float64Array;
}

interface PreparedStationChance {
  /** Words of the station's own stream: taking another station away moves none of its draws. */
  readonly words: Int32Array;
  readonly sendingExtraW: number;
  readonly staffedShare: Float64Array;
  /**
   * Sending while staffed, one value per step, raised so that after the cap at the whole of the clock its mean is the
   * plan's.
   */
  readonly raisedShare: Float64Array;
}

/**
 * Prepares how much the operators transmit. Keenness differs from event to event and from day to day for everybody
 * alike, and from hour to hour for each station. The factor on the planned share is log-normal with mean 1 and the stated
 * spreads, capped where a station would send all the time; what the cap takes is given back, so that the mean over members is what the plan says.
 * The log-normal form is common practice for rates that cannot fall below nothing, no source.
 */
export function prepareOperators(prepared: Prepared, words: Int32Array): PreparedOperators {
  const { grid, loads, scenario } = prepared;
  const { betweenEventsShare, betweenDaysShare, byHourShare } = scenario.operators;
  // Spreads multiply, so their logarithms' variances add.
  const logVariance = (spread: number) => Math.log(1 + spread * spread);
  const parts = [betweenEventsShare, betweenDaysShare, byHourShare].map(logVariance);
  const total = parts.reduce((sum, part) => sum + part, 0);
  const sigma = Math.sqrt(total);
  const weight = (part: number) => (total > 0 ? toGrid(Math.sqrt(part / total)) : 0);
  const factor = new Float64Array(FACTOR_NODES).map((_, k) => {
    const z = -FARTHEST + (2 * FARTHEST * k) / (FACTOR_NODES - 1);
    return toGrid(Math.exp(sigma * z - total / 2));
  });
  const firstHour = Math.floor(grid.localMinute[0]! / 60);
  const hourOfStep = Int32Array.from(
    grid.middleMs,
    (middleMs) => firstHour + Math.floor((middleMs - grid.startMs) / 3_600_000),
  );
  const names = scenario.stations.map((station, s) => station.interlock ?? `/${s}`);
  const groupNames = [...new Set(names)];
  const hours = (hourOfStep.at(-1) ?? 0) + 1;
  return {
    factor,
    eventWeight: weight(parts[0]!),
    dayWeight: weight(parts[1]!),
    hourWeight: weight(parts[2]!),
    days: grid.dates.length,
    hours,
    hourOfStep,
    dayOfHour: Int32Array.from({ length: hours }, (_, hour) => grid.localDay[Math.max(0, hourOfStep.indexOf(hour))]!),
    stations: loads.stations.map((station) => ({
      words: wordsFor(words, station.id),
      sendingExtraW: station.sendingExtraW,
      staffedShare: station.staffedShare,
      raisedShare: raisedShares(station.sendingShare, station.staffedShare, factor),
    })),
    groups: groupNames.length,
    groupOfStation: Int32Array.from(names, (name) => groupNames.indexOf(name)),
    state: new Uint32Array(STREAM_WORDS),
    dayNormal: new Float64Array(grid.dates.length),
    hourFactor: new Float64Array(hours * loads.stations.length),
    sending: new Float64Array(loads.stations.length),
    groupSending: new Float64Array(groupNames.length),
  };
}

/** Planned sending while staffed, raised by what the cap at the whole of the clock would take from its mean. */
function raisedShares(sending: Float64Array, staffed: Float64Array, factor: Float64Array): Float64Array {
  const known = new Map<number, number>();
  return sending.map((share, i) => {
    const planned = staffed[i]! > 0 ? Math.min(1, share / staffed[i]!) : 0;
    const raised = known.get(planned) ?? toGrid(raisedShare(planned, factor));
    known.set(planned, raised);
    return raised;
  });
}

function raisedShare(planned: number, factor: Float64Array): number {
  if (planned <= 0) return 0;
  const points = Array.from({ length: QUADRATURE }, (_, k) => factorAt(factor, normalQuantile((k + 0.5) / QUADRATURE)));
  const meanOf = (raised: number) => points.reduce((sum, each) => sum + Math.min(1, raised * each), 0) / QUADRATURE;
  // A share near the whole of the clock cannot keep both its mean and a spread: the cap then has the last word.
  if (meanOf(1000) <= planned) return 1000;
  let low = 0;
  let high = 1000;
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (meanOf(middle) < planned) low = middle;
    else high = middle;
  }
  return high;
}

/** @memberLoop */
function factorAt(factor: Float64Array, normal: number): number {
  const at = Math.max(
    0,
    Math.min(FACTOR_NODES - 1.000001, ((normal + FARTHEST) * (FACTOR_NODES - 1)) / (2 * FARTHEST)),
  );
  const k = Math.floor(at);
  return factor[k]! + (factor[k + 1]! - factor[k]!) * (at - k);
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
  const { state, dayNormal, hourFactor, stations, sending, groupSending, groupOfStation } = operators;
  const { loads, converterShare, grid } = prepared;
  const { rows, stride } = inputs;
  const idleShare = inputs.figures[FIGURE_IDLE_SHARE]!;
  const perConverter = 1 / converterShare;
  openStream(state, words, member, "activity");
  const eventNormal = nextNormal(state);
  for (let day = 0; day < operators.days; day++) dayNormal[day] = nextNormal(state);
  const { hours } = operators;
  for (let s = 0; s < stations.length; s++) {
    openStream(state, stations[s]!.words, member, "activity");
    for (let hour = 0; hour < hours; hour++) {
      const common = operators.eventWeight * eventNormal + operators.dayWeight * dayNormal[operators.dayOfHour[hour]!]!;
      const normal = common + operators.hourWeight * nextNormal(state);
      hourFactor[s * hours + hour] = factorAt(operators.factor, normal);
    }
  }
  for (let i = 0; i < grid.steps; i++) {
    let wantedW = loads.quietW[i]! * idleShare;
    const hour = operators.hourOfStep[i]!;
    for (let g = 0; g < operators.groups; g++) groupSending[g] = 0;
    for (let s = 0; s < stations.length; s++) {
      const station = stations[s]!;
      const staffed = station.staffedShare[i]!;
      sending[s] = 0;
      if (staffed <= 0) continue;
      sending[s] = staffed * Math.min(1, station.raisedShare[i]! * hourFactor[s * hours + hour]!);
      groupSending[groupOfStation[s]!]! += sending[s]!;
    }
    for (let s = 0; s < stations.length; s++) {
      const inGroup = groupSending[groupOfStation[s]!]!;
      wantedW += (inGroup > 1 ? sending[s]! / inGroup : sending[s]!) * stations[s]!.sendingExtraW;
    }
    rows[i * stride + INPUT_WANTED_W] = wantedW * perConverter;
  }
}
