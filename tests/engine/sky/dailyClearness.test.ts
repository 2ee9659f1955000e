import { expect, test } from "vitest";
import { openStream, seedWords } from "../../../engine/chance/stream.ts";
import {
  clearnessOfNormals,
  DAILY_FIT,
  drawDailyNormals,
  type MonthlyClearness,
  normalCorrelation,
  prepareDailyClearness,
} from "../../../engine/sky/dailyClearness.ts";

const twelve = (value: number) => Array.from({ length: 12 }, () => value);
const flat = (kt: number, sd: number, r1: number): MonthlyClearness => ({
  kt: twelve(kt),
  sd: twelve(sd),
  r1: twelve(r1),
});
const june = Array.from({ length: 30 }, (_, day) => `2026-06-${String(day + 1).padStart(2, "0")}`);

function drawn(climate: MonthlyClearness, dates: readonly string[], members: number) {
  const prepared = prepareDailyClearness(climate, dates);
  const state = new Uint32Array(4);
  const words = seedWords("daily");
  return {
    prepared,
    members: Array.from({ length: members }, (_, member) => {
      const normals = new Float64Array(dates.length);
      const kt = new Float64Array(dates.length);
      openStream(state, words, member, "sky");
      drawDailyNormals(prepared, state, normals);
      clearnessOfNormals(prepared, normals, kt);
      return { normals, kt };
    }),
  };
}
const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const correlation = (pairs: [number, number][]) => {
  const [ma, mb] = [mean(pairs.map(([a]) => a)), mean(pairs.map(([, b]) => b))];
  const cross = mean(pairs.map(([a, b]) => (a - ma) * (b - mb)));
  return cross / Math.sqrt(mean(pairs.map(([a]) => (a - ma) ** 2)) * mean(pairs.map(([, b]) => (b - mb) ** 2)));
};

// Sampling: 6,000 members of 30 days that remember each other are worth some 40,000 days, so 0.005 in a correlation.
test.each([
  [0.55, 0.15, 0.3],
  [0.4, 0.16, 0.2],
  [0.7, 0.09, 0.38],
  [0.5, 0.12, 0.55],
  [0.3, 0.14, 0.1],
])("at Kt %d ± %d the days keep mean, spread within months and correlation %d", (kt, sd, r1) => {
  const { members } = drawn(flat(kt, sd, r1), june, 6000);
  expect(Math.abs(mean(members.flatMap((member) => [...member.kt])) - kt)).toBeLessThan(0.004);
  const within = members.map((member) => {
    const own = mean([...member.kt]);
    return member.kt.reduce((sum, value) => sum + (value - own) ** 2, 0) / (june.length - 1);
  });
  expect(Math.abs(Math.sqrt(mean(within)) / sd - 1)).toBeLessThan(0.03);
  const pairs = members.flatMap(({ kt: k }) =>
    Array.from({ length: 29 }, (_, i) => [k[i]!, k[i + 1]!] as [number, number]),
  );
  expect(Math.abs(correlation(pairs) - r1)).toBeLessThan(0.015);
});

test("what days remember is what known days are moved by", () => {
  const { prepared, members } = drawn(flat(0.5, 0.15, 0.35), june, 6000);
  for (const lag of [1, 2, 5]) {
    const got = correlation(members.map(({ normals }) => [normals[10]!, normals[10 + lag]!] as [number, number]));
    // The normal value is not quite the sum it is made from.
    expect(Math.abs(got - normalCorrelation(prepared, 10, 10 + lag))).toBeLessThan(0.04);
  }
});

test("memory is longer than a first-order one's, and fine weather lasts better than dull", () => {
  const { members } = drawn(flat(0.5, 0.15, 0.3), june, 6000);
  const at = (lag: number) =>
    correlation(members.flatMap(({ kt }) => [0, 8, 16].map((i) => [kt[i]!, kt[i + lag]!] as [number, number])));
  expect(at(2)).toBeGreaterThan(1.3 * at(1) ** 2);
  expect(at(4)).toBeGreaterThan(3 * at(1) ** 4);
  let [dark, fine] = [0, 0];
  for (const { normals } of members) {
    for (let i = 0; i < 29; i++) {
      if (normals[i]! < -1 && normals[i + 1]! < -1) dark++;
      if (normals[i]! > 1 && normals[i + 1]! > 1) fine++;
    }
  }
  expect(DAILY_FIT.fineLastsLonger).toBeGreaterThan(0);
  expect(fine).toBeGreaterThan(1.2 * dark);
});

test("the darkest and the brightest day lie inside what was ever measured", () => {
  for (const [kt, sd] of [
    [0.05, 0.02],
    [0.85, 0.2],
    [0, 0],
    [0.5, 0.3],
  ] as const) {
    for (const member of drawn(flat(kt, sd, 0.6), june.slice(0, 5), 500).members) {
      for (const value of member.kt) expect(value >= 0.02 && value <= 0.9).toBe(true);
    }
  }
});

test("a value outside its range is refused by name", () => {
  expect(() => prepareDailyClearness({ ...flat(0.5, 0.15, 0.3), kt: twelve(1.2) }, june)).toThrow("kt[0]");
  expect(() => prepareDailyClearness({ ...flat(0.5, 0.15, 0.3), r1: twelve(Number.NaN) }, june)).toThrow("r1[0]");
});
