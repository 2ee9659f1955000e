import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { lanesFor, type MemberRoom, stepMember, stepMembers } from "../ensemble/stepMember.ts";
import { type LocalMoment, localMoment } from "../run/localClock.ts";
import { preparedOf } from "../run/prepare.ts";
import { makeRunDetails } from "../run/runDetails.ts";
import { type Trace, traceOf } from "../run/trace.ts";
import { failsFromStep, goesWithout } from "./fails.ts";
import { CHARGE_BINS, makeOddsPart, type OddsPart, POWER_BINS, powerScale } from "./oddsPart.ts";
import type { Counting } from "./stepCount.ts";
import { stepCount } from "./stepCount.ts";
import { inHundred, type Odds, sampleRange, wilson } from "./wilson.ts";

/** Quantiles that bands are drawn at. */
export const BAND_SHARES = [0.05, 0.25, 0.5, 0.75, 0.95] as const;

/** Five quantiles over time, one value per step (charge has one more, for the end). */
export interface Bands {
  readonly p5: Float64Array;
  readonly p25: Float64Array;
  readonly p50: Float64Array;
  readonly p75: Float64Array;
  readonly p95: Float64Array;
}

/** Five quantiles of one number over the members. */
export interface Spread {
  readonly p5: number;
  readonly p25: number;
  readonly p50: number;
  readonly p75: number;
  readonly p95: number;
  readonly mean: number;
}

/** What an ensemble says. */
export interface OddsReport {
  readonly seed: string;
  readonly members: number;
  readonly reserveShare: number;
  /** Never below the reserve and never any load unserved. */
  readonly holds: Odds;
  /** Ever a load unserved; and those of them whose charge keeps its reserve all the same. */
  readonly dark: Odds;
  readonly goesWithout: Odds;
  /** Ever a radio short of volts while connected. */
  readonly dropouts: Odds;
  readonly lowestShare: Spread;
  readonly endShare: Spread;
  readonly darkH: Spread;
  readonly unservedWh: Spread;
  readonly solarWh: Spread;
  readonly spilledWh: Spread;
  readonly demandWh: Spread;
  readonly fuelL: Spread;
  readonly generatorH: Spread;
  readonly dropoutH: Spread;
  /** Mean unserved energy by device, Wh, those that go without first where a shedding order is given. */
  readonly unservedByDevice: readonly { readonly id: string; readonly name: string; readonly meanWh: number }[];
  /** The three hours in which most failing members first fail, and what most of those in it do; null when none fails. */
  readonly failsMostly: {
    readonly from: LocalMoment;
    readonly to: LocalMoment;
    readonly shareOfFailures: number;
    readonly by: "reserve" | "dark";
  } | null;
  /** The member that does worse than nineteen in twenty: replay it as a trace. */
  readonly tailMember: number;
  readonly charge: Bands;
  readonly solarW: Bands;
  readonly loadW: Bands;
  /** Share of members below the reserve, and dark, in each step. */
  readonly belowShare: Float64Array;
  readonly darkShare: Float64Array;
  readonly sentences: readonly string[];
}

/** How an ensemble's members are counted; the same for all parts. */
export function countingOf(ensemble: PreparedEnsemble): Counting {
  const { prepared } = ensemble;
  const { devices } = prepared.loads;
  const scale = powerScale(prepared);
  const rank = (id: string) => {
    const at = prepared.scenario.shedding.indexOf(id.split("/")[0]!);
    return at < 0 ? prepared.scenario.shedding.length : at;
  };
  const order = devices.map((_, d) => d).sort((a, b) => rank(devices[a]!.id) - rank(devices[b]!.id) || a - b);
  return {
    reserveAh: prepared.bank.reserveAh - 1e-9 * prepared.bank.fullAh,
    perFullAh: 1 / prepared.bank.fullAh,
    solarBinsPerW: POWER_BINS / scale.solarW,
    loadBinsPerW: POWER_BINS / scale.loadW,
    sheddingOrder: Int32Array.from(order),
  };
}

/**
 * Runs members `from` to `to` (not included).
 */
