import { openStream } from "../chance/stream.ts";
import type { MemberRoom } from "../ensemble/stepMember.ts";
import { drawAir } from "../sky/airAnomaly.ts";
import { blockAir, drawBlockDays, type PreparedBlocks } from "../sky/blockDays.ts";
import { clearnessOfNormals, drawDailyNormals } from "../sky/dailyClearness.ts";
import { MOST_DAY_INDEX } from "../sky/dayClearIndex.ts";
import { CLOUD_FIT, drawHourlyCloud, holdDayTotal } from "../sky/hourlyCloud.ts";
import { bringToKnown } from "../sky/knownDays.ts";
import type { PreparedSkies } from "../sky/skyEnsemble.ts";
import { splitPrepared } from "../sky/splitDiffuse.ts";
import { TRAIT_CLIMATE, TRAITS } from "./particles.ts";
import type { Onward } from "./prepareOnward.ts";

/** Normal values stay inside the tables. */
const FARTHEST = 4.7;
/** Ways on through a weather file that are drawn, of which the one most like the last settled day is taken. */
const TRIED = 3;

/**
 * Draws the sky of a particle: settled days as they were, the days ahead from its own stream, leaning on the settled ones by
 * their correlation as on any day that is known. Particles at the first step meet the sky of the member of their number.
 */
export function drawSkyOnward(onward: Onward, p: number, room: MemberRoom): void {
  const { ensemble, particles } = onward;
  const { skies } = ensemble;
  const { whole, climate, blocks, air, state, indexOfDay, indexOfLight, indexOfStep } = skies;
  const { settled, words } = particles;
  if (climate !== null) {
    normalsOnward(onward, p);
    clearnessOfNormals(climate.clearness, skies.normalOfDay, skies.ktOfDay);
    for (let day = 0; day < whole.days; day++) {
      indexOfDay[day] = Math.min(MOST_DAY_INDEX, skies.ktOfDay[day]! * whole.clearIndexPerKt[day]!);
    }
    openStream(state, words, p, "cloud");
    drawHourlyCloud(climate.cloud, state, indexOfDay, indexOfLight);
  } else if (blocks !== null) {
    fileDaysOnward(onward, p, blocks);
    for (let day = 0; day < whole.days; day++) {
      indexOfDay[day] = blocks.dayIndex[blocks.chosen[day]!]!;
      lightOfFileDay(skies, blocks, day);
    }
  }
  for (let k = 0; k < indexOfLight.length; k++) {
    const step = whole.step[k]!;
    if (step >= 0) indexOfStep[step] = indexOfLight[k]!;
  }
  const passingAt = p * settled.passingSteps;
  for (let i = 0; i < settled.passingSteps; i++) {
    indexOfStep[settled.passingFrom + i] = particles.passing[passingAt + i]!;
  }
  splitPrepared(skies.split, indexOfDay, indexOfStep, room.light);
  if (air !== null) {
    openStream(state, ensemble.words, particles.founder[p]!, "air");
    drawAir(air, state, indexOfDay, room.airTempC);
  } else if (blocks !== null && blocks.slotTempC !== null) {
    blockAir(blocks, blocks.slotTempC, skies.dayOfStep, room.airTempC);
  }
}

/** Normal values of all days, into `skies.normalOfDay`. */
function normalsOnward({ ensemble, particles, known, settledDay, settledAt }: Onward, p: number): void {
  const { skies } = ensemble;
  const { state, normalOfDay: normals } = skies;
  const { errorMoves, clearness } = skies.climate!;
  const { words, settled } = particles;
  openStream(state, words, p, "sky");
  drawDailyNormals(clearness, state, normals);
  if (errorMoves !== null) {
    const error = particles.traits[p * TRAITS + TRAIT_CLIMATE]!;
    for (let day = 0; day < normals.length; day++) {
      normals[day] = Math.max(-FARTHEST, Math.min(FARTHEST, normals[day]! + errorMoves[day]! * error));
    }
  }
  const row = p * normals.length;
  for (let k = 0; k < settledDay.length; k++)
    known!.reading[settledAt[k]!] = particles.skyNormal[row + settledDay[k]!]!;
  if (known !== null) {
    openStream(state, words, p, "sureness");
    bringToKnown(known, state, normals);
  }
  for (let day = 0; day < settled.days; day++) normals[day] = particles.skyNormal[row + day]!;
}

/** Days of the weather file, into `blocks.chosen`. */
function fileDaysOnward({ ensemble, particles }: Onward, p: number, blocks: PreparedBlocks): void {
  const { state, indexOfDay } = ensemble.skies;
  const { settled, words, count } = particles;
  const row = p * blocks.chosen.length;
  if (settled.days === 0) {
    openStream(state, words, p, "blocks");
    drawBlockDays(blocks, state, indexOfDay);
    return;
  }
  const last = blocks.dayIndex[particles.fileDay[row + settled.days - 1]!]!;
  let best = 0;
  let least = 10;
  // One turn more than are tried, to draw the best of them again.
  for (let k = 0; k <= TRIED; k++) {
    openStream(state, words, p + (k < TRIED ? k : best) * count, "blocks");
    drawBlockDays(blocks, state, indexOfDay);
    const away = Math.abs(indexOfDay[settled.days - 1]! - last);
    if (k < TRIED && away < least) {
      least = away;
      best = k;
    }
  }
  for (let day = 0; day < settled.days; day++) blocks.chosen[day] = particles.fileDay[row + day]!;
}

/** The clear-sky index of a day's light by the file's day that was chosen for it. */
function lightOfFileDay({ whole, indexOfDay, indexOfLight }: PreparedSkies, blocks: PreparedBlocks, day: number): void {
  const source = blocks.chosen[day]! * blocks.slots;
  const from = whole.dayStart[day]!;
  const to = whole.dayStart[day + 1]!;
  for (let k = from; k < to; k++) indexOfLight[k] = blocks.slotIndex[source + blocks.slotOfLight[k]!]!;
  holdDayTotal(whole.clearWm2, from, to, indexOfDay[day]!, CLOUD_FIT.brightest, indexOfLight);
}
