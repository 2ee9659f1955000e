import { expect, test } from "vitest";
import { isDark } from "../../../engine/sky/isDark.ts";
import { nightSpans } from "../../../engine/sky/nightSpans.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";

const HOUR_MS = 3_600_000;
const evening = Date.UTC(2026, 9, 9, 12);

test("nights are cut to the stretch asked for", () => {
  const night = nightSpans(46.95, 7.45, evening, evening + 24 * HOUR_MS);
  expect(night).toHaveLength(1);
  const { startMs, endMs } = night[0]!;
  const inside = { startMs: startMs + HOUR_MS, endMs: endMs - HOUR_MS };
  expect(nightSpans(46.95, 7.45, inside.startMs, inside.endMs)).toEqual([inside]);
  expect(nightSpans(46.95, 7.45, endMs + HOUR_MS, endMs + 2 * HOUR_MS)).toEqual([]);
  expect(nightSpans(46.95, 7.45, evening, evening)).toEqual([]);
});

test("four days have four nights, in order and apart", () => {
  const nights = nightSpans(46.95, 7.45, evening, evening + 96 * HOUR_MS);
  expect(nights).toHaveLength(4);
  for (let i = 1; i < nights.length; i++) expect(nights[i]!.startMs).toBeGreaterThan(nights[i - 1]!.endMs);
});

test("the step loop's dark is the same night, to two minutes at mid latitudes", () => {
  const [night] = nightSpans(46.95, 7.45, evening, evening + 24 * HOUR_MS);
  const edges = [night!.startMs - 120_000, night!.startMs, night!.endMs, night!.endMs + 120_000];
  const { elevationDeg } = sunTrack(46.95, 7.45, Float64Array.from(edges));
  expect(Array.from(elevationDeg, isDark)).toEqual([false, true, true, false]);
});

test("around the first sunset after polar day, a short night is found", () => {
  const nights = nightSpans(69.65, 18.96, Date.UTC(2026, 6, 20), Date.UTC(2026, 7, 1));
  expect(nights.length).toBeGreaterThan(1);
  expect(nights[0]!.endMs - nights[0]!.startMs).toBeLessThan(2 * HOUR_MS);
});

test("a place off the globe is refused", () => {
  expect(() => nightSpans(91, 0, 0, 1)).toThrow("latitudeDeg must lie in −90…90, got 91".replace("−", "-"));
});
