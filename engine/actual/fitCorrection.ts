import { nextNormal, nextUnit, openStream, STREAM_WORDS, wordsFor } from "../chance/stream.ts";
import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import { drawOperators } from "../ensemble/operators.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { MemberRoom } from "../ensemble/stepMember.ts";
import type { MeterLog } from "../meter/meterLog.ts";
import {
  CANOPY_REACH,
  crownLean,
  drawFigures,
  FIGURE_CAPACITY_SHARE,
  FIGURE_IDLE_SHARE,
  FIGURE_START_SHARE,
  FIGURE_YIELD_SHARE,
  SURENESS_SPREAD,
} from "../run/memberFigures.ts";
import { requireFedLoads, requireFedSky } from "../run/requireFed.ts";
import { stepRun } from "../run/stepRun.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { drawSky } from "../sky/skyEnsemble.ts";
import { linearRule, weightedQuantile } from "./linearRule.ts";
import {
  FEATURE_CAPACITY,
  FEATURE_CROWN,
  FEATURE_IDLE,
  FEATURE_NIGHT,
  FEATURE_OPEN,
  FEATURE_SENDING,
  FEATURE_SENDING_FIT,
  FEATURE_SHADED,
  FEATURE_START,
  type LogFeatures,
  logFeatures,
} from "./logFeatures.ts";
import { type LoggedSteps, loggedSteps } from "./loggedSteps.ts";
import {
  METER_CHARGE_SHARE,
  METER_GAIN_SHARE,
  METER_ZERO_A,
  type MeterSeries,
  seriesOfLog,
  seriesOfRun,
} from "./meterSeries.ts";
import { type PlannedRows, plannedRows } from "./plannedRows.ts";

/** What of a plan can be corrected: factors on the plan, except for the charge at the start, which is a share of full. */
export const CORRECTIONS = ["idle", "sending", "yield", "shade", "capacity", "start"] as const;
export type CorrectionName = (typeof CORRECTIONS)[number];

/** One figure of the plan, as a log has it. */
export interface FittedFigure {
  readonly name: CorrectionName;
  /** Factor on the plan; of `start`, the charge itself. 1 (the planned charge) where the log does not speak of it. */
  readonly value: number;
  /** Nine times in ten the true figure lies between these. */
  readonly low: number;
  readonly high: number;
  /** Standard deviation before and after the log. */
  readonly priorSpread: number;
  readonly spread: number;
  /**
   * found: the log settles it much better than the plan; leaning: the log says something; open: the log has what it takes
   * but says next to nothing; missing: the log lacks what it takes.
   */
  readonly status: "found" | "leaning" | "open" | "missing";
  /** The figure, or why there is none, as a sentence. */
  readonly sentence: string;
}

/** A plan corrected by what a meter wrote. */
export interface Correction {
  readonly figures: readonly FittedFigure[];
  /**
   * Where the operators' habit lies nine times in ten, as a factor on the plan's sending: wider than what they did this time by as much as one
   * event differs from the next. Null where sending was neither found nor leaning.
   */
  readonly sendingHabit: { readonly low: number; readonly high: number } | null;
  /** Whether the sky was measured (a weather file of those days) or had to be drawn with the rest. */
  readonly skyKnown: boolean;
  /** Hours of the plan that the log covers. */
  readonly coveredH: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly members: number;
  /** What a person should know before believing it. */
  readonly remarks: readonly string[];
}

export interface FitOptions {
  /** Members that the rules are learned from; 800 when left out, 100 to 5000. */
  readonly members?: number;
  readonly seed?: string;
}

