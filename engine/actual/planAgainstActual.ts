import type { MeterFinding, MeterLog } from "../meter/meterLog.ts";
import { localMoment } from "../run/localClock.ts";
import { SURENESS_SPREAD } from "../run/memberFigures.ts";
import { prepare } from "../run/prepare.ts";
import type { Surroundings } from "../run/surroundings.ts";
import { type Trace, tracePrepared } from "../run/trace.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { clockOfLog } from "./clockOfLog.ts";
import { type Correction, nothingInCommon } from "./fitCorrection.ts";
import { impossibleLog } from "./impossibleLog.ts";
import { type LoggedSteps, loggedSteps } from "./loggedSteps.ts";
import { METER_CHARGE_SHARE, METER_GAIN_SHARE, seriesOfLog } from "./meterSeries.ts";
import { chargeLimits } from "./plannedRows.ts";
import { makeReplay, type ReplayInput } from "./replayActual.ts";
import { type SkyOfDay, skyOfLog } from "./skyOfLog.ts";

/** What the miss is split into, in the order in which it is told; `rest` is what none of them explains. */
export const MISS_PARTS = ["start", "load", "sun", "capacity", "rest"] as const;
export type MissPartName = (typeof MISS_PARTS)[number];

/** One part of the miss. */
export interface MissPart {
  readonly name: MissPartName;
  /** Charge at the end, actual less planned, that this part made: share of full, below 0 where it took some. */
  readonly share: number;
  /** Its standard deviation, share of full. */
  readonly spread: number;
  /** The same in Wh of the planned bank. */
  readonly wh: number;
  readonly spreadWh: number;
  /** Null where the log does not have what it takes; then why. */
  readonly lacking: string | null;
}

/** By how much the charge missed the plan at a moment, and why. */
export interface Miss {
  readonly atMs: number;
  readonly plannedShare: number;
  readonly actualShare: number;
  readonly share: number;
  readonly wh: number;
  readonly parts: readonly MissPart[];
  /** Energy over the steps that the log has: planned and metered, Wh; null where it has none. */
  readonly loadWh: { readonly planned: number; readonly actual: number } | null;
  readonly sunWh: { readonly planned: number; readonly actual: number } | null;
  readonly sentences: readonly string[];
}

/** A plan with what a meter wrote laid over it. */
export interface PlanAgainstActual {
  readonly plan: Trace;
  /** The log on the plan's steps, with load worked out from panels and bank where the log has none. */
  readonly actual: LoggedSteps;
  /** Share of the plan's time that the log covers. */
  readonly coveredShare: number;
  /** How bright each day was, as the panels tell it; empty without panel watts. */
  readonly days: readonly SkyOfDay[];
  readonly findings: readonly MeterFinding[];
  /** At the last moment of which the log has a charge. Null where it never tells the charge; the finding says so. */
  readonly miss: Miss | null;
  /** Where the charge was farthest from the plan: a bank that ends empty or full either way hides at its end what went before. */
  readonly widest: Miss | null;
}

/** How far the plan's own sun and load may be off in the steps that were not logged, as shares of themselves (common practice, no source). */
const UNLOGGED_SUN_SHARE = 0.5;
const UNLOGGED_LOAD_SHARE = 0.25;

/**
 * Lays a log over a plan and splits the miss at its end into start, load, sun and capacity.
 *
 * The bank is run with each of the four as planned or as metered, in all sixteen ways; a part is what turning it from planned to metered changes, averaged
 * over the orders in which the four can be turned (Shapley's value), so that the parts add up to what they explain together. What is left to the actual
 * charge is `rest`. Each part's spread comes from the meter's errors, the steps that were not logged and the capacity's own.
 * @see L. S. Shapley, A value for n-person games, Annals of Mathematics Studies 28 (1953) 307–317 (from memory)
 * @param correction from `fitCorrection`; without it, or where it found no capacity, the capacity stays planned
 */
export function planAgainstActual(
  scenario: Scenario,
  log: MeterLog,
  surroundings: Surroundings = {},
  correction: Correction | null = null,
): { ok: true; against: PlanAgainstActual } | { ok: false; problems: readonly Problem[] } {
  const ready = prepare(scenario, surroundings);
  if (!ready.ok) return ready;
  const { prepared } = ready;
  const impossible = impossibleLog(log, scenario);
  if (impossible.length > 0) return { ok: false, problems: impossible };
  const logged = loggedSteps(log, prepared.grid);
  const findings: MeterFinding[] = [];
  const clock = clockOfLog(scenario, log);
  if (clock !== null) findings.push(clock);
  const apart = nothingInCommon(scenario, log, logged);
  if (apart !== null) {
    return {
      ok: false,
      problems: clock === null ? [apart] : [apart, { ...apart, code: clock.code, message: clock.message }],
    };
  }
  const plan = tracePrepared(prepared);
  const series = seriesOfLog(prepared, logged);
  const actual = { ...logged, loadW: series.loadW };
  const days = series.pvW === null ? [] : skyOfLog(prepared, chargeLimits(prepared), series);
  const covered = logged.coverageShare.reduce((sum, share) => sum + share, 0) / prepared.grid.steps;
  const { end, widestAt } = momentsOf(plan, actual);
  const miss = end > 0 ? missOf(plan, actual, correction, end) : null;
  const widest = widestAt > 0 ? missOf(plan, actual, correction, widestAt) : null;
  if (miss === null) {
    const message =
      "The log never tells the charge (in percent or as a share), so the miss cannot be split; map charge if the meter has it.";
    findings.push({ code: "no-charge", message, rows: 0, line: null, proposal: null });
  }
  return { ok: true, against: { plan, actual, coveredShare: covered, days, findings, miss, widest } };
}

