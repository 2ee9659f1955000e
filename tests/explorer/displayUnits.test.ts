import { afterEach, describe, expect, test } from "vitest";
import {
  differenceInUnits,
  displayUnit,
  fromDisplay,
  inUnits,
  showUnits,
  toDisplay,
} from "../../engine/words/displayUnits.ts";
import { typedWithUnit } from "../../explorer/parts/typedQuantity.ts";

afterEach(() => showUnits(() => "metric"));

// NIST Special Publication 811 (2008), appendix B.8: 1 ft = 3.048 E-01 m, 1 lb = 4.535 924 E-01 kg, 1 mi = 1.609 344 E+03 m,
// and section B.9: t/°F = 1.8 t/°C + 32. Shown with four figures.
const published = [
  { value: 100, unit: "m", shown: 328.1, shownUnit: "ft" },
  { value: 10, unit: "kg", shown: 22.05, shownUnit: "lb" },
  { value: 100, unit: "km", shown: 62.14, shownUnit: "mi" },
  { value: 10, unit: "m/s", shown: 22.37, shownUnit: "mph" },
  { value: -40, unit: "°C", shown: -40, shownUnit: "°F" },
  { value: 20, unit: "°C", shown: 68, shownUnit: "°F" },
];

describe("shown in feet, pounds and °F", () => {
  test.each(published)("$value $unit is $shown $shownUnit", ({ value, unit, shown, shownUnit }) => {
    showUnits(() => "imperial");
    expect(displayUnit(unit)).toBe(shownUnit);
    expect(toDisplay(value, unit)).toBe(shown);
    // Four figures come back to within one in two thousand.
    expect(Math.abs(fromDisplay(shown, unit) - value)).toBeLessThanOrEqual(Math.abs(value) / 2000);
  });

  test("electric units stay, and metric is shown as it is stored", () => {
    showUnits(() => "imperial");
    for (const unit of ["V", "A", "Ah", "W", "°", "mm²", ""]) expect(toDisplay(12.345678, unit)).toBe(12.345678);
    showUnits(() => "metric");
    expect(toDisplay(12.345678, "m")).toBe(12.345678);
  });

  test("a difference of temperature has no zero point", () => {
    showUnits(() => "imperial");
    expect(differenceInUnits(10, "°C")).toBe("18\u202f°F");
    expect(inUnits(10, "°C")).toBe("50\u202f°F");
  });
});

test("a unit typed behind a number counts, whichever is shown", () => {
  for (const system of ["metric", "imperial"] as const) {
    showUnits(() => system);
    expect(typedWithUnit("10 ft", "m")).toBe(3.048);
    expect(typedWithUnit("3,5 m", "m")).toBe(3.5);
    expect(typedWithUnit("50°F", "°C")).toBe(10);
    expect(typedWithUnit("2 lb", "kg")).toBe(0.9071847);
    expect(typedWithUnit("10 kg", "m")).toBeNull();
    expect(typedWithUnit("many ft", "m")).toBeNull();
  }
});