export const USUAL_FIT_MEMBERS = 800;
/** Share of the members, those whose sun looks most like the log's, that rules for sun and shade are learned from. */
const ALIKE_SHARE = 0.4;
/** Gain error of a weather file's irradiance against what fell on the site (common practice, no source: 3 to 5 % an hour). */
const SKY_GAIN_SHARE = 0.03;
/** Standard deviations within which nine of ten normal values lie. */
const NINE_IN_TEN = 1.645;
/** What is left out at either end of an interval: a little less than one in twenty, since the tails of a few hundred members scatter. */
const TAIL_SHARE = 0.04;
/** How far rows may lie off their times, in rows: whether a row is an instant or a mean about it, before or after it is seldom written down. */
const ROW_DOUBT = { instant: 0.5, start: 0.1, end: 0.1 } as const;
/**
 * How far a cloudless sky may be from the modelled one for a whole log: real clear skies differ by 5 to 10 % of light, most of it haze (a step of
 * turbidity is worth 4 to 6 %). Measured skies bear it out: without this, 4 of 12 logs under them had their yield outside its interval, all but one below.
 */
const CLEAR_SKY_SHARE = 0.05;
export const FOUND_BELOW = 0.7;
export const OPEN_FROM = 0.95;

/** Which features speak of which figure. */
const range = (from: number, count: number) => Array.from({ length: count }, (_, k) => from + k);
const SUN = [...range(FEATURE_OPEN, 4), ...range(FEATURE_SHADED, 4), FEATURE_CROWN];
const SPEAKS: Record<CorrectionName, readonly number[]> = {
  idle: [FEATURE_IDLE, FEATURE_SENDING, FEATURE_NIGHT],
  sending: [FEATURE_IDLE, FEATURE_SENDING, FEATURE_SENDING_FIT],
  yield: SUN,
  shade: SUN,
  capacity: [FEATURE_CAPACITY],
  start: [FEATURE_START],
};
/** Without these a figure is not asked about. */
const NEEDS: Record<CorrectionName, readonly number[]> = {
  idle: [FEATURE_IDLE, FEATURE_NIGHT],
  sending: [FEATURE_SENDING],
  yield: [FEATURE_OPEN, FEATURE_SHADED],
  shade: [FEATURE_SHADED],
  capacity: [FEATURE_CAPACITY],
  start: [FEATURE_START],
};

/**
 * Finds by how much a plan's figures have to be corrected to agree with a log: idle draw, sending, yield, shade, capacity, and the charge at
 * the start, each with the interval in which it lies nine times in ten.
 *
 * Members of the plan are run under skies, operators and figures as (un)sure as the scenario says; a meter with its own errors reads each
 * of them in the very steps that the log has; its log is condensed to a few least-squares figures and quantiles (`logFeatures`); and from
 * those a straight-line rule to each true figure is fitted over the members. The log's own features give the estimate, the rule's
 * misses over the members its interval. So the sky that nobody measured is drawn with the rest, what the log does not speak of stays where the plan
 * has it, and the interval holds as far as the plan's own spreads do. For sun and shade the members whose sun looks most like the log's are taken.
 * @see M. A. Beaumont, W. Zhang and D. J. Balding, Genetics 162 (2002) 2025–2035 (regression adjustment; from memory)
 * @param surroundings climate, to draw skies from; a weather file of those very days makes the sky known
 * @returns the correction, or problems: no step in common, nothing to read a plan by
 */
