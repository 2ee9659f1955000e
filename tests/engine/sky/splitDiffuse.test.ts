import fc from "fast-check";
import { expect, test } from "vitest";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { makeSkyLight, splitDiffuse } from "../../../engine/sky/splitDiffuse.ts";

/** One step under a sun at `elevationDeg`, its light brought to `index` of the cloudless sky's. */
function lightAt(elevationDeg: number, index: number, turbidity = 3, elevationM = 100) {
  const sun = { azimuthDeg: Float64Array.of(180), elevationDeg: Float64Array.of(elevationDeg) };
  const clear = clearSky(sun, Float64Array.of(Date.UTC(2026, 5, 1, 12)), 0, elevationM, turbidity);
  const light = makeSkyLight(1);
  splitDiffuse(clear, Float64Array.of(index), light);
  return {
    ghi: light.ghiWm2[0]!,
    dni: light.dniWm2[0]!,
    dhi: light.dhiWm2[0]!,
    clearGhi: clear.ghiWm2[0]!,
    clearDni: clear.dniWm2[0]!,
    clearDhi: clear.dhiWm2[0]!,
    sine: clear.sinElevation[0]!,
  };
}

test("without cloud the split is the clear sky's own", () => {
  for (const elevationDeg of [1, 5, 20, 60]) {
    const light = lightAt(elevationDeg, 1);
    expect(light.dni).toBeCloseTo(light.clearDni, 9);
    expect(light.dhi).toBeCloseTo(light.clearDhi, 9);
  }
});

test("the split is continuous at the clear end", () => {
  const below = lightAt(40, 0.9999);
  const above = lightAt(40, 1.0001);
  expect(Math.abs(above.dni - below.dni)).toBeLessThan(0.5);
  expect(Math.abs(above.dhi - below.dhi)).toBeLessThan(0.5);
});

test("under heavy cloud nearly all light comes from the sky, as Erbs has it", () => {
  const light = lightAt(40, 0.25); // an overcast sky, Kasten & Czeplak 1980
  expect(light.dhi / light.ghi).toBeGreaterThan(0.96);
});

test("light over the clear sky's is light from the sky", () => {
  const light = lightAt(40, 1.2);
  expect(light.dni).toBe(light.clearDni);
  expect(light.dhi).toBeCloseTo(light.clearDhi + 0.2 * light.clearGhi, 9);
});

test("by night there is none, whatever the index", () => {
  const { ghi, dni, dhi } = lightAt(-3, 5);
  expect([ghi, dni, dhi]).toEqual([0, 0, 0]);
});

test("sky light and beam always add up to the light on the level, and none is negative", () => {
  const elevation = fc.double({ min: -5, max: 90, noNaN: true });
  const index = fc.double({ min: 0, max: 2, noNaN: true });
  const turbidity = fc.double({ min: 1, max: 8, noNaN: true });
  fc.assert(
    fc.property(elevation, index, turbidity, (elevationDeg, clearIndex, linke) => {
      const light = lightAt(elevationDeg, clearIndex, linke);
      expect(light.ghi).toBeCloseTo(clearIndex * light.clearGhi, 9);
      expect(light.dhi + light.dni * light.sine).toBeCloseTo(light.ghi, 9);
      expect(Math.min(light.ghi, light.dni, light.dhi)).toBeGreaterThanOrEqual(0);
      expect(light.dni).toBeLessThanOrEqual(light.clearDni);
    }),
  );
});
