import { wordsFor } from "../chance/stream.ts";
import { knownDays, type PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { type PreparedKnown, prepareKnownDays } from "../sky/knownDays.ts";
import type { Particles } from "./particles.ts";

/** What one generation of particles needs to draw its futures. */
export interface Onward {
  readonly ensemble: PreparedEnsemble;
  readonly particles: Particles;
  /** Words of each station's own stream. */
  readonly stationWords: readonly Int32Array[];
  /** The settled days as if they were known for certain, and the days ahead that something is known of. */
  readonly known: PreparedKnown | null;
  /** The settled days that the next ones lean on, and the place of each among the known days. */
  readonly settledDay: Int32Array;
  readonly settledAt: Int32Array;
}

/** Weather remembers days and, a little, weeks: settled days farther back than this say nothing that the later ones do not. */
const REMEMBERED_DAYS = 12;

/** @param ensemble the scenario that the particles go on in: their own, or one with changes at the same time and place */
export function prepareOnward(ensemble: PreparedEnsemble, particles: Particles): Onward {
  const { prepared, skies, words } = ensemble;
  const { scenario, grid } = prepared;
  const stationWords = scenario.stations.map((station) => wordsFor(particles.words, station.id));
  const own = particles.words === words ? ensemble.operators.stations.map((station) => station.words) : stationWords;
  let known: PreparedKnown | null = null;
  const settledDay: number[] = [];
  const settledAt: number[] = [];
  if (skies.climate !== null) {
    const { days } = particles.settled;
    const said = knownDays(scenario, grid.dates).map((each, day) => {
      if (day >= days) return each;
      // The value itself differs from particle to particle and is put in when its future is drawn.
      return day >= days - REMEMBERED_DAYS ? { kt: 0.5, sureness: 1 } : null;
    });
    known =
      days === 0 ? skies.climate.known : prepareKnownDays(skies.climate.clearness, said, skies.whole.clearIndexPerKt);
    known?.dayOfKnown.forEach((day, at) => {
      if (day >= days) return;
      settledDay.push(day);
      settledAt.push(at);
    });
  }
  return {
    ensemble,
    particles,
    stationWords: own,
    known,
    settledDay: Int32Array.from(settledDay),
    settledAt: Int32Array.from(settledAt),
  };
}
