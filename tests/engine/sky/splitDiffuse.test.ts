import fc from "fast-check";
import { expect, test } from "vitest";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { RIDLEY } from "../../../engine/sky/ridleyBeam.ts";
import { makeSkyLight, prepareSplit, splitDiffuse, splitPrepared } from "../../../engine/sky/splitDiffuse.ts";

/** One step under a sun at `elevationDeg`, its light, its day's and its neighbours' brought to `index` of the cloudless sky's. */
function lightAt(elevationDeg: number, index: number, turbidity = 3, elevationM = 100) {
  const sun = { azimuthDeg: Float64Array.of(180), elevationDeg: Float64Array.of(elevationDeg) };
  const clear = clearSky(sun, Float64Array.of(Date.UTC(2026, 5, 1, 12)), 0, elevationM, turbidity);
  const light = makeSkyLight(1);
  splitDiffuse(clear, ONE_DAY, 1, Float64Array.of(index), light);
  return {
    ghi: light.ghiWm2[0]!,
    dni: light.dniWm2[0]!,
    dhi: light.dhiWm2[0]!,
    clearGhi: clear.ghiWm2[0]!,
    clearDni: clear.dniWm2[0]!,
    clearDhi: clear.dhiWm2[0]!,
    sine: clear.sinElevation[0]!,
    above: clear.extraterrestrialWm2[0]!,
  };
}
const ONE_DAY = { dayOfStep: Int32Array.of(0), clearIndexPerKt: Float64Array.of(1.4) };

/** Hours of a day under a sun at 30° throughout: the beam of the middle one. */
function middleDni(dayIndex: number, indices: readonly number[], perHour = 1) {
  const steps = indices.length * perHour;
  const sun = { azimuthDeg: new Float64Array(steps).fill(180), elevationDeg: new Float64Array(steps).fill(30) };
  const clear = clearSky(sun, new Float64Array(steps).fill(Date.UTC(2026, 5, 1, 12)), 0, 100, 3);
  const split = prepareSplit(
    clear,
    { dayOfStep: new Int32Array(steps), clearIndexPerKt: Float64Array.of(1.4) },
    1 / perHour,
  );
  const light = makeSkyLight(steps);
  const index = Float64Array.from({ length: steps }, (_, i) => indices[Math.floor(i / perHour)]!);
  splitPrepared(split, Float64Array.of(dayIndex), index, light);
  const middle = Math.floor(steps / 2);
  return { dni: light.dniWm2[middle]!, clearDni: clear.dniWm2[0]!, clear, light };
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

test("under heavy cloud nearly all light comes from the sky", () => {
  const light = lightAt(40, 0.25); // an overcast sky, Kasten & Czeplak 1980
  expect(light.dhi / light.ghi).toBeGreaterThan(0.97);
});

test("the beam is the published sum's, to the fineness of its table", () => {
  const { dni, clear } = middleDni(0.6, [0.5, 0.7, 0.6]);
  const clearKt = clear.ghiWm2[0]! / (clear.extraterrestrialWm2[0]! * clear.sinElevation[0]!);
  const sum =
    -5.38 + 6.63 * 0.7 * clearKt + 0.006 * 12 - 0.007 * 30 + (1.75 * 0.6) / 1.4 + 1.31 * 0.5 * (0.5 + 0.6) * clearKt;
  const wanted = (0.7 * clear.ghiWm2[0]!) / clear.sinElevation[0]! / (1 + Math.exp(-sum));
  expect(Math.abs(dni / wanted - 1)).toBeLessThan(0.003);
  expect(RIDLEY.perHourKt).toBe(6.63);
});

test("an hour as bright as the clear sky is one only in a day and beside hours as bright", () => {
  const { dni: cloudless, clearDni } = middleDni(1, [1, 1, 1]);
  expect(cloudless).toBe(clearDni);
  const dullDay = middleDni(0.5, [1, 1, 1]).dni;
  const dullNeighbours = middleDni(1, [0.4, 1, 0.5]).dni;
  expect(dullDay).toBeLessThan(0.9 * clearDni);
  expect(dullNeighbours).toBeLessThan(0.9 * clearDni);
});

test("an hour as bright as the clear sky beside brighter ones is no clear sky either: the clear sky was taken too dull, or cloud edges add to it", () => {
  const { dni: besideBrighter, clearDni } = middleDni(1, [1.1, 1, 1.12]);
  expect(besideBrighter).toBeLessThan(0.97 * clearDni);
  // Half of the way to where the clear sky's own ends.
  const alike = middleDni(1, [1.025, 1, 1.025]).dni;
  expect(alike).toBeGreaterThan(besideBrighter);
  expect(alike).toBeLessThan(clearDni);
});

test("neighbours are an hour away, whatever the step", () => {
  for (const perHour of [3, 6]) {
    expect(middleDni(0.6, [0.4, 0.8, 0.5], perHour).dni).toBeCloseTo(middleDni(0.6, [0.4, 0.8, 0.5]).dni, 9);
  }
});

test("light over the clear sky's is light from the sky where a cloud edge adds it, and beam where all the day is brighter", () => {
  const edge = middleDni(0.8, [0.6, 1.3, 0.7]);
  expect(edge.dni).toBeLessThanOrEqual(edge.clearDni);
  const clean = lightAt(20, 1.2);
  expect(clean.dni).toBeGreaterThan(clean.clearDni);
  expect(clean.dni).toBeLessThanOrEqual(clean.above * 0.81 ** ((1 / clean.sine) ** 0.6) + 1e-3);
});

test("beside sunrise the one neighbour there is counts for both", () => {
  const sun = { azimuthDeg: new Float64Array(3).fill(90), elevationDeg: Float64Array.of(-2, 8, 16) };
  const clear = clearSky(sun, new Float64Array(3).fill(Date.UTC(2026, 5, 1, 6)), 0, 100, 3);
  const split = prepareSplit(clear, { dayOfStep: new Int32Array(3), clearIndexPerKt: Float64Array.of(1.5) }, 1);
  expect([...split.lit]).toEqual([1, 2]);
  expect([...split.before]).toEqual([1, 0]);
  expect([...split.after]).toEqual([1, 0]);
  const apart = prepareSplit(
    clear,
    { dayOfStep: Int32Array.of(0, 0, 1), clearIndexPerKt: Float64Array.of(1.5, 1.5) },
    1,
  );
  expect([...apart.before]).toEqual([0, 1]);
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
      if (clearIndex < 1) expect(light.dni).toBeLessThanOrEqual(light.clearDni);
      expect(light.dni).toBeLessThan(light.above);
    }),
  );
});
