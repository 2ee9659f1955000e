import { expect, test } from "vitest";
import { clearnessOfGhi } from "../../../engine/sky/clearnessOfGhi.ts";
import { dailyExtraterrestrialWhM2 } from "../../../engine/sky/dailyExtraterrestrialWhM2.ts";
import { usualClearness } from "../../../engine/sky/usualClearness.ts";

const twelve = (value: number) => Array.from({ length: 12 }, () => value);
const year = Array.from({ length: 365 }, (_, day) => new Date(Date.UTC(2025, 0, 1 + day)).toISOString().slice(0, 10));
const climate = { kt: twelve(0.5), sd: twelve(0.12) };

test("a mean that leaves no room under the brightest day is lowered until days can differ by their spread, and counted", () => {
  const brightest = Float64Array.from([0.8, 0.55, 0.62, 0]);
  const { meanKt, sdKt, heldDays } = usualClearness(climate, year.slice(0, 4), brightest);
  expect(meanKt[0]).toBeCloseTo(0.5, 9);
  expect(meanKt[1]).toBeCloseTo(0.55 - 1.1 * 0.12, 9);
  expect(meanKt[2]).toBeCloseTo(0.62 - 1.1 * 0.12, 9);
  expect([...sdKt]).toEqual([0.12, 0.12, 0.12, 0.12].map((sd) => expect.closeTo(sd, 9)));
  expect(heldDays).toBe(2);
});

test("under a very low sun the spread shrinks with the brightest day, and never to nothing", () => {
  const { meanKt, sdKt } = usualClearness(climate, year.slice(0, 1), Float64Array.of(0.2));
  expect(sdKt[0]).toBeCloseTo(0.06, 9);
  expect(meanKt[0]).toBeCloseTo(0.2 - 1.1 * 0.06, 9);
});

test.each([0, 35, 60, 66, -60])("typed light on the level comes back as each month's mean, at %d°", (latitudeDeg) => {
  const h0 = year.map((date) => dailyExtraterrestrialWhM2(latitudeDeg, Date.parse(`${date}T12:00:00Z`)));
  const month = year.map((date) => Number(date.slice(5, 7)) - 1);
  const mean = (values: number[], m: number) =>
    values.reduce((sum, value, day) => (month[day] === m ? sum + value : sum), 0) /
    month.filter((one) => one === m).length;
  const stated = twelve(0).map((_, m) => (mean(h0, m) / 1000) * (0.45 + 0.1 * Math.cos(m)));
  const { meanKt } = usualClearness({ kt: clearnessOfGhi(stated, latitudeDeg), sd: twelve(0.1) }, year);
  const got = h0.map((wh, day) => wh * meanKt[day]!);
  for (let m = 0; m < 12; m++) if (stated[m]! > 0.1) expect(mean(got, m) / 1000 / stated[m]!).toBeCloseTo(1, 2);
});

test("the last of October at 60° is not brighter than a cloudless day because its month's mean was", () => {
  // 1.3 kWh/m² a day is a usual October there; H0 falls from 4.3 to 1.9 kWh/m² within it.
  const kwh = [0.4, 1.1, 2.4, 3.9, 5.2, 5.6, 5.2, 4.1, 2.5, 1.3, 0.5, 0.2];
  const last = year.indexOf("2025-10-31");
  const { meanKt } = usualClearness({ kt: clearnessOfGhi(kwh, 60), sd: twelve(0.1) }, year);
  const h0 = dailyExtraterrestrialWhM2(60, Date.UTC(2025, 9, 31, 12)) / 1000;
  expect(1.3 / h0).toBeGreaterThan(0.6); // what the mean laid on every day alike would be
  expect(meanKt[last]!).toBeLessThan(0.42);
  expect(meanKt[last]!).toBeGreaterThan(0.3);
});

test("months without light borrow a clearness, and a sum that no sky gives is held at 0.9", () => {
  const kwh = [0, 0.2, 1.5, 3.5, 20, 5.5, 5, 3.5, 1.8, 0.5, 0.01, 0];
  const kt = clearnessOfGhi(kwh, 78);
  expect(kt.every((value) => value >= 0 && value <= 0.9)).toBe(true);
  expect(kt[4]).toBeCloseTo(0.9, 5);
  expect(kt[11]).toBeGreaterThan(0);
});
