import { expect, test } from "vitest";
import { airTemperature } from "../../../engine/sky/airTemperature.ts";
import { solarHour } from "../../../engine/sky/solarDay.ts";

const HOUR_MS = 3_600_000;
const times = Float64Array.from({ length: 1440 }, (_, i) => Date.UTC(2026, 5, 1) + i * 60_000);
const oneDay = new Int32Array(1440);

test("the day is warmest at 15 and coldest at 3, true solar time, wherever the clock stands", () => {
  for (const longitudeDeg of [-120, 0, 45]) {
    const tempC = airTemperature(times, longitudeDeg, oneDay, Float64Array.of(24), Float64Array.of(10));
    const warmest = tempC.indexOf(Math.max(...tempC));
    const coldest = tempC.indexOf(Math.min(...tempC));
    expect(Math.abs(solarHour(times[warmest]!, longitudeDeg) - 15)).toBeLessThan(0.02);
    expect(Math.abs(solarHour(times[coldest]!, longitudeDeg) - 3)).toBeLessThan(0.02);
    expect(tempC[warmest]).toBeCloseTo(24, 3);
    expect(tempC[coldest]).toBeCloseTo(10, 3);
  }
});

test("another warmest hour moves the whole curve", () => {
  const at = (warmest: number) =>
    airTemperature(
      Float64Array.of(times[0]! + 14 * HOUR_MS),
      0,
      new Int32Array(1),
      Float64Array.of(20),
      Float64Array.of(0),
      warmest,
    )[0]!;
  expect(at(14)).toBeGreaterThan(at(16));
});

test("a day colder than its own lowest is refused", () => {
  expect(() => airTemperature(times, 0, oneDay, Float64Array.of(5), Float64Array.of(10))).toThrow("maxC[0]");
});