export function runMembers(ensemble: PreparedEnsemble, from: number, to: number): OddsPart {
  if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to > from && to <= 1_000_000)) {
    throw new RangeError(`members must be whole numbers with 0 <= from < to <= 1000000, got ${from} and ${to}`);
  }
  const counting = countingOf(ensemble);
  const lanes = lanesFor(ensemble.prepared.grid.steps);
  const room = makeMemberRoom(ensemble, lanes);
  const part = makeOddsPart(ensemble.prepared, ensemble.seed, from, to);
  for (let first = from; first < to; first += lanes) {
    const count = Math.min(lanes, to - first);
    stepMembers(ensemble, first, count, room);
    for (let lane = 0; lane < count; lane++) {
      stepCount(ensemble.prepared, room.run, lane, first + lane, counting, part);
    }
  }
  return part;
}

/** One member of an ensemble as a trace, with every quantity at every step. */
export function replayMember(ensemble: PreparedEnsemble, member: number): Trace {
  const room: MemberRoom = makeMemberRoom(ensemble);
  const { groups, grid } = ensemble.prepared;
  const details = makeRunDetails(groups, room.run.planes, grid.steps);
  stepMember(ensemble, member, room, details);
  const prepared = preparedOf({
    ...ensemble.prepared,
    light: room.light,
    airTempC: room.airTempC,
    inputs: room.inputs,
  });
  return traceOf(prepared, room.run, details);
}

/** The value below which `share` of the sorted values lie, between two neighbours in a straight line. */
export function quantileOf(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const k = Math.floor(at);
  const low = sorted[k]!;
  return k + 1 < sorted.length ? low + (sorted[k + 1]! - low) * (at - k) : low;
}

export function spreadOf(values: Float64Array): Spread {
  const sorted = values.slice().sort();
  const [p5, p25, p50, p75, p95] = BAND_SHARES.map((share) => quantileOf(sorted, share)) as [
    number,
    number,
    number,
    number,
    number,
  ];
  return { p5, p25, p50, p75, p95, mean: values.reduce((sum, value) => sum + value, 0) / values.length };
}

/** Reads bands out of counts, straight within a bin; each lies in the bin of the exact order statistic. */
function bandsOf(counts: Uint32Array, rows: number, bins: number, members: number, top: number): Bands {
  const bands = BAND_SHARES.map(() => new Float64Array(rows));
  for (let row = 0; row < rows; row++) {
    let below = 0;
    let next = 0;
    for (let bin = 0; bin < bins && next < BAND_SHARES.length; bin++) {
      const count = counts[row * bins + bin]!;
      while (next < BAND_SHARES.length && below + count >= BAND_SHARES[next]! * members && count > 0) {
        const within = (BAND_SHARES[next]! * members - below) / count;
        bands[next]![row] = (top * (bin + Math.max(0, Math.min(1, within)))) / bins;
        next++;
      }
      below += count;
    }
  }
  return { p5: bands[0]!, p25: bands[1]!, p50: bands[2]!, p75: bands[3]!, p95: bands[4]! };
}

function failsMostly(ensemble: PreparedEnsemble, part: OddsPart): OddsReport["failsMostly"] {
  const { grid } = ensemble.prepared;
  const { outcomes } = part;
  const failed = Array.from(outcomes.belowFromStep.keys()).filter((m) => failsFromStep(outcomes, m) >= 0);
  if (failed.length === 0) return null;
  const failures = failed.map((m) => failsFromStep(outcomes, m));
  const underFirst = failed.filter((m) => outcomes.belowFromStep[m] === failsFromStep(outcomes, m)).length;
  const perHour = 1 / grid.stepH;
  const { startMinute } = grid;
  const hourOf = (step: number) => Math.floor(step / perHour + (startMinute % 60) / 60);
  const lastHour = hourOf(part.steps);
  let best = 0;
  let bestCount = -1;
  for (let hour = 0; hour <= lastHour; hour++) {
    const count = failures.filter((step) => hourOf(step) >= hour && hourOf(step) < hour + 3).length;
    if (count > bestCount) {
      best = hour;
      bestCount = count;
    }
  }
  const at = (hour: number) => {
    const ms = grid.startMs + hour * 3_600_000 - (startMinute % 60) * 60_000;
    return localMoment(grid, Math.max(grid.startMs, Math.min(grid.startMs + grid.steps * grid.stepMs, ms)));
  };
  return {
    from: at(best),
    to: at(best + 3),
    shareOfFailures: bestCount / failures.length,
    by: 2 * underFirst >= failed.length ? "reserve" : "dark",
  };
}