const PLAYERS = ["start", "load", "sun", "capacity"] as const;
/** Weight of a turn that finds so many of the other three turned already: |S|! (3 − |S|)! / 4!. */
const TURN_WEIGHT = [6 / 24, 2 / 24, 2 / 24, 6 / 24] as const;

/** The last step edge at which the log has a charge, and the one at which it is farthest from the plan; −1 for none. */
function momentsOf(plan: Trace, { chargeShare }: LoggedSteps): { end: number; widestAt: number } {
  if (chargeShare === null) return { end: -1, widestAt: -1 };
  let widestAt = -1;
  let most = 0;
  for (let i = 1; i < chargeShare.length; i++) {
    const apart = Math.abs(chargeShare[i]! - plan.chargeShare[i]!);
    if (apart > most) {
      most = apart;
      widestAt = i;
    }
  }
  return { end: chargeShare.findLastIndex(Number.isFinite), widestAt };
}

/** @param end the step edge at which the charge is compared; the log has a charge there */
function missOf(plan: Trace, actual: LoggedSteps, correction: Correction | null, end: number): Miss {
  const charge = actual.chargeShare!;
  const { prepared, record } = plan;
  const { grid, scenario, inputs, bank } = prepared;
  const replay = makeReplay(prepared);
  const plannedLoadW = inputs.wantedW;
  const plannedSunW = record.solarW;
  const startAt = charge.findIndex(Number.isFinite);
  // A log that begins later tells of the start only as far as the plan goes on from there.
  const startShare = startAt * grid.stepH <= 1 ? charge[startAt]! : null;
  const fitted = correction?.figures.find(
    ({ name, status }) => name === "capacity" && (status === "found" || status === "leaning"),
  );
  const priorCapacity = SURENESS_SPREAD.bankHealth[scenario.sureness.bankHealth];

  const planned: ReplayInput = {
    startShare: bank.startAh / bank.fullAh,
    capacityShare: 1,
    wantedW: plannedLoadW,
    sunW: plannedSunW,
  };
  const metered = (load: Moved, sun: Moved, capacity: number, start: number): ReplayInput => ({
    startShare: Math.max(0, Math.min(1, (startShare ?? planned.startShare) + start)),
    capacityShare: (fitted?.value ?? 1) + capacity,
    wantedW: blended(plannedLoadW, actual.loadW, load),
    sunW: blended(plannedSunW, actual.pvW, sun),
  });
  const split = (turned: ReplayInput) => {
    const ends = Float64Array.from({ length: 16 }, (_, set) => {
      const has = (player: number) => (set & (1 << player)) !== 0;
      return replay(
        {
          startShare: has(0) ? turned.startShare : planned.startShare,
          wantedW: has(1) ? turned.wantedW : planned.wantedW,
          sunW: has(2) ? turned.sunW : planned.sunW,
          capacityShare: has(3) ? turned.capacityShare : planned.capacityShare,
        },
        end,
      );
    });
    const shares = PLAYERS.map((_, player) => {
      let sum = 0;
      for (let set = 0; set < 16; set++) {
        if ((set & (1 << player)) !== 0) continue;
        sum += TURN_WEIGHT[bitsIn(set)]! * (ends[set | (1 << player)]! - ends[set]!);
      }
      return sum;
    });
    const rest = charge[end]! - ends[15]!;
    return [...shares, rest];
  };
  const still: Moved = { gain: 0, unlogged: 0 };
  const parts = split(metered(still, still, 0, 0));
  const doubts = [
    split(metered({ gain: METER_GAIN_SHARE, unlogged: 0 }, still, 0, 0)),
    split(metered({ gain: 0, unlogged: UNLOGGED_LOAD_SHARE }, still, 0, 0)),
    split(metered(still, { gain: METER_GAIN_SHARE, unlogged: 0 }, 0, 0)),
    split(metered(still, { gain: 0, unlogged: UNLOGGED_SUN_SHARE }, 0, 0)),
    split(metered(still, still, fitted?.spread ?? priorCapacity, 0)),
    split(
      metered(
        still,
        still,
        0,
        startShare === null ? SURENESS_SPREAD.startCharge[scenario.sureness.startCharge] : -METER_CHARGE_SHARE,
      ),
    ),
  ];
  const spreadOf = (k: number) => {
    const squares = doubts.reduce((sum, doubt) => sum + (doubt[k]! - parts[k]!) ** 2, 0);
    return Math.sqrt(squares + (k === 4 ? METER_CHARGE_SHARE ** 2 : 0));
  };
  const wholeWh = plan.chargeShare.length > 0 ? bank.fullAh * scenario.bank.nominalV : 0;
  const lacking: Record<MissPartName, string | null> = {
    start: startShare === null ? "the log begins more than an hour after the plan" : null,
    load:
      actual.loadW === null ? "the log has no load W, and not both PV W and the bank's current with its volts" : null,
    sun: actual.pvW === null ? "the log has no PV W" : null,
    capacity: fitted === undefined ? "the log does not settle the capacity" : null,
    rest: null,
  };
  const told = MISS_PARTS.map(
    (name, k): MissPart => ({
      name,
      share: parts[k]!,
      spread: spreadOf(k),
      wh: parts[k]! * wholeWh,
      spreadWh: spreadOf(k) * wholeWh,
      lacking: lacking[name],
    }),
  );
  const plannedShare = replay(planned, end);
  const miss: Omit<Miss, "sentences"> = {
    atMs: grid.startMs + end * grid.stepMs,
    plannedShare,
    actualShare: charge[end]!,
    share: charge[end]! - plannedShare,
    wh: (charge[end]! - plannedShare) * wholeWh,
    parts: told,
    loadWh: energy(plannedLoadW, actual.loadW, end, grid.stepH),
    // Panels that a full bank turns down are metered turned down, so the plan is counted the same way.
    sunWh: energy(
      record.solarW.map((watts, i) => watts - record.spilledW[i]!),
      actual.pvW,
      end,
      grid.stepH,
    ),
  };
  return { ...miss, sentences: sentences(miss, plan) };
}

