import { expect, test } from "vitest";
import { dailyExtraterrestrialWhM2 } from "../../../engine/sky/dailyExtraterrestrialWhM2.ts";
import { distanceFactor, extraterrestrialWm2, SOLAR_CONSTANT_WM2 } from "../../../engine/sky/extraterrestrialWm2.ts";
import { dayOfYear } from "../../../engine/sky/solarDay.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import reference from "../data/extraterrestrial.json" with { type: "json" };
import { record } from "../record.ts";

const MJ_PER_WH = 0.0036;
const rows = reference.daily.rows;
const dayMs = (day: number) => Date.UTC(2025, 0, day);

/** Takes suncalc's refraction out again: Meeus 16.4 gives it from the true elevation, so solve for that. */
function trueElevationDeg(apparentDeg: number): number {
  const refractionDeg = (h: number) => 1.02 / 60 / Math.tan(((h + 10.3 / (h + 5.11)) * Math.PI) / 180);
  if (apparentDeg <= refractionDeg(0)) return -1;
  let h = apparentDeg;
  for (let i = 0; i < 30; i++) h = apparentDeg - refractionDeg(Math.max(0, h));
  return h;
}

test("a day without air adds up to the sun's true course over it", () => {
  let worst = 0;
  let worstShare = 0;
  for (const [lat, day, , , , , , , numericMJ] of rows as number[][]) {
    const times = Float64Array.from({ length: 1440 }, (_, i) => dayMs(day!) + (i + 0.5) * 60_000);
    const sun = sunTrack(lat!, 0, times);
    let wh = 0;
    for (let i = 0; i < 1440; i++) {
      const sine = Math.sin((trueElevationDeg(sun.elevationDeg[i]!) * Math.PI) / 180);
      wh += (Math.max(0, sine) * extraterrestrialWm2(dayOfYear(times[i]!, 0))) / 60;
    }
    const error = Math.abs(wh * MJ_PER_WH - numericMJ!);
    // 0.1 % or 0.01 MJ, whichever is larger
    worst = Math.max(worst, Math.min(error / 0.01, error / (0.001 * numericMJ! || 1e-9)));
    if (numericMJ! > 10) worstShare = Math.max(worstShare, (100 * error) / numericMJ!);
  }
  record({
    what: "extraterrestrial day from the sun track, where over 10 MJ/m²",
    source: "NREL Solar Position Algorithm, 1-minute sum, 2025, 13 latitudes × 12 days",
    tolerance: 0.1,
    why: "Spencer's distance and suncalc's 0.01°; the rest agrees within 0.01 MJ/m²",
    worst: worstShare,
    unit: "%",
    n: rows.length,
  });
  expect(worst).toBeLessThan(1);
  expect(worstShare).toBeLessThan(0.1);
});

test("H0 is the closed form with Spencer's declination that the climate tables are over", () => {
  let worst = 0;
  for (const [lat, day, , , , , , spencerMJ] of rows as number[][]) {
    worst = Math.max(worst, Math.abs(dailyExtraterrestrialWhM2(lat!, dayMs(day!)) * MJ_PER_WH - spencerMJ!));
  }
  record({
    what: "H0, closed form",
    source: "Spencer 1971 declination and distance, 1361 W/m², worked out apart",
    tolerance: 0.0001,
    why: "the same formula; the reference has four decimals",
    worst,
    unit: "MJ/m²",
    n: rows.length,
  });
  expect(worst).toBeLessThan(0.0001);
});

// On the equator with the sun over it and at its mean distance, a day is 86400/π × 1361 J/m² = 37.4302 MJ/m². The nearest
// real days are 20 March and 23 September, whose distances cancel to 0.1 %.
test("H0 is what the textbooks have", () => {
  const equinoxes = [Date.UTC(2025, 2, 20), Date.UTC(2025, 8, 23)].map(
    (ms) => (dailyExtraterrestrialWhM2(0, ms) * MJ_PER_WH) / distanceFactor(dayOfYear(ms, 0)),
  );
  const equator = Math.max(...equinoxes.map((mj) => Math.abs(mj / 37.4302 - 1) * 100));
  record({
    what: "H0 on the equator at the equinoxes, distance taken out",
    source: "geometry: 86400/π × 1361 W/m²",
    tolerance: 0.02,
    why: "declination is not quite 0 on those days",
    worst: equator,
    unit: "%",
    n: 2,
  });
  expect(equator).toBeLessThan(0.02);

  const book = 33.8 * (SOLAR_CONSTANT_WM2 / 1367); // the book's sun is that much stronger
  const madison = Math.abs((dailyExtraterrestrialWhM2(43, Date.UTC(2025, 3, 15)) * MJ_PER_WH) / book - 1) * 100;
  record({
    what: "H0 at 43° N on 15 April, solar constant scaled to 1361",
    source: "Duffie & Beckman, 4th ed. 2013, Example 1.10.1 (from memory)",
    tolerance: 0.5,
    why: "another declination formula; the book gives three digits",
    worst: madison,
    unit: "%",
    n: 1,
  });
  expect(madison).toBeLessThan(0.5);
});

// distanceFactor column: 1 + 0.033 cos(360 n/365), the short form, which is within 0.003 of Spencer's.
test("sunlight above the air follows the sun's distance", () => {
  const worst = Math.max(...(rows as number[][]).map(([, day, , short]) => Math.abs(distanceFactor(day!) - short!)));
  record({
    what: "distance factor",
    source: "Duffie & Beckman, 4th ed. 2013, eq. 1.4.1a",
    tolerance: 0.004,
    why: "that short form is a rounding of Spencer's series",
    worst,
    unit: "",
    n: rows.length,
  });
  expect(worst).toBeLessThan(0.004);
});
