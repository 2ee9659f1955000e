import { expect, test } from "vitest";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { dailyExtraterrestrialWhM2 } from "../../../engine/sky/dailyExtraterrestrialWhM2.ts";
import { dayClearIndex, dayLight } from "../../../engine/sky/dayClearIndex.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";

const STEP_MS = 600_000;
const bern = { latitudeDeg: 46.95, longitudeDeg: 7.45, elevationM: 540, linkeTurbidity: 3 };

/** Steps from one local clock time to another, with the local day beside each. */
function steps(startMs: number, endMs: number, utcOffsetH: number) {
  const timesMs = Float64Array.from({ length: (endMs - startMs) / STEP_MS }, (_, i) => startMs + (i + 0.5) * STEP_MS);
  const dayOf = (ms: number) => Math.floor((ms + utcOffsetH * 3_600_000) / 86_400_000);
  const localDay = Int32Array.from(timesMs, (ms) => dayOf(ms) - dayOf(timesMs[0]!));
  return { timesMs, localDay };
}
function indexOf(site: typeof bern, grid: ReturnType<typeof steps>, kt: number[]) {
  const light = dayLight(site, grid.timesMs, grid.localDay);
  const index = new Float64Array(grid.timesMs.length);
  dayClearIndex(light, Float64Array.from(kt), index);
  return { light, index };
}

test("a whole day adds up to Kt × H0", () => {
  const grid = steps(Date.UTC(2026, 5, 19, 22), Date.UTC(2026, 5, 21, 22), 2);
  const { index } = indexOf(bern, grid, [0.3, 0.6]);
  const sun = sunTrack(bern.latitudeDeg, bern.longitudeDeg, grid.timesMs);
  const clear = clearSky(sun, grid.timesMs, bern.longitudeDeg, bern.elevationM, bern.linkeTurbidity);
  for (const [day, kt] of [0.3, 0.6].entries()) {
    let wh = 0;
    for (let i = day * 144; i < (day + 1) * 144; i++) wh += (index[i]! * clear.ghiWm2[i]!) / 6;
    const h0 = dailyExtraterrestrialWhM2(bern.latitudeDeg, Date.UTC(2026, 5, 20 + day, 12));
    expect(wh / (kt * h0)).toBeCloseTo(1, 3); // 10- against 5-minute steps
  }
});

test("a day that the event only touches is as bright as the whole of it", () => {
  const whole = indexOf(bern, steps(Date.UTC(2026, 2, 5, 23), Date.UTC(2026, 2, 8, 23), 1), [0.5, 0.5, 0.5]);
  const touched = indexOf(bern, steps(Date.UTC(2026, 2, 6, 13), Date.UTC(2026, 2, 8, 10), 1), [0.5, 0.5, 0.5]);
  expect(touched.index[0]).toBe(whole.index[0]);
  expect(touched.index.at(-1)).toBe(whole.index.at(-1));
  const h0 = [6, 7, 8].map((day) => dailyExtraterrestrialWhM2(bern.latitudeDeg, Date.UTC(2026, 2, day, 12)));
  expect(Array.from(touched.light.extraterrestrialWhM2)).toEqual(h0);
  const evening = indexOf(bern, steps(Date.UTC(2026, 2, 6, 13), Date.UTC(2026, 2, 6, 20), 1), [0.5]);
  expect(evening.index[0]).toBe(whole.index[0]);
});

test("on the other side of the date line the day is the local one", () => {
  const fiji = { latitudeDeg: -18.1, longitudeDeg: 178.4, elevationM: 10, linkeTurbidity: 3 };
  const grid = steps(Date.UTC(2026, 0, 9, 20), Date.UTC(2026, 0, 10, 2), 12); // 10 January 8:00 to 14:00
  const { light } = indexOf(fiji, grid, [0.5]);
  expect(light.extraterrestrialWhM2[0]).toBe(dailyExtraterrestrialWhM2(-18.1, Date.UTC(2026, 0, 10, 12)));
});

test.each([[[1, 1, 1, 2]], [[0, 0, 2, 2]], [[0, 0, 1, 0]]])(
  "days %j, of which one owns no step or comes again, are refused",
  (days) => {
    const timesMs = Float64Array.from(days, (_, i) => Date.UTC(2026, 5, 19) + i * 6 * 3_600_000);
    expect(() => dayLight(bern, timesMs, Int32Array.from(days))).toThrow("localDay must begin with 0 and rise by one");
  },
);

test("in polar night the index is 0 and a number", () => {
  const svalbard = { latitudeDeg: 78.2, longitudeDeg: 15.6, elevationM: 10, linkeTurbidity: 3 };
  const { index, light } = indexOf(svalbard, steps(Date.UTC(2026, 11, 20, 23), Date.UTC(2026, 11, 21, 23), 1), [0.4]);
  expect(new Set(index)).toEqual(new Set([0]));
  expect(light.clearWhM2[0]).toBe(0);
});

test("the brightest believed day is brighter than a cloudless one and darker than the light above the air, at any height", () => {
  for (const latitudeDeg of [-70, -35, 0, 20, 47, 62, 68])
    for (const elevationM of [0, 1500, 3000, 4500, 6000])
      for (const linkeTurbidity of [1, 2, 4])
        for (const month of [0, 3, 6, 9]) {
          const site = { latitudeDeg, longitudeDeg: 7, elevationM, linkeTurbidity };
          const { light } = indexOf(site, steps(Date.UTC(2026, month, 15), Date.UTC(2026, month, 16), 0), [0.5]);
          if (light.extraterrestrialWhM2[0]! < 100) continue;
          const clearKt = light.clearWhM2[0]! / light.extraterrestrialWhM2[0]!;
          expect(light.brightestKt[0]!).toBeLessThan(0.95);
          expect(clearKt).toBeLessThan(1);
          if (linkeTurbidity >= 2) expect(light.brightestKt[0]!).toBeGreaterThan(0.97 * Math.min(0.9, clearKt));
        }
});

test.each([0, 1, 2])(
  "every day of an event is its own, by a clock %d h ahead: its H0 is that of its date",
  (aheadH) => {
    // H0 grows by 1.3 % a day.
    const grid = steps(Date.UTC(2026, 2, 18, 16), Date.UTC(2026, 2, 22, 8), aheadH);
    const light = dayLight(bern, grid.timesMs, grid.localDay);
    const h0 = [18, 19, 20, 21, 22].map((day) =>
      dailyExtraterrestrialWhM2(bern.latitudeDeg, Date.UTC(2026, 2, day, 12)),
    );
    expect([...light.extraterrestrialWhM2]).toEqual(h0.map((wh) => expect.closeTo(wh, 6)));
  },
);
