import { expect, test } from "vitest";
import { openStream, seedWords } from "../../../engine/chance/stream.ts";
import { toGrid } from "../../../engine/grid.ts";
import {
  CLOUD_FIT,
  drawHourlyCloud,
  holdDayTotal,
  hourlySpread,
  prepareHourlyCloud,
} from "../../../engine/sky/hourlyCloud.ts";

/** A day of 12 hours of daylight, the sun's height as a half sine, in so many steps an hour. */
const day = (perHour: number) =>
  Float64Array.from({ length: 12 * perHour }, (_, k) => toGrid(900 * Math.sin((Math.PI * (k + 0.5)) / (12 * perHour))));

function days(perHour: number, index: number, members: number): Float64Array[] {
  const clear = day(perHour);
  const cloud = prepareHourlyCloud(Int32Array.of(0, clear.length), clear, 1 / perHour);
  const state = new Uint32Array(4);
  const words = seedWords("cloud");
  return Array.from({ length: members }, (_, member) => {
    const out = new Float64Array(clear.length);
    openStream(state, words, member, "cloud");
    drawHourlyCloud(cloud, state, Float64Array.of(index), out);
    return out;
  });
}
/** Hourly indices of a drawn day. */
const hours = (index: Float64Array, perHour: number) => {
  const clear = day(perHour);
  return Array.from({ length: 12 }, (_, hour) => {
    let [light, all] = [0, 0];
    for (let k = hour * perHour; k < (hour + 1) * perHour; k++) {
      light += index[k]! * clear[k]!;
      all += clear[k]!;
    }
    return { index: light / all, weight: all };
  });
};
function spread(perHour: number, index: number): number {
  let [square, weights] = [0, 0];
  for (const drawn of days(perHour, index, 600)) {
    for (const hour of hours(drawn, perHour)) {
      square += hour.weight * (hour.index - index) ** 2;
      weights += hour.weight;
    }
  }
  return Math.sqrt(square / weights);
}

test.each([0.03, 0.2, 0.55, 0.9, 1.05, 1.2])("a day of index %d gets exactly its light, in bounds", (index) => {
  for (const perHour of [1, 6]) {
    const clear = day(perHour);
    const all = clear.reduce((sum, value) => sum + value, 0);
    for (const drawn of days(perHour, index, 200)) {
      const light = drawn.reduce((sum, value, k) => sum + value * clear[k]!, 0);
      expect(Math.abs(light / all / index - 1)).toBeLessThan(1e-12);
      for (const value of drawn) expect(value >= 0 && value <= Math.max(CLOUD_FIT.brightest, index)).toBe(true);
    }
  }
});

test("broken skies vary more than clear and overcast ones", () => {
  const [overcast, broken, clear] = [spread(1, 0.15), spread(1, 0.55), spread(1, 1)];
  expect(broken).toBeGreaterThan(2 * overcast);
  expect(broken).toBeGreaterThan(3 * clear);
});

test.each([0.3, 0.55, 0.8])(
  "hours of index %d spread alike whether drawn by the hour, by ten or by twenty minutes",
  (index) => {
    // Within 12 %: what bounds and the held total take differs a little with the step.
    for (const perHour of [1, 3, 6])
      expect(Math.abs(spread(perHour, index) / hourlySpread(index) - 1)).toBeLessThan(0.12);
  },
);

test("holding a total moves nothing out of bounds and nothing against the order", () => {
  const clear = Float64Array.of(100, 500, 300);
  for (const wanted of [0, 0.1, 0.6, 1, 1.1]) {
    const index = Float64Array.of(0.2, 0.9, 1.1);
    holdDayTotal(clear, 0, 3, wanted, 1.12, index);
    expect((index[0]! * 100 + index[1]! * 500 + index[2]! * 300) / 900).toBeCloseTo(wanted, 12);
    expect(Math.min(...index)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...index)).toBeLessThanOrEqual(1.12);
    expect(index[0]! <= index[1]! && index[1]! <= index[2]!).toBe(true);
  }
  const none = Float64Array.of(0, 0, 0);
  holdDayTotal(clear, 0, 3, 0.4, 1.12, none);
  expect([...none]).toEqual([0.4, 0.4, 0.4]);
});
