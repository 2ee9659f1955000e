import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { countingOf } from "../odds/odds.ts";
import { makeOddsPart, type OddsPart } from "../odds/oddsPart.ts";
import { stepCount } from "../odds/stepCount.ts";
import { ROW_SLOTS, ROW_STORED_AH } from "../run/runRows.ts";
import { breathe, type LearnHooks } from "./learnHooks.ts";
import type { Particles } from "./particles.ts";
import { prepareOnward } from "./prepareOnward.ts";
import { stepParticle } from "./stepParticle.ts";

/**
 * Runs particles from where they stand to the end and counts them as an ensemble counts its members. The past counts for
 * nothing: no sun, no load, a full bank.
 * @param ensemble their own scenario, or one with changes that hold from here on
 * @param to how many of them, from the first
 */
export async function runParticles(
  ensemble: PreparedEnsemble,
  particles: Particles,
  to: number,
  hooks: LearnHooks = {},
): Promise<OddsPart> {
  const { prepared } = ensemble;
  const counting = countingOf(ensemble);
  const onward = prepareOnward(ensemble, particles);
  const room = makeMemberRoom(ensemble);
  const part = makeOddsPart(prepared, ensemble.seed, 0, to);
  for (let i = 0; i < particles.step; i++) room.run.rows[i * ROW_SLOTS + ROW_STORED_AH] = prepared.bank.fullAh;
  for (let p = 0; p < to; p++) {
    await breathe(hooks, p);
    stepParticle(onward, p, room);
    stepCount(prepared, room.run, 0, p, counting, part);
  }
  return part;
}
