import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { foretold } from "./foretold.ts";
import { breathe, type LearnHooks } from "./learnHooks.ts";
import type { Observation } from "./observations.ts";
import { firstParticles, generationWords, type Particles } from "./particles.ts";
import { effectiveMembers, particleWeights, temperedPower } from "./particleWeights.ts";
import { prepareOnward } from "./prepareOnward.ts";
import { resampled } from "./resampled.ts";
import { makeSnapshots, takeSnapshots } from "./snapshots.ts";
import { startFromReading } from "./startFromReading.ts";
import { stepParticle } from "./stepParticle.ts";

/** Particles are thinned and filled up again when they are worth less than this share of their number. */
const WORTH_KEEPING_SHARE = 0.5;
/** Below this share a single stage is softened: a few members must not speak for all. */
export const FEWEST_SHARE = 0.02;
/** A stage that nobody explains is softened to this share. */
const UNEXPLAINED_SHARE = 0.1;
/**
 * Nobody explains a reading that lies more than three and a half standard errors from the best member: chance alone does that
 * once in two thousand readings.
 */
export const LARGEST_CHI_SQUARE = 12;
/** Where nobody explains a reading, its error is taken to be so many times what was stated. */
const ERROR_TIMES = 2;
/** Stages before the particles run again, and days that they may span: it bounds the memory. */
const STAGES_AT_ONCE = 24;
const DAYS_AT_ONCE = 2;

/** Observations at one step, and how much they left of the particles. */
export interface Stage {
  readonly step: number;
  readonly effective: number;
  /** The power to which the likelihood was taken; 1 where nothing had to be softened. */
  readonly power: number;
}

/** A reading that no member explains. */
export interface Unexplained {
  readonly observation: Observation;
  /** What the members foretold: lowest, weighted mean and highest, in the observation's unit. */
  readonly lowest: number;
  readonly mean: number;
  readonly highest: number;
}

export interface Filtered {
  readonly particles: Particles;
  readonly stages: readonly Stage[];
  readonly unexplained: readonly Unexplained[];
}

/**
 * Takes an ensemble through what was observed: a particle filter that thins and fills up again whenever the particles are worth
 * less than half their number, and at the last observation.
 * @param observations in the order of the clock
 * @param widened how many times their spreads the figures may be off
 * @param isLast whether to go on past what nobody explains; else the first such reading ends it
 * @see N. Gordon, D. Salmond and A. Smith, IEE Proceedings F 140 (1993) 107–113 (from memory)
 */
export async function filter(
  ensemble: PreparedEnsemble,
  observations: readonly Observation[],
  count: number,
  widened: number,
  isLast: boolean,
  hooks: LearnHooks,
): Promise<Filtered> {
  const { prepared } = ensemble;
  const room = makeMemberRoom(ensemble);
  const stages: Stage[] = [];
  const unexplained: Unexplained[] = [];
  let particles = firstParticles(ensemble, count, widened);
  let next = 0;
  let ran = 0;
  for (let generation = 1; next < observations.length; generation++) {
    const onward = prepareOnward(ensemble, particles);
    const window = windowFrom(observations, next, ensemble);
    const steps = window.map((group) => group.step);
    const snapshots = makeSnapshots(ensemble, count, steps);
    const seen = window.flatMap((group) => group.observations);
    const shown = new Float64Array(count * seen.length);
    for (let p = 0; p < count; p++) {
      await breathe(hooks, ran++);
      stepParticle(onward, p, room);
      for (let o = 0; o < seen.length; o++) {
        const value = foretold(seen[o]!, ensemble, room, particles.step);
        shown[p * seen.length + o] = value ?? Number.NaN;
      }
      takeSnapshots(ensemble, room, p, snapshots);
    }
    const logLikelihood = new Float64Array(count);
    let offset = 0;
    for (let w = 0; w < window.length; w++) {
      const group = window[w]!;
      const before = particleWeights(logLikelihood);
      const best = highest(logLikelihood);
      for (let o = 0; o < group.observations.length; o++) {
        const { value, sigma, weight } = group.observations[o]!;
        for (let p = 0; p < count; p++) {
          const off = (shown[p * seen.length + offset + o]! - value) / sigma;
          if (!Number.isNaN(off)) logLikelihood[p]! -= 0.5 * weight * off * off;
        }
      }
      const most = group.observations.reduce((largest, { weight }) => Math.max(largest, weight), 0);
      const isExplained = 2 * (best - highest(logLikelihood)) <= LARGEST_CHI_SQUARE * most;
      if (!isExplained) {
        const columns = group.observations.map((_, o) => {
          return Float64Array.from({ length: count }, (__, p) => shown[p * seen.length + offset + o]!);
        });
        unexplained.push(...missedOf(group.observations, columns, before));
        if (!isLast) return { particles, stages, unexplained };
      }
      const wanted = (isExplained ? FEWEST_SHARE : UNEXPLAINED_SHARE) * count;
      const power = temperedPower(logLikelihood, Math.max(1, wanted));
      const weights = particleWeights(logLikelihood, power);
      const effective = effectiveMembers(weights);
      stages.push({ step: group.step, effective: effectiveMembers(particleWeights(logLikelihood)), power });
      offset += group.observations.length;
      next += group.observations.length;
      const isOver = w === window.length - 1;
      if (effective >= WORTH_KEEPING_SHARE * count && power === 1 && !isOver) continue;
      const words = generationWords(ensemble, generation);
      particles = resampled(prepared, particles, snapshots, w, weights, words);
      if (power < 1) {
        particles = startFromReading(prepared, particles, group.observations, isExplained ? 1 : ERROR_TIMES);
      }
      break;
    }
  }
  return { particles, stages, unexplained };
}

interface StageGroup {
  readonly step: number;
  readonly observations: Observation[];
}

/** The next observations by the step at whose end they were made, as many as are worked out at once. */
function windowFrom(observations: readonly Observation[], next: number, { prepared }: PreparedEnsemble): StageGroup[] {
  const { localDay } = prepared.grid;
  const groups: StageGroup[] = [];
  for (const observation of observations.slice(next)) {
    const step = Math.max(1, Math.ceil(observation.place));
    const last = groups.at(-1);
    if (last?.step === step) last.observations.push(observation);
    else if (groups.length >= STAGES_AT_ONCE) break;
    else if (last !== undefined && localDay[step - 1]! - localDay[groups[0]!.step - 1]! >= DAYS_AT_ONCE) break;
    else groups.push({ step, observations: [observation] });
  }
  return groups;
}

/** Those of a group that lie farthest from what was foretold: all beyond two standard errors of the nearest, or the worst. */
function missedOf(
  observations: readonly Observation[],
  columns: readonly Float64Array[],
  weights: Float64Array,
): Unexplained[] {
  const found = observations.map((observation, o) => {
    let lowest = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    let mean = 0;
    columns[o]!.forEach((value, p) => {
      if (Number.isNaN(value)) return;
      lowest = Math.min(lowest, value);
      most = Math.max(most, value);
      mean += weights[p]! * value;
    });
    const { value, sigma } = observation;
    const away = Math.max(0, lowest - value, value - most) / sigma;
    return { observation, lowest, highest: most, mean, away };
  });
  const worst = found.reduce((far, each) => Math.max(far, each.away), 0);
  return found.filter(({ away }) => away >= Math.min(2, worst)).map(({ away: _, ...missed }) => missed);
}

const highest = (values: Float64Array) =>
  values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
