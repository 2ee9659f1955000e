import { expect, test } from "vitest";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { intervalOf } from "../../../engine/learn/lessons.ts";
import {
  firstParticles,
  generationWords,
  TRAIT_CLIMATE,
  TRAIT_KEENNESS,
  TRAITS,
} from "../../../engine/learn/particles.ts";
import { prepareOnward } from "../../../engine/learn/prepareOnward.ts";
import { resampled } from "../../../engine/learn/resampled.ts";
import { runParticles } from "../../../engine/learn/runParticles.ts";
import { makeSnapshots, takeSnapshots } from "../../../engine/learn/snapshots.ts";
import { stepParticle } from "../../../engine/learn/stepParticle.ts";
import { FIGURE_CANOPY_NORMAL, FIGURE_YIELD_SHARE } from "../../../engine/run/memberFigures.ts";
import { stepPower } from "../../../engine/run/stepRun.ts";
import { CONNECTED, LAST_A, STORED_AH } from "../../../engine/run/stepState.ts";
import { learnEnsemble } from "./learnScenario.ts";

const GENERATOR = {
  kind: "generator" as const,
  id: "genny",
  name: "Generator",
  continuousW: 900,
  chargerA: 30,
  allowed: [{ from: "08:00", to: "22:00" }],
  startShare: 0.6,
  stopShare: 0.8,
  burnIdleLPerH: 0.25,
  burnFullLPerH: 0.7,
  fuelL: 1.2,
};

test("a run that is gone on from a snapshot is the run, to the last bit, generator and fuel included", () => {
  const ensemble = learnEnsemble({ sources: [GENERATOR] });
  const { grid, bank } = ensemble.prepared;
  const stops = Array.from({ length: grid.steps }, (_, k) => k + 1);
  const particles = firstParticles(ensemble, 6);
  const onward = prepareOnward(ensemble, particles);
  const snapshots = makeSnapshots(ensemble, 6, stops);
  const room = makeMemberRoom(ensemble);
  let ranOn = 0;
  for (let p = 0; p < 6; p++) {
    stepParticle(onward, p, room);
    takeSnapshots(ensemble, room, p, snapshots);
    const whole = room.run.rows.slice();
    for (const step of stops) {
      const at = p * stops.length + step - 1;
      room.run.state[STORED_AH] = snapshots.chargeShare[at]! * bank.fullAh;
      room.run.state[LAST_A] = snapshots.lastA[at]!;
      room.run.state[CONNECTED] = snapshots.connected[at]!;
      room.run.runs[0] = snapshots.running[at]!;
      room.run.fuelLeftL[0] = snapshots.fuelL[at]!;
      stepPower(ensemble.prepared, room.run, 1, step);
      const off = room.run.rows.reduce((most, value, k) => Math.max(most, Math.abs(value - whole[k]!)), 0);
      expect(off).toBeLessThan(1e-9); // charge as a share and back costs the last bit, and fuel is summed from behind
      ranOn += snapshots.running[at]!;
    }
  }
  expect(ranOn).toBeGreaterThan(0);
});

/** Carries particles to a step, keeps all of them alike, and draws their futures again. */
function carried(ensemble: PreparedEnsemble, count: number, step: number) {
  const first = firstParticles(ensemble, count);
  const onward = prepareOnward(ensemble, first);
  const snapshots = makeSnapshots(ensemble, count, [step]);
  const room = makeMemberRoom(ensemble);
  for (let p = 0; p < count; p++) {
    stepParticle(onward, p, room);
    takeSnapshots(ensemble, room, p, snapshots);
  }
  const even = new Float64Array(count).fill(1 / count);
  return resampled(ensemble.prepared, first, snapshots, 0, even, generationWords(ensemble, 1));
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [ma, mb] = [mean(a), mean(b)];
  const product = mean(a.map((value, k) => (value - ma) * (b[k]! - mb)));
  const square = (values: readonly number[], m: number) => mean(values.map((value) => (value - m) ** 2));
  return product / Math.sqrt(square(a, ma) * square(b, mb));
}

const COUNT = 3000;