export function fitCorrection(
  scenario: Scenario,
  log: MeterLog,
  surroundings: Surroundings = {},
  options: FitOptions = {},
): { ok: true; correction: Correction } | { ok: false; problems: readonly Problem[] } {
  const members = options.members ?? USUAL_FIT_MEMBERS;
  if (!(Number.isInteger(members) && members >= 100 && members <= 5000)) {
    throw new RangeError(`members must be a whole number in 100…5000, got ${members}`);
  }
  const ready = prepareEnsemble(scenario, surroundings, options.seed ?? "actual");
  if (!ready.ok) return ready;
  const { ensemble } = ready;
  const { prepared } = ensemble;
  const logged = loggedSteps(log, prepared.grid);
  const apart = nothingInCommon(scenario, log, logged);
  if (apart !== null) return { ok: false, problems: [apart] };
  const skyKnown = isSkyKnown(scenario, surroundings, log);
  const planned = plannedRows(ensemble, skyKnown ? prepared.light : prepared.clear);
  const block = Math.max(1, Math.round(log.usualMs / prepared.grid.stepMs));
  const series = seriesOfLog(prepared, logged);
  const asked = logFeatures(prepared, planned, series, block);
  const lateSteps = Math.min(1, (ROW_DOUBT[log.stamp] * log.usualMs) / prepared.grid.stepMs);
  const taught = teach(ensemble, planned, logged, block, members, skyKnown, series, lateSteps);
  const figures = CORRECTIONS.map((name) => figureOf(name, ensemble, asked, taught, logged, skyKnown));
  const covered = Array.from(logged.coverageShare.keys()).filter((i) => logged.coverageShare[i]! >= 0.5);
  const { grid } = prepared;
  return {
    ok: true,
    correction: {
      figures,
      sendingHabit: habitOf(figures.find(({ name }) => name === "sending")!),
      skyKnown,
      coveredH: logged.coverageShare.reduce((sum, share) => sum + share, 0) * grid.stepH,
      fromMs: grid.startMs + covered[0]! * grid.stepMs,
      toMs: grid.startMs + (covered.at(-1)! + 1) * grid.stepMs,
      members,
      remarks: remarksOn(figures, skyKnown, logged, scenario),
    },
  };
}

/** @returns a problem if no step of the plan was logged */
export function nothingInCommon(scenario: Scenario, log: MeterLog, logged: LoggedSteps): Problem | null {
  if (logged.coverageShare.some((share) => share >= 0.5)) return null;
  const day = (ms: number) => new Date(ms).toISOString().slice(0, 16);
  const message = `The log runs from ${day(log.timeMs[0]!)} to ${day(log.timeMs.at(-1)!)} UTC and the plan from ${scenario.time.start} to ${scenario.time.end}; they have no step in common: put the plan's time where the log was written, or correct the log's clock.`;
  return { code: "log-elsewhen", path: ["time"], message };
}

/** A weather file counts as measured where it tells of the very days of the log, and not of a typical year. */
function isSkyKnown(scenario: Scenario, { weatherFile }: Surroundings, log: MeterLog): boolean {
  if (scenario.weather.kind !== "file" || weatherFile === undefined || weatherFile.typicalYear) return false;
  return (
    weatherFile.startMs[0]! <= log.timeMs[0]! + 86_400_000 &&
    weatherFile.startMs.at(-1)! >= log.timeMs.at(-1)! - 86_400_000
  );
}

interface Taught {
  readonly features: readonly LogFeatures[];
  readonly truths: Readonly<Record<CorrectionName, Float64Array>>;
}

function teach(
  ensemble: PreparedEnsemble,
  planned: PlannedRows,
  logged: LoggedSteps,
  block: number,
  members: number,
  skyKnown: boolean,
  series: MeterSeries,
  lateSteps: number,
): Taught {
  const { prepared } = ensemble;
  const room = makeMemberRoom(ensemble);
  const words = wordsFor(ensemble.words, "meter");
  const state = new Uint32Array(STREAM_WORDS);
  const truths = Object.fromEntries(CORRECTIONS.map((name) => [name, new Float64Array(members)])) as unknown as Record<
    CorrectionName,
    Float64Array
  >;
  const spread = SURENESS_SPREAD.canopy[prepared.scenario.sureness.canopy];
  const features = Array.from({ length: members }, (_, member): LogFeatures => {
    openStream(state, words, member, "figures");
    runUnderSky(ensemble, member, room, skyKnown, nextNormal(state));
    const gain = () => 1 + METER_GAIN_SHARE * nextNormal(state);
    const errors = {
      pvGain: gain(),
      bankGain: gain(),
      loadGain: gain(),
      zeroA: METER_ZERO_A * nextNormal(state),
      lateSteps: lateSteps * (2 * nextUnit(state) - 1),
      chargeScatter: () => METER_CHARGE_SHARE * nextNormal(state),
    };
    const { figures } = room.inputs;
    truths.idle[member] = figures[FIGURE_IDLE_SHARE]!;
    truths.yield[member] = figures[FIGURE_YIELD_SHARE]!;
    truths.capacity[member] = figures[FIGURE_CAPACITY_SHARE]!;
    truths.start[member] = figures[FIGURE_START_SHARE]!;
    truths.shade[member] = Math.max(0, 1 + spread * CANOPY_REACH * crownLean(figures));
    truths.sending[member] = sentShare(room, planned, series.loadW);
    return logFeatures(prepared, planned, seriesOfRun(prepared, room.run, logged, errors), block);
  });
  return { features, truths };
}