/** How far a metered row is moved to see what its errors do: by its gain, and by what the plan may miss where nothing was logged. */
interface Moved {
  readonly gain: number;
  readonly unlogged: number;
}

/** What the meter says where it says something, the plan elsewhere. */
function blended(plannedW: Float64Array, actualW: Float64Array | null, moved: Moved): Float64Array {
  if (actualW === null) return plannedW.map((watts) => watts * (1 + moved.unlogged));
  return plannedW.map((watts, i) =>
    Number.isFinite(actualW[i]!) ? actualW[i]! * (1 + moved.gain) : watts * (1 + moved.unlogged),
  );
}

function bitsIn(set: number): number {
  return (set & 1) + ((set >> 1) & 1) + ((set >> 2) & 1) + ((set >> 3) & 1);
}

function energy(plannedW: Float64Array, actualW: Float64Array | null, end: number, stepH: number): Miss["loadWh"] {
  if (actualW === null) return null;
  let [planned, actual] = [0, 0];
  for (let i = 0; i < end; i++) {
    if (!Number.isFinite(actualW[i]!)) continue;
    planned += plannedW[i]! * stepH;
    actual += actualW[i]! * stepH;
  }
  return { planned, actual };
}

const PART_WORDS: Record<MissPartName, string> = {
  start: "the charge at the start",
  load: "the load",
  sun: "the sun",
  capacity: "the bank's capacity",
  rest: "nothing of this",
};

function sentences(miss: Omit<Miss, "sentences">, plan: Trace): string[] {
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  const at = localMoment(plan.prepared.grid, miss.atMs).words;
  const apart = `${percent(Math.abs(miss.share))} (${Math.abs(miss.wh).toFixed(0)} Wh) ${miss.share < 0 ? "less" : "more"} than planned`;
  const size = Math.abs(miss.share) < 0.0005 ? "as planned" : apart;
  const said = [`${at}: the bank had ${percent(miss.actualShare)}, planned ${percent(miss.plannedShare)}: ${size}.`];
  const ordered = miss.parts
    .filter(({ name, lacking }) => lacking === null && name !== "rest")
    .sort((a, b) => Math.abs(b.share) - Math.abs(a.share));
  for (const { name, share, spread, wh } of ordered) {
    const verb = share < 0 ? "took" : "gave";
    const unsure = Math.abs(share) < 2 * spread ? ", which is within its error" : "";
    const capital = PART_WORDS[name][0]!.toUpperCase() + PART_WORDS[name].slice(1);
    said.push(
      `${capital} ${verb} ${percent(Math.abs(share))} (${Math.abs(wh).toFixed(0)} Wh), ± ${percent(2 * spread)}${unsure}.`,
    );
  }
  for (const { name, lacking } of miss.parts) {
    if (lacking !== null) said.push(`Of ${PART_WORDS[name]} nothing can be said: ${lacking}.`);
  }
  const rest = miss.parts.find(({ name }) => name === "rest")!;
  const open = Math.abs(rest.share) > 2 * rest.spread ? "; something is at work that neither plan nor log has" : "";
  said.push(
    `${percent(Math.abs(rest.share))} ${rest.share < 0 ? "less" : "more"} remain without a reason, ± ${percent(2 * rest.spread)}${open}.`,
  );
  return said;
}
