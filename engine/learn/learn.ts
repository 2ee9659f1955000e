import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { stepMember } from "../ensemble/stepMember.ts";
import { countingOf } from "../odds/odds.ts";
import { makeOddsPart, type OddsPart } from "../odds/oddsPart.ts";
import { stepCount } from "../odds/stepCount.ts";
import { figureDoubts } from "./doubts.ts";
import { type Filtered, filter, type Unexplained } from "./filter.ts";
import { breathe, type LearnHooks } from "./learnHooks.ts";
import { type Observation, observationsOf } from "./observations.ts";
import { firstParticles, type Particles } from "./particles.ts";
import type { PlacedReading } from "./readReadings.ts";
import { runParticles } from "./runParticles.ts";

/** How many times their spreads the figures may be off, one after the other, until somebody explains the readings. */
const WIDENED = [1, 2, 4] as const;
/** Fewer members give bands that jump with the seed. */
export const LEARN_FEWEST_MEMBERS = 100;
export const LEARN_MOST_MEMBERS = 20_000;

/** An ensemble that has taken readings in. */
export interface Learned {
  readonly ensemble: PreparedEnsemble;
  readonly readings: readonly PlacedReading[];
  /** The members before anything was read, over the whole event. */
  readonly before: OddsPart;
  readonly first: Particles;
  /** As many equal particles after the last reading, and what becomes of them from there on. */
  readonly particles: Particles;
  readonly after: OddsPart;
  readonly stages: Filtered["stages"];
  /** Readings that no member of the plan explains. */
  readonly unexplained: readonly Unexplained[];
  /** Of those, the ones that no member explains even with the figures as far off as was tried. */
  readonly neverExplained: readonly Unexplained[];
  /** Readings that were confirmed and that no member explains: they count for nothing. */
  readonly ignored: readonly Unexplained[];
  /** How many times their spreads the figures had to be off. */
  readonly widened: number;
}

/**
 * Lets an ensemble learn from readings. Without any, the odds are those of the ensemble, to the last bit.
 * @param readings from `readReadings`
 * @param members 100…20000
 * @throws RangeError if members leaves its range; LearnCancelled once the hooks say so
 */
export async function learn(
  ensemble: PreparedEnsemble,
  readings: readonly PlacedReading[],
  members: number,
  hooks: LearnHooks = {},
): Promise<Learned> {
  if (!(Number.isInteger(members) && members >= LEARN_FEWEST_MEMBERS && members <= LEARN_MOST_MEMBERS)) {
    throw new RangeError(
      `members must be a whole number from ${LEARN_FEWEST_MEMBERS} to ${LEARN_MOST_MEMBERS}, got ${members}`,
    );
  }
  const { observations, ignored } = await worthCounting(ensemble, readings, members, hooks);
  const first = firstParticles(ensemble, members);
  const before = await membersOf(ensemble, members, hooks);
  if (observations.length === 0) {
    const nothing = { stages: [], unexplained: [], neverExplained: [], widened: 1 };
    return { ensemble, readings, before, first, particles: first, after: before, ignored, ...nothing };
  }
  let unexplained: readonly Unexplained[] = [];
  let widened = 1;
  let found = await filter(ensemble, observations, members, widened, false, hooks);
  for (const times of WIDENED.slice(1)) {
    if (found.unexplained.length === 0) break;
    if (unexplained.length === 0) unexplained = found.unexplained;
    widened = times;
    found = await filter(ensemble, observations, members, times, times === WIDENED.at(-1), hooks);
  }
  return {
    ensemble,
    readings,
    before,
    first,
    particles: found.particles,
    after: await runParticles(ensemble, found.particles, members, hooks),
    stages: found.stages,
    unexplained,
    neverExplained: found.unexplained,
    ignored,
    widened,
  };
}

/**
 * What the readings say, without those that somebody was asked about and confirmed and that no member explains as the plan stands: a figure that
 * nobody can explain is no reason to doubt all others.
 */
async function worthCounting(
  ensemble: PreparedEnsemble,
  readings: readonly PlacedReading[],
  members: number,
  hooks: LearnHooks,
): Promise<{ readonly observations: readonly Observation[]; readonly ignored: readonly Unexplained[] }> {
  const { scenario } = ensemble.prepared;
  // A low charge that somebody confirms may be a bank that really is that low: only figures that can hardly be are let go.
  const confirmed = new Set(
    readings
      .filter(({ reading }) => reading.isConfirmed === true && figureDoubts(reading, scenario).length > 0)
      .map(({ number }) => number),
  );
  let observations = observationsOf(readings, ensemble.prepared);
  const ignored: Unexplained[] = [];
  while (observations.some(({ number }) => confirmed.has(number))) {
    const { unexplained } = await filter(ensemble, observations, members, 1, false, hooks);
    const odd = unexplained.filter(({ observation }) => confirmed.has(observation.number));
    if (odd.length === 0) break;
    ignored.push(...odd);
    const rest = readings.filter(({ number }) => !isIgnored(ignored, number));
    observations = observationsOf(rest, ensemble.prepared);
  }
  return { observations, ignored };
}

const isIgnored = (ignored: readonly Unexplained[], number: number) =>
  ignored.some(({ observation }) => observation.number === number);

async function membersOf(ensemble: PreparedEnsemble, members: number, hooks: LearnHooks): Promise<OddsPart> {
  const counting = countingOf(ensemble);
  const room = makeMemberRoom(ensemble);
  const part = makeOddsPart(ensemble.prepared, ensemble.seed, 0, members);
  for (let member = 0; member < members; member++) {
    await breathe(hooks, member);
    stepMember(ensemble, member, room);
    stepCount(ensemble.prepared, room.run, 0, member, counting, part);
  }
  return part;
}
