import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import { climateAt, type SiteClimate } from "../../../engine/place/climateAt.ts";
import type { ClimateTables } from "../../../engine/place/climateTables.ts";
import { gridAt } from "../../../engine/place/gridAt.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { dailyExtraterrestrialWhM2 } from "../../../engine/sky/dailyExtraterrestrialWhM2.ts";
import { positionAlone } from "../climate/positionAlone.ts";
import kept from "../data/daily-clearness.json" with { type: "json" };
import light from "../data/station-light.json" with { type: "json" };
import { record, recordSkipped } from "../record.ts";

let tables: ClimateTables;
beforeAll(async () => {
  tables = await loadClimateTables();
});

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
function monthH0KwhM2(lat: number, month: number): number {
  let sum = 0;
  for (let day = 1; day <= DAYS[month]!; day++) sum += dailyExtraterrestrialWhM2(lat, Date.UTC(2025, month, day));
  return sum / DAYS[month]! / 1000;
}
const rms = (errors: number[]) => Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);
function climateOf(found: ReturnType<typeof climateAt>): SiteClimate {
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.climate;
}

// The sources give each station's own mean GHI next to its mean daily Kt. Kt × H0 must give the GHI back; mean of Kt and Kt
// of the mean differ by under 0.01 in 99 % of the months.
test("clearness times our H0 gives back the light that 160 stations report", () => {
  const errors: number[] = [];
  for (const station of tables.stations) {
    const ghi = light.ghiKwhM2[station.id as keyof typeof light.ghiKwhM2];
    for (let month = 0; month < 12; month++) {
      const h0 = monthH0KwhM2(station.lat, month);
      if (station.kt[month] !== null && h0 > 1) errors.push(Math.abs(station.kt[month]! - ghi[month]! / h0));
    }
  }
  errors.sort((a, b) => a - b);
  const worst = errors[Math.floor(errors.length * 0.99)]!;
  record({
    what: "monthly GHI over our H0 against the stations' clearness, 99 % of months",
    source: "NSRDB TMY3, NASA POWER, KNMI, PVGIS monthly means",
    tolerance: 0.01,
    why: "a mean of ratios is not the ratio of means; GHI has two decimals",
    worst,
    unit: "",
    n: errors.length,
  });
  expect(errors.length).toBeGreaterThan(1800);
  expect(worst).toBeLessThan(0.01);
});

// kWh/m² a day: January, June, mean of the year, from the grid alone, as worked out when the grid was made.
const grid: [string, number, number, number, number, number][] = [
  ["Sydney", -33.87, 151.21, 6.6, 2.2, 4.5],
  ["Nairobi", -1.29, 36.82, 6.0, 5.0, 5.7],
  ["Tokyo", 35.68, 139.69, 1.9, 4.6, 3.6],
  ["Singapore", 1.35, 103.82, 4.7, 5.0, 5.0],
  ["Delhi", 28.61, 77.21, 3.5, 6.1, 4.9],
  ["Moscow", 55.75, 37.62, 0.7, 5.6, 2.9],
  ["Reykjavik", 64.15, -21.94, 0.1, 5.1, 2.2],
  ["Auckland", -36.85, 174.76, 6.5, 1.8, 4.2],
];
test("the world grid reads as it did where it was made", () => {
  let worst = 0;
  for (const [, lat, lon, january, june, year] of grid) {
    const { kt } = gridAt(tables, lat, lon, null);
    const ghi = kt.map((clearness, month) => (clearness ?? 0) * monthH0KwhM2(lat, month));
    const mean = ghi.reduce((sum, value, month) => sum + value * DAYS[month]!, 0) / 365;
    worst = Math.max(worst, Math.abs(ghi[0]! - january), Math.abs(ghi[5]! - june), Math.abs(mean - year));
  }
  record({
    what: "grid GHI at 8 cities, January, June and year",
    source: "figures noted when the grid was made from CORE and NCEP/NCAR fields",
    tolerance: 0.05,
    why: "noted to 0.1 kWh/m²",
    worst,
    unit: "kWh/m² a day",
    n: grid.length * 3,
  });
  expect(worst).toBeLessThan(0.05);
});

