import { expect, test } from "vitest";
import { AFTERNOON_FIT, afternoonLean } from "../../../engine/sky/afternoonCloud.ts";
import { noonHeightDeg } from "../../../engine/sky/dailyExtraterrestrialWhM2.ts";

const HOUR_MS = 3_600_000;
/** Lean at 8, 12 and 16 o'clock of mean solar time on the 21st of a month. */
function leans(latitudeDeg: number, elevationM: number, month: number, longitudeDeg = 0) {
  const midnightMs = Date.UTC(2026, month - 1, 21) - longitudeDeg * 240_000;
  const times = Float64Array.of(8, 12, 16).map((hour) => midnightMs + hour * HOUR_MS);
  return [...afternoonLean({ latitudeDeg, longitudeDeg, elevationM }, times)] as [number, number, number];
}

test("high ground leans to bright mornings and dull afternoons in summer, on both halves of the globe and at any longitude", () => {
  const [morning, noon, afternoon] = leans(40, 1800, 6);
  expect(morning).toBeGreaterThan(0.4);
  expect(morning).toBeLessThanOrEqual(AFTERNOON_FIT.lean);
  expect(afternoon).toBeLessThan(-0.4);
  expect(noon).toBeLessThan(morning);
  expect(noon).toBeGreaterThan(afternoon);
  expect(leans(-40, 1800, 12)[0]).toBeCloseTo(morning, 1);
  expect(leans(40, 1800, 6, -105)[2]).toBeCloseTo(afternoon, 3);
});

test("lowlands and winters do not lean, and half of the height or of the season leans half", () => {
  for (const still of [leans(40, 300, 6), leans(40, 1800, 12), leans(56, 20, 6), leans(69, 1200, 1)]) {
    expect(still).toEqual([0, 0, 0]);
  }
  expect(leans(40, 1000, 6)[0] / leans(40, 1500, 6)[0]).toBeCloseTo(0.5, 4);
  // At 60.94° north the solstice sun stands 52.5° high at noon, half of the way from 45 to 60.
  expect(leans(60.94, 1500, 6)[0] / leans(40, 1500, 6)[0]).toBeCloseTo(0.5, 1);
});

test("the sun's height at noon is the almanac's at solstice and equinox", () => {
  // 23.44° of obliquity; Spencer's series is good to half a degree.
  expect(noonHeightDeg(40, Date.UTC(2026, 5, 21))).toBeCloseTo(90 - 40 + 23.44, 1);
  expect(noonHeightDeg(-30, Date.UTC(2026, 5, 21))).toBeCloseTo(90 - 30 - 23.44, 1);
  expect(Math.abs(noonHeightDeg(0, Date.UTC(2026, 2, 20)) - 90)).toBeLessThan(1);
  expect(noonHeightDeg(80, Date.UTC(2026, 11, 21))).toBeLessThan(0);
});
