import { expect, test } from "vitest";
import { bestWeights } from "../../../engine/place/bestWeights.ts";
import type { ClimateStation } from "../../../engine/place/climateTables.ts";
import { distanceKm } from "../../../engine/place/distanceKm.ts";

const none = Array.from({ length: 12 }, () => null);
const station = (lat: number, lon: number, src = "a"): ClimateStation => ({
  ...{ id: `${lat} ${lon}`, name: "", country: "", lat, lon, elev: 0, src, years: 1 },
  ...{ kt: none, sd: none, r1: none, tmax: none, tmin: none, wind: none },
});
const model = (own: number, shared = 0) => ({ background: 0.04, reachKm: 300, station: () => ({ own, shared }) });

test("one station by hand: its covariance with the place over its own variance and error", () => {
  const place = { lat: 45, lon: 0 };
  const one = station(46, 0);
  const like = 0.0016 * Math.exp(-distanceKm(place, one) / 300);
  const { weight, error } = bestWeights(place, [one], model(0.03));
  expect(weight[0]).toBeCloseTo(like / (0.0016 + 0.0009), 12);
  expect(error).toBeCloseTo(Math.sqrt(0.0016 - (like * like) / 0.0025), 12);
});

test("a station without error at the place itself is believed, and the rest then says nothing", () => {
  const { weight, error } = bestWeights({ lat: 45, lon: 0 }, [station(45, 0), station(45, 1)], model(1e-6));
  expect(weight[0]).toBeCloseTo(1, 4);
  expect(weight[1]).toBeCloseTo(0, 4);
  expect(error).toBeLessThan(1e-4);
});

test("two stations beside one another count hardly more than one, however many of them there are", () => {
  const place = { lat: 45, lon: 0 };
  const sum = (weights: readonly number[]) => weights.reduce((total, weight) => total + weight, 0);
  const one = bestWeights(place, [station(46, 0)], model(0.01));
  const ten = Array.from({ length: 10 }, (_, k) => station(46, 0.01 * k));
  expect(sum(bestWeights(place, ten, model(0.01)).weight)).toBeLessThan(1.1 * sum(one.weight));
});

test("an error that all of a source share is not averaged away; of two sources, half of it is", () => {
  const place = { lat: 45, lon: 0 };
  const around = [station(45.2, 0), station(44.8, 0), station(45, 0.3), station(45, -0.3)];
  const same = bestWeights(place, around, model(0.01, 0.03));
  const mixed = bestWeights(
    place,
    around.map((one, k) => ({ ...one, src: k % 2 === 0 ? "a" : "b" })),
    model(0.01, 0.03),
  );
  const alone = bestWeights(place, around, model(0.01));
  expect(same.error).toBeGreaterThan(1.5 * alone.error);
  expect(mixed.error).toBeLessThan(same.error);
  expect(mixed.error).toBeGreaterThan(alone.error);
});

test("the weights are the ones that leave the least error", () => {
  const place = { lat: 45, lon: 0 };
  const all = [station(45.5, 0.5), station(44, 1), station(47, -3)];
  const { weight } = bestWeights(place, all, model(0.02));
  const like = (a: { lat: number; lon: number }, b: { lat: number; lon: number }) =>
    0.0016 * Math.exp(-distanceKm(a, b) / 300);
  const square = (w: readonly number[]) => {
    let sum = 0.0016;
    all.forEach((a, i) => {
      sum -= 2 * w[i]! * like(place, a);
      all.forEach((b, j) => {
        sum += w[i]! * w[j]! * (like(a, b) + (i === j ? 0.0004 : 0));
      });
    });
    return sum;
  };
  for (let k = 0; k < 3; k++)
    for (const move of [-0.02, 0.02])
      expect(square(weight.map((w, j) => (j === k ? w + move : w)))).toBeGreaterThan(square(weight));
});

test("without a station there is the background's own error", () => {
  expect(bestWeights({ lat: 0, lon: 0 }, [], model(0.02))).toEqual({ weight: [], error: 0.04 });
});
