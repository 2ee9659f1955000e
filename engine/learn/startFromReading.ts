import { openCircuitV } from "../bank/bankVoltage.ts";
import { nextNormal, openStream, STREAM_WORDS } from "../chance/stream.ts";
import { FIGURE_CAPACITY_SHARE } from "../run/memberFigures.ts";
import type { Prepared } from "../run/prepare.ts";
import type { Observation } from "./observations.ts";
import { type Particles, TRAIT_CHARGE, TRAITS } from "./particles.ts";

/**
 * Particles that go on from what was read, each off by a draw of its own, where too few members lead there. Without a reading of
 * charge they stay where they are.
 * @param errorTimes how many times its stated error the reading is let be off
 */
export function startFromReading(
  prepared: Prepared,
  particles: Particles,
  observations: readonly Observation[],
  errorTimes: number,
): Particles {
  const said = observations.findLast(({ kind }) => kind === "charge" || kind === "outAh" || kind === "restV");
  if (said === undefined) return particles;
  const { bank } = prepared;
  const traits = particles.traits.slice();
  const state = new Uint32Array(STREAM_WORDS);
  for (let p = 0; p < particles.count; p++) {
    openStream(state, particles.words, p, "sureness");
    const read = said.value + errorTimes * said.sigma * nextNormal(state);
    let share = read;
    if (said.kind === "outAh") share = 1 - read / (bank.fullAh * traits[p * TRAITS + FIGURE_CAPACITY_SHARE]!);
    if (said.kind === "restV") share = shareOfRestV(prepared, read);
    traits[p * TRAITS + TRAIT_CHARGE] = Math.max(0, Math.min(1, share));
  }
  return { ...particles, traits };
}

/** The charge at which the resting bank shows so many volts, 0…1. */
export function shareOfRestV({ bank }: Pick<Prepared, "bank">, volts: number): number {
  let low = 0;
  let high = 1;
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2;
    if (openCircuitV(bank, middle * bank.fullAh) < volts) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