/** A member as in any ensemble, but under a sky that is a little brighter or duller as a whole: the one that was measured, or one that is drawn. */
function runUnderSky(
  ensemble: PreparedEnsemble,
  member: number,
  room: MemberRoom,
  skyKnown: boolean,
  normal: number,
): void {
  const { prepared, seed, words, skies, operators, spread } = ensemble;
  const { light, airTempC, inputs } = room;
  if (skyKnown) {
    light.ghiWm2.set(prepared.light.ghiWm2);
    light.dniWm2.set(prepared.light.dniWm2);
    light.dhiWm2.set(prepared.light.dhiWm2);
    airTempC.set(prepared.airTempC);
  } else drawSky(skies, words, member, light, airTempC);
  const gain = 1 + (skyKnown ? SKY_GAIN_SHARE : CLEAR_SKY_SHARE) * normal;
  for (const row of [light.ghiWm2, light.dniWm2, light.dhiWm2]) for (let i = 0; i < row.length; i++) row[i]! *= gain;
  drawFigures(prepared.scenario.bank.startShare, spread, operators.state, words, member, inputs.figures);
  drawOperators(prepared, operators, words, member, inputs);
  requireFedSky(seed, member, light, airTempC);
  requireFedLoads(seed, member, inputs);
  stepRun(prepared, light, airTempC, inputs, room.run);
}

/** What a member sends over what the plan has for it, in the steps whose load the log has. */
function sentShare({ inputs }: MemberRoom, planned: PlannedRows, loadW: Float64Array | null): number {
  const idle = inputs.figures[FIGURE_IDLE_SHARE]!;
  let [sent, plan] = [0, 0];
  for (let i = 0; i < planned.quietW.length; i++) {
    if (loadW !== null && !Number.isFinite(loadW[i]!)) continue;
    sent += inputs.wantedW[i]! - idle * planned.quietW[i]!;
    plan += planned.sendingW[i]!;
  }
  return plan > 0 ? sent / plan : 1;
}