/** Clear-sky index of days 0, 1 and 2 of every particle. */
function dayIndices(ensemble: PreparedEnsemble, particles = firstParticles(ensemble, COUNT)) {
  const onward = prepareOnward(ensemble, particles);
  const room = makeMemberRoom(ensemble);
  const days: number[][] = [[], [], []];
  for (let p = 0; p < COUNT; p++) {
    stepParticle(onward, p, room);
    days.forEach((list, day) => {
      list.push(ensemble.skies.indexOfDay[day]!);
    });
  }
  return days as [number[], number[], number[]];
}

test("futures drawn again have the spread, and lean on the days behind, as the members' own", async () => {
  const ensemble = learnEnsemble();
  const own = dayIndices(ensemble);
  // 23:00 of the first day: that day is settled, the two that follow are drawn again.
  const particles = carried(ensemble, COUNT, 26);
  const fresh = dayIndices(ensemble, particles);
  expect(fresh[0]).toEqual(own[0]);
  expect(fresh[1]).not.toEqual(own[1]);
  // Sampling error of a correlation of 3000: 0.018.
  expect(correlation(own[0], own[1])).toBeGreaterThan(0.1);
  expect(Math.abs(correlation(fresh[0], fresh[1]) - correlation(own[0], own[1]))).toBeLessThan(0.06);
  expect(Math.abs(correlation(fresh[1], fresh[2]) - correlation(own[1], own[2]))).toBeLessThan(0.06);
  // Copies of other streams: the redrawn day has no more to do with the day as it was than through the day before.
  expect(correlation(fresh[1], own[1])).toBeLessThan(0.2);
  const before = intervalOf((await runParticles(ensemble, firstParticles(ensemble, COUNT), COUNT)).outcomes.endShare);
  const after = intervalOf((await runParticles(ensemble, particles, COUNT)).outcomes.endShare);
  for (const name of ["p10", "p50", "p90"] as const) expect(Math.abs(after[name] - before[name])).toBeLessThan(0.02);
});

test("a day whose morning lies behind keeps its afternoon, step by step", () => {
  const ensemble = learnEnsemble();
  const count = 10;
  const own = firstParticles(ensemble, count);
  const room = makeMemberRoom(ensemble);
  const ownLight: number[][] = [];
  const onward = prepareOnward(ensemble, own);
  for (let p = 0; p < count; p++) {
    stepParticle(onward, p, room);
    ownLight.push(Array.from(room.light.ghiWm2));
  }
  const particles = carried(ensemble, count, 52); // 12:00 of the second day
  const again = prepareOnward(ensemble, particles);
  for (let p = 0; p < count; p++) {
    stepParticle(again, p, room);
    const today = Array.from(ensemble.prepared.grid.localDay.keys()).filter(
      (i) => ensemble.prepared.grid.localDay[i] === 1,
    );
    for (const i of today) expect(room.light.ghiWm2[i]).toBe(ownLight[p]![i]);
    expect(Array.from(room.light.ghiWm2)).not.toEqual(ownLight[p]);
  }
});

test("the keenness of the event and of the passing day is kept, days ahead have their own", () => {
  const ensemble = learnEnsemble();
  const room = makeMemberRoom(ensemble);
  const { dayNormal } = ensemble.operators;
  stepParticle(prepareOnward(ensemble, firstParticles(ensemble, 10)), 4, room);
  const own = Array.from(dayNormal);
  stepParticle(prepareOnward(ensemble, carried(ensemble, 10, 52)), 4, room);
  expect(Array.from(dayNormal.slice(0, 2))).toEqual(own.slice(0, 2));
  expect(dayNormal[2]).not.toBe(own[2]);
});

test("widened figures are as many times as far off", () => {
  const ensemble = learnEnsemble();
  const spreadOf = (widened: number, trait: number) => {
    const { traits } = firstParticles(ensemble, 500, widened);
    const values = Array.from({ length: 500 }, (_, p) => traits[p * TRAITS + trait]!);
    const mean = values.reduce((sum, value) => sum + value, 0) / 500;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 500);
  };
  for (const trait of [FIGURE_YIELD_SHARE, FIGURE_CANOPY_NORMAL, TRAIT_KEENNESS, TRAIT_CLIMATE]) {
    expect(spreadOf(4, trait) / spreadOf(1, trait)).toBeCloseTo(4, 9);
  }
});