/** Adds an ensemble up. @param part all its members, merged */
export function oddsReport(ensemble: PreparedEnsemble, part: OddsPart): OddsReport {
  const { prepared } = ensemble;
  const { outcomes } = part;
  const members = part.to - part.from;
  const scale = powerScale(prepared);
  const among = (test: (m: number) => boolean) => {
    let count = 0;
    for (let m = 0; m < members; m++) if (test(m)) count++;
    return wilson(count, members);
  };
  const order = Array.from(outcomes.lowestShare.keys()).sort(
    (a, b) => outcomes.lowestShare[a]! - outcomes.lowestShare[b]! || a - b,
  );
  const share = (counts: Uint32Array) => Float64Array.from(counts, (count) => count / members);
  const report = {
    seed: part.seed,
    members,
    reserveShare: prepared.bank.reserveAh / prepared.bank.fullAh,
    holds: among((m) => failsFromStep(outcomes, m) < 0),
    dark: among((m) => outcomes.darkFromStep[m]! >= 0),
    goesWithout: among((m) => goesWithout(outcomes, m)),
    dropouts: among((m) => outcomes.dropoutH[m]! > 0),
    lowestShare: spreadOf(outcomes.lowestShare),
    endShare: spreadOf(outcomes.endShare),
    darkH: spreadOf(outcomes.darkSteps.map((steps) => steps * prepared.grid.stepH)),
    unservedWh: spreadOf(outcomes.unservedWh),
    solarWh: spreadOf(outcomes.solarWh),
    spilledWh: spreadOf(outcomes.spilledWh),
    demandWh: spreadOf(outcomes.demandWh),
    fuelL: spreadOf(outcomes.fuelL),
    generatorH: spreadOf(outcomes.generatorH),
    dropoutH: spreadOf(outcomes.dropoutH),
    unservedByDevice: prepared.loads.devices.map((device, d) => ({
      id: device.id,
      name: device.name,
      meanWh: part.unservedMilliWh[d]! / 1000 / members,
    })),
    failsMostly: failsMostly(ensemble, part),
    tailMember: part.from + order[Math.floor(0.05 * (members - 1))]!,
    charge: bandsOf(part.chargeCounts, part.steps + 1, CHARGE_BINS, members, 1),
    solarW: bandsOf(part.solarCounts, part.steps, POWER_BINS, members, scale.solarW),
    loadW: bandsOf(part.loadCounts, part.steps, POWER_BINS, members, scale.loadW),
    belowShare: share(part.belowCounts),
    darkShare: share(part.darkCounts),
  };
  return { ...report, sentences: sentences(report, ensemble) };
}

function sentences(report: Omit<OddsReport, "sentences">, { prepared }: PreparedEnsemble): string[] {
  const { grid } = prepared;
  const end = localMoment(grid, grid.startMs + grid.steps * grid.stepMs).words;
  const { holds, dark, dropouts, failsMostly: fails } = report;
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const said = [
    `The bank holds to ${end} in ${inHundred(holds.share)} of 100 skies (${sampleRange(holds, " to ")} by the size of the sample).`,
  ];
  if (fails !== null) {
    const mostly = fails.shareOfFailures >= 0.5 ? "mostly" : "most often";
    const how =
      fails.by === "reserve" ? `it falls below the ${percent(report.reserveShare)} reserve` : "loads go without";
    said.push(`When it fails, ${how} ${mostly} between ${fails.from.words} and ${fails.to.clock}.`);
  }
  said.push(
    `Half of the skies leave between ${percent(report.lowestShare.p25)} and ${percent(report.lowestShare.p75)} at the lowest; one in twenty less than ${percent(report.lowestShare.p5)}.`,
  );
  if (dark.count > 0) said.push(`${inHundred(dark.share)} of 100 ever go dark.`);
  if (report.goesWithout.count > 0)
    said.push(
      `In ${inHundred(report.goesWithout.share)} of 100 something goes without although the charge keeps its reserve: short of current or volts, or too cold.`,
    );
  if (dropouts.count > 0)
    said.push(
      `In ${inHundred(dropouts.share)} of 100 a radio falls short of volts on transmit peaks, which more charge does not cure.`,
    );
  return said;
}