// What the weights and laws were chosen by: measured records, each with everything within 30 km left out. Typical years and satellites' cells have
// errors of their own against records (docs/fits/climate.md), so how well a station of theirs is guessed says less.
test("a measured record left out is guessed within the error that the rules were chosen for", () => {
  const [kt, alone, sd, r1]: number[][] = [[], [], [], []];
  const at = (name: string) => kept.figures.indexOf(name);
  for (const one of kept.records) {
    const guess = positionAlone(tables, one);
    const cell = gridAt(tables, one.latitudeDeg, one.longitudeDeg, one.elevationM);
    one.months.forEach((month, m) => {
      if (month === null) return;
      kt!.push(guess.kt[m]! - month[at("mean")]!);
      alone!.push(cell.kt[m]! - month[at("mean")]!);
      sd!.push(guess.sd[m]! - month[kept.figures.length]!);
      r1!.push(guess.r1[m]! - month[at("r1")]!);
    });
  }
  const source =
    "12 long records of daily clearness (tests/truth/data/daily-clearness.json), all stations within 30 km left out";
  const row = (what: string, values: number[], tolerance: number, why: string) => {
    record({ what, source, tolerance, why, worst: rms(values), unit: "", n: values.length });
    expect(rms(values), what).toBeLessThan(tolerance);
  };
  const why = "three of the records have no station within 1,500 km; among stations rms 0.027";
  row("monthly clearness at a long record, rms", kt!, 0.028, why);
  row("the same from the grid alone, rms", alone!, 0.036, why);
  row(
    "spread of daily clearness at a long record, rms",
    sd!,
    0.022,
    "one law for all climates, and means that are off",
  );
  row(
    "day-to-day correlation at a long record, rms",
    r1!,
    0.08,
    "differs by place for no reason that is in the tables",
  );
  expect(rms(kt!)).toBeLessThan(0.95 * rms(alone!));
});

test("at a station left out clearness and air are those of its neighbours, as far as they are known", () => {
  const blend: number[] = [];
  const [maxC, minC]: number[][] = [[], []];
  for (const station of tables.stations) {
    const others = { ...tables, stations: tables.stations.filter((other) => other !== station) };
    const guess = climateOf(climateAt(others, station.lat, station.lon, station.elev));
    for (let month = 0; month < 12; month++) {
      if (station.elev !== null) {
        maxC!.push(guess.tmaxC[month]! - station.tmax[month]!);
        minC!.push(guess.tminC[month]! - station.tmin[month]!);
      }
      if (station.kt[month] !== null) blend.push(guess.kt[month]! - station.kt[month]!);
    }
  }
  const source = "160 stations (NSRDB TMY3, NASA POWER, KNMI, PVGIS), each left out in turn";
  const row = (what: string, values: number[], tolerance: number, unit: string, why: string) => {
    record({ what, source, tolerance, why, worst: rms(values), unit, n: values.length });
    expect(rms(values), what).toBeLessThan(tolerance);
  };
  const whyKt = "a typical year has errors of its own, 0.04 against records, which are taken off before it counts";
  row("monthly clearness at a station left out, rms", blend, 0.041, "", whyKt);
  const whyAir = "hills and coasts inside 3°; the grid alone gives 2.0 and 2.3 °C";
  row("mean daily maximum at a station left out, rms", maxC!, 1.95, "°C", whyAir);
  row("mean daily minimum at a station left out, rms", minC!, 1.95, "°C", whyAir);
});

const beside = fileURLToPath(new URL("../../../../shared/data/climate-reference.json", import.meta.url));
/** Instruments that read 0.13 over and 0.16 under everything round them in every month (the data's own notes call them doubtful). */
const DOUBTFUL = /Quilichao|Anguededou/;
const here = existsSync(beside);
const reference = "15 long station records in the tropics, the south and the prairies (open crop-model data)";
if (!here) {
  const skipped = "no reference climates beside this checkout";
  recordSkipped({ what: "monthly clearness at reference sites", source: reference, skipped });
  console.warn(`Skipped: the climate is not compared with reference sites (${skipped}).`);
}
test.skipIf(!here)("far from any station the clearness is as good as we say it is", () => {
  const sites = JSON.parse(readFileSync(beside, "utf8")).stations as {
    name: string;
    lat: number;
    lon: number;
    elev: number;
    kt: (number | null)[];
  }[];
  const errors: number[] = [];
  const believed: number[] = [];
  let claimed = 0;
  for (const site of sites) {
    const { kt, provenance } = climateOf(climateAt(tables, site.lat, site.lon, site.elev));
    site.kt.forEach((measured, month) => {
      if (measured === null) return;
      errors.push(kt[month]! - measured);
      if (!DOUBTFUL.test(site.name)) believed.push(kt[month]! - measured);
    });
    claimed = Math.max(claimed, provenance.ktRms);
  }
  const row = { source: reference, unit: "" };
  record({
    ...row,
    what: "monthly clearness at reference sites, rms",
    tolerance: 0.068,
    why: "two of the sites differ from everything round them all year, by 0.13 and 0.16",
    worst: rms(errors),
    n: errors.length,
  });
  record({
    ...row,
    what: "monthly clearness at reference sites but for the two doubtful ones, rms",
    tolerance: 0.042,
    why: "the screen gives ±0.055 where no station is near, since some places are as odd as those two",
    worst: rms(believed),
    n: believed.length,
  });
  expect(rms(errors)).toBeLessThan(0.068);
  expect(rms(believed)).toBeLessThan(0.042);
  expect(claimed).toBeCloseTo(0.055, 5);
});
