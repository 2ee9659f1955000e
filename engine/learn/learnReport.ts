import { type Bands, type OddsReport, oddsReport } from "../odds/odds.ts";
import { inHundred, type Odds, sampleRange } from "../odds/wilson.ts";
import { type LocalMoment, localMoment } from "../run/localClock.ts";
import { FEWEST_SHARE } from "./filter.ts";
import type { Learned } from "./learn.ts";
import { type Interval, intervalOf, type Lesson, lessons } from "./lessons.ts";
import { TRAIT_CHARGE, TRAITS } from "./particles.ts";
import { type WrongPlan, wrongPlan } from "./wrongPlan.ts";

/** What an ensemble says after readings; plain data, so that a worker can send it. */
export interface LearnReport {
  readonly seed: string;
  readonly members: number;
  readonly readings: number;
  /** Where the readings end: everything said of what comes counts from here. */
  readonly now: LocalMoment & { readonly step: number; readonly ms: number };
  readonly reserveShare: number;
  /** Members that hold over the whole event before anything was read, and from now on after it. */
  readonly holdsBefore: Odds;
  readonly holdsAfter: Odds;
  /** Charge at the end: eight in ten. */
  readonly endBefore: Interval;
  readonly endAfter: Interval;
  readonly chargeNow: Interval;
  /** Hours from now until the charge falls below the reserve; null where it does not before the end. */
  readonly hoursLeft: { readonly p10: number | null; readonly p50: number | null; readonly p90: number | null };
  /** Charge from now to the end, one value per step from `now.step` and one for the end. */
  readonly charge: Bands;
  readonly lessons: readonly Lesson[];
  /** Effective sample size of each stage, and the least of them. */
  readonly stages: readonly (LocalMoment & { readonly effective: number; readonly power: number })[];
  readonly fewestEffective: number;
  /** Members of the ensemble to which the last particles go back. */
  readonly founders: number;
  readonly wrong: readonly WrongPlan[];
  /** How many times their sureness the figures were let be off. */
  readonly widened: number;
  readonly before: OddsReport;
  readonly after: OddsReport;
  readonly sentences: readonly string[];
}

/** Adds up what an ensemble has learned. */
export function learnReport(learned: Learned): LearnReport {
  const { ensemble, particles, stages } = learned;
  const { grid } = ensemble.prepared;
  const moment = (step: number) => localMoment(grid, grid.startMs + step * grid.stepMs);
  const before = oddsReport(ensemble, learned.before);
  const after = stages.length === 0 ? before : oddsReport(ensemble, learned.after);
  const from = (values: Float64Array) => values.slice(particles.step);
  const { p5, p25, p50, p75, p95 } = after.charge;
  const report = {
    seed: ensemble.seed,
    members: particles.count,
    readings: learned.readings.length,
    now: { ...moment(particles.step), step: particles.step, ms: grid.startMs + particles.step * grid.stepMs },
    reserveShare: before.reserveShare,
    holdsBefore: before.holds,
    holdsAfter: after.holds,
    endBefore: intervalOf(learned.before.outcomes.endShare),
    endAfter: intervalOf(learned.after.outcomes.endShare),
    chargeNow: intervalOf(
      Float64Array.from({ length: particles.count }, (_, p) => particles.traits[p * TRAITS + TRAIT_CHARGE]!),
    ),
    hoursLeft: hoursLeft(learned),
    charge: { p5: from(p5), p25: from(p25), p50: from(p50), p75: from(p75), p95: from(p95) },
    lessons: lessons(learned),
    stages: stages.map(({ step, effective, power }) => ({ ...moment(step), effective, power })),
    fewestEffective: stages.reduce((fewest, stage) => Math.min(fewest, stage.effective), particles.count),
    founders: new Set(particles.founder).size,
    wrong: wrongPlan(learned),
    widened: learned.widened,
    before,
    after,
  };
  return { ...report, sentences: sentences(report, learned) };
}

function hoursLeft({ ensemble, particles, after }: Learned): LearnReport["hoursLeft"] {
  const { stepH } = ensemble.prepared.grid;
  const steps = Array.from(after.outcomes.belowFromStep, (step) => (step < 0 ? Number.POSITIVE_INFINITY : step));
  steps.sort((a, b) => a - b);
  const at = (share: number) => {
    const step = steps[Math.min(steps.length - 1, Math.floor(share * steps.length))]!;
    return Number.isFinite(step) ? Math.max(0, step - particles.step) * stepH : null;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

function sentences(report: Omit<LearnReport, "sentences">, { ensemble }: Learned): string[] {
  const { grid } = ensemble.prepared;
  if (report.stages.length === 0) return [...report.wrong.map(({ sentence }) => sentence), ...report.before.sentences];
  const end = localMoment(grid, grid.startMs + grid.steps * grid.stepMs).words;
  const { holdsBefore, holdsAfter, chargeNow, endBefore, endAfter, hoursLeft: left } = report;
  const range = `${sampleRange(holdsAfter, " to ")} by the size of the sample`;
  const said = report.wrong.map((each) => each.sentence);
  said.push(
    `From ${report.now.words} on, the bank holds to ${end} in ${inHundred(holdsAfter.share)} of 100 skies (${range}); before the readings the plan held in ${inHundred(holdsBefore.share)}.`,
    `Charge now: ${percent(chargeNow.p50)} (${percent(chargeNow.p10)} to ${percent(chargeNow.p90)}); at the end ${percent(endAfter.p10)} to ${percent(endAfter.p90)} in eight of ten, before the readings ${percent(endBefore.p10)} to ${percent(endBefore.p90)}.`,
    leftInWords(left, report.reserveShare),
    ...report.lessons.flatMap(({ sentence }) => (sentence === null ? [] : [sentence])),
  );
  const fewest = Math.round(report.fewestEffective);
  if (report.fewestEffective < FEWEST_SHARE * report.members) {
    said.push(
      `At one reading the members were worth only ${fewest} of ${report.members}, and its say was softened; run more members for a sharper answer.`,
    );
  } else if (report.fewestEffective < FEW_EFFECTIVE) {
    said.push(
      `At one reading the members were worth only ${fewest} of ${report.members}: the figures are rough; run more members.`,
    );
  }
  return said;
}

/** Quantiles at 10 % of fewer members than this depend on five or less. */
const FEW_EFFECTIVE = 50;

function leftInWords({ p10, p50 }: LearnReport["hoursLeft"], reserveShare: number): string {
  const hours = (value: number) => (value < 10 ? value.toFixed(1) : value.toFixed(0));
  const reserve = `the ${percent(reserveShare)} reserve`;
  if (p10 === null) return `Fewer than one in ten reach ${reserve} before the end.`;
  if (p50 === null) return `One in ten reaches ${reserve} within ${hours(p10)} h; half do not before the end.`;
  return `Hours left above ${reserve}: ${hours(p50)} h in the middle, less than ${hours(p10)} h in one of ten.`;
}