function figureOf(
  name: CorrectionName,
  ensemble: PreparedEnsemble,
  asked: LogFeatures,
  { features, truths }: Taught,
  logged: LoggedSteps,
  skyKnown: boolean,
): FittedFigure {
  const { scenario } = ensemble.prepared;
  const truth = truths[name];
  const planned = name === "start" ? scenario.bank.startShare : 1;
  const even = new Float64Array(truth.length).fill(1);
  const prior = spreadAbout(truth, even);
  const quantiles = (values: Float64Array, weights: Float64Array) => [
    weightedQuantile(values, weights, TAIL_SHARE),
    weightedQuantile(values, weights, 1 - TAIL_SHARE),
  ];
  const [priorLow, priorHigh] = quantiles(truth, even) as [number, number];
  const stays = (status: "open" | "missing", sentence: string): FittedFigure => ({
    name,
    value: planned,
    low: priorLow,
    high: priorHigh,
    priorSpread: prior,
    spread: prior,
    status,
    sentence,
  });
  const lacking = whatIsMissing(name, ensemble, asked, logged);
  if (lacking !== null) return stays("missing", `${WORDS[name]} stays as planned: ${lacking}.`);
  const heard = SPEAKS[name].filter((f) => Number.isFinite(asked[f]!));
  const rows = heardRows(features, heard);
  const row = Float64Array.from(heard, (f) => asked[f]!);
  const weights = name === "yield" || name === "shade" ? alike(rows, row) : even;
  const rule = linearRule(rows, truth, weights, row);
  const spread = spreadAbout(rule.misses, rule.weights);
  if (spread >= OPEN_FROM * prior) {
    const why =
      name === "yield" && !skyKnown
        ? "under a sky that nobody measured, the log does not tell a weak panel from cloud"
        : "the log has what it takes, but says next to nothing about it";
    return stays("open", `${WORDS[name]} stays as planned: ${why}.`);
  }
  const [missLow, missHigh] = quantiles(rule.misses, rule.weights) as [number, number];
  const floor = name === "start" ? 0 : 0.02;
  const ceiling = name === "start" ? 1 : Number.POSITIVE_INFINITY;
  const within = (number: number, least: number) => Math.min(ceiling, Math.max(least, number));
  const value = within(rule.value, floor);
  const low = within(rule.value + missLow, 0);
  const high = within(rule.value + missHigh, low);
  const status = spread < FOUND_BELOW * prior ? "found" : "leaning";
  const shown = (number: number) => (name === "start" ? `${(100 * number).toFixed(1)} %` : number.toFixed(2));
  const of = name === "start" ? "of full" : "of plan";
  const faint = status === "leaning" ? "; the log says little more than the plan did" : "";
  const sentence = `${WORDS[name]}: ${shown(value)} ${of}, nine times in ten between ${shown(low)} and ${shown(high)}${faint}.`;
  return { name, value, low, high, priorSpread: prior, spread, status, sentence };
}

function habitOf({ status, value, spread, priorSpread }: FittedFigure): Correction["sendingHabit"] {
  if (status === "missing" || status === "open") return null;
  const apart = NINE_IN_TEN * Math.hypot(spread, value * priorSpread);
  return { low: Math.max(0, value - apart), high: value + apart };
}

const WORDS: Record<CorrectionName, string> = {
  idle: "Draw between transmissions",
  sending: "Sending in the logged time",
  yield: "Yield of the panels",
  shade: "Light through the crowns",
  capacity: "Capacity of the bank",
  start: "Charge at the start",
};

/** The features that are heard, one row a member; where a member's log would not speak of one, the members' mean stands in. */
function heardRows(features: readonly LogFeatures[], heard: readonly number[]): Float64Array[] {
  const means = heard.map((f) => {
    let [sum, n] = [0, 0];
    for (const row of features) {
      if (!Number.isFinite(row[f]!)) continue;
      sum += row[f]!;
      n++;
    }
    return n > 0 ? sum / n : 0;
  });
  return features.map((row) => Float64Array.from(heard, (f, k) => (Number.isFinite(row[f]!) ? row[f]! : means[k]!)));
}

/** Weights for the members whose sun looks most like the log's, falling to nothing at the edge (Epanechnikov's kernel). */
function alike(rows: readonly Float64Array[], asked: Float64Array): Float64Array {
  const n = rows.length;
  const spreads = asked.map((_, f) => {
    const mean = rows.reduce((sum, row) => sum + row[f]!, 0) / n;
    return Math.max(1e-9, Math.sqrt(rows.reduce((sum, row) => sum + (row[f]! - mean) ** 2, 0) / n));
  });
  const far = Float64Array.from(rows, (row) =>
    Math.sqrt(row.reduce((sum, value, f) => sum + ((value - asked[f]!) / spreads[f]!) ** 2, 0)),
  );
  const edge = far.slice().sort()[Math.floor(ALIKE_SHARE * n)]!;
  return far.map((distance) => Math.max(0, 1 - (distance / edge) ** 2));
}

function spreadAbout(values: Float64Array, weights: Float64Array): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = values.reduce((sum, value, k) => sum + weights[k]! * value, 0) / total;
  return Math.sqrt(values.reduce((sum, value, k) => sum + weights[k]! * (value - mean) ** 2, 0) / total);
}

/** @returns what a figure would need and the log or the plan does not have; null where it has it */
function whatIsMissing(
  name: CorrectionName,
  ensemble: PreparedEnsemble,
  asked: LogFeatures,
  logged: LoggedSteps,
): string | null {
  const { scenario, grid } = ensemble.prepared;
  if (name === "shade" && !ensemble.hasCrowns) return "no crown that lets light through stands by the panels";
  if ((name === "yield" || name === "shade") && scenario.panels.every((group) => group.count === 0))
    return "the plan has no panels";
  if (name === "sending" && scenario.stations.length === 0) return "the plan has no station";
  if (NEEDS[name].some((f) => Number.isFinite(asked[f]!))) return null;
  const columns: Record<CorrectionName, readonly [has: boolean, what: string]> = {
    idle: [
      logged.loadW !== null || logged.bankW !== null,
      "load W (or bank current with bank V), or the charge over a night",
    ],
    sending: [
      logged.loadW !== null || (logged.bankW !== null && logged.pvW !== null),
      "load W, or bank current with bank V and PV W, while stations are staffed",
    ],
    yield: [logged.pvW !== null, "PV W"],
    shade: [logged.pvW !== null, "PV W"],
    capacity: [logged.chargeShare !== null && logged.bankA !== null, "both the charge and the bank's current"],
    start: [logged.chargeShare !== null, "the charge"],
  };
  const [has, what] = columns[name];
  if (!has) return `it takes ${what}, which the log does not have`;
  const hours = (logged.coverageShare.reduce((sum, share) => sum + share, 0) * grid.stepH).toFixed(0);
  if (name === "shade") return "no logged step with room in the bank has the crowns in the way";
  return `it takes ${what}, and the ${hours} h that are logged hold too little of that`;
}

function remarksOn(
  figures: readonly FittedFigure[],
  skyKnown: boolean,
  logged: LoggedSteps,
  scenario: Scenario,
): string[] {
  const remarks: string[] = [];
  const heard = (name: CorrectionName) => figures.some((figure) => figure.name === name && figure.status !== "missing");
  if (heard("yield") && !skyKnown) {
    remarks.push(
      "The sky over the log was not measured: it was drawn with everything else, and yield is known only as far as the brightest hours tell it.",
    );
  }
  if (heard("yield") && logged.chargeShare === null && logged.bankV === null) {
    remarks.push(
      "Without charge or volts nobody sees when a full bank turned the panels down; yield may come out too low.",
    );
  }
  if (heard("capacity")) {
    remarks.push(
      "A meter that counts its charge from ampere-hours shows the capacity that was set in it; only a charge that is put right at full (or told from resting volts) says anything of the bank's own.",
    );
  }
  const habit = habitOf(figures.find(({ name }) => name === "sending")!);
  if (habit !== null) {
    remarks.push(
      `Sending is what this log shows. One event differs from the next: as a habit it lies, nine times in ten, between ${habit.low.toFixed(2)} and ${habit.high.toFixed(2)} of plan.`,
    );
  }
  if (scenario.sources.length > 0 && logged.loadW === null) {
    remarks.push(
      "While mains, a vehicle or a generator may run, the load cannot be told from bank and panels; those hours were left out.",
    );
  }
  for (const figure of figures) {
    const planned = figure.name === "start" ? scenario.bank.startShare : 1;
    if (figure.status !== "found" || Math.abs(figure.value - planned) <= 3 * figure.priorSpread) continue;
    remarks.push(
      `${WORDS[figure.name]} lies farther from the plan than the plan thought possible; look for a mistake in the plan, the mapping or the meter before believing it.`,
    );
  }
  return remarks;
}
