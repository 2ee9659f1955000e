import { beforeAll, expect, test } from "vitest";
import { wrapLongitudeDeg } from "../../../engine/angle.ts";
import { EngineFault } from "../../../engine/fault.ts";
import { toGrid } from "../../../engine/grid.ts";
import { bestWeights } from "../../../engine/place/bestWeights.ts";
import { gridLacks, r1OfKt, sdOfKt } from "../../../engine/place/clearnessLaws.ts";
import { climateAt } from "../../../engine/place/climateAt.ts";
import type { ClimateTables } from "../../../engine/place/climateTables.ts";
import { distanceKm } from "../../../engine/place/distanceKm.ts";
import { gridAt } from "../../../engine/place/gridAt.ts";
import { loadClimateNear, loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { KT_ERRORS, stationR1Excess, stationSdExcess } from "../../../engine/place/stationErrors.ts";

let tables: ClimateTables;
beforeAll(async () => {
  tables = await loadClimateTables();
});
function climate(lat: number, lon: number, elevationM: number | null) {
  const found = climateAt(tables, lat, lon, elevationM);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.climate;
}

test("clearness is the grid's and its winter's want, plus what each station has over that, by its weight", () => {
  const [lat, lon] = [45.5, -100];
  const near = tables.stations
    .map((station) => ({ station, km: distanceKm({ lat, lon }, station) }))
    .filter(({ km }) => km < 1500)
    .sort((a, b) => a.km - b.km)
    .slice(0, 24)
    .map(({ station }) => station);
  const { weight } = bestWeights({ lat, lon }, near, KT_ERRORS);
  for (const month of [0, 5]) {
    let kt = gridAt(tables, lat, lon, null).kt[month]! + gridLacks(lat, month);
    near.forEach((station, k) => {
      const there = gridAt(tables, station.lat, station.lon, null).kt[month]! + gridLacks(station.lat, month);
      const stated = station.src === "tmy3" ? 0.57 + 1.3 * (station.kt[month]! - 0.57) : station.kt[month]!;
      kt += weight[k]! * (stated - there);
    });
    expect(climate(lat, lon, null).kt[month]).toBeCloseTo(kt, 5);
  }
});

test("a typical year's spread is widened where its months are dull, and its correlation raised", () => {
  const station = tables.stations.find(
    ({ src, kt, sd, r1 }) => src === "tmy3" && [kt[0], sd[0], r1[0]].every((value) => value !== null) && kt[0]! < 0.45,
  )!;
  const { sd, kt } = station;
  const law = sdOfKt(kt[0]!, station.lat, 0);
  expect(stationSdExcess(station, 0)).toBeCloseTo(sd[0]! * (1 + 0.9 * (0.65 - kt[0]!)) - law, 12);
  expect(stationSdExcess({ ...station, src: "knmi" }, 0)).toBeCloseTo(sd[0]! - law, 12);
  expect(stationR1Excess(station, 0)).toBeCloseTo(station.r1[0]! + 0.03 - r1OfKt(kt[0]!), 12);
  expect(stationR1Excess({ ...station, years: 20 }, 0)).toBeCloseTo(station.r1[0]! - r1OfKt(kt[0]!), 12);
});

test("the law of the spread by hand, and by region and season", () => {
  expect(sdOfKt(0.425, 42, 0)).toBeCloseTo(
    0.425 * 0.425 * (0.684 + 0.427 + 0.093 * Math.cos((2 * Math.PI * -0.1) / 12)),
    9,
  );
  expect(sdOfKt(0.4, 42, 0)).toBeGreaterThan(sdOfKt(0.4, 42, 6));
  expect(sdOfKt(0.4, -42, 6)).toBeGreaterThan(sdOfKt(0.4, -42, 0));
  expect(sdOfKt(0.5, 2, 3)).toBeLessThan(0.75 * sdOfKt(0.5, 42, 3));
  expect(sdOfKt(0.75, 30, 6)).toBeLessThan(0.09);
});

test("far from any station the grid stands alone and the sentence says so", () => {
  const { kt, sd, r1, provenance } = climate(-33.9, 151.2, 20);
  expect(kt[0]).toBeCloseTo(gridAt(tables, -33.9, 151.2, 20).kt[0]!, 5);
  expect(sd[0]).toBeCloseTo(sdOfKt(kt[0]!, -33.9, 0), 5);
  expect(r1[0]).toBeCloseTo(-0.04 + 0.74 * kt[0]!, 5);
  expect(provenance.method).toBe("grid");
  expect(provenance.sentence).toContain("no station within 1000 km");
  expect(provenance.sentence).toContain("too dull then");
  expect(climate(-3, -60, 60).provenance.sentence).toContain("too bright in wet months");
  expect(provenance.ktRms).toBeCloseTo(0.055, 5);
});

test("near stations they are named, with their distance and their licences", () => {
  const { provenance } = climate(52.1, 5.2, 5);
  expect(provenance.method).toBe("stations and grid");
  expect(provenance.nearestStations[0]!.distanceKm).toBeLessThan(20);
  expect(provenance.sentence).toContain(provenance.nearestStations[0]!.name);
  expect(provenance.licences.join(" ")).toContain("KNMI");
  expect(provenance.ktRms).toBe(toGrid(0.025));
});

test("a cell's centre reads as the bytes there", () => {
  const { world } = tables;
  const [row, col] = [35, 62];
  const tile = tables.tiles.get(3 * 12 + 6)!; // twelve tiles of ten by ten cells to a band
  const grid = gridAt(tables, world.lat0 + row * world.step, world.lon0 + col * world.step, null);
  expect(grid.kt[6]).toBeCloseTo(tile.kt[(5 * 10 + 2) * 12 + 6]! * 0.004, 12);
});

test("round the date line nothing jumps", () => {
  const west = gridAt(tables, -17, 179.999, 0);
  const east = gridAt(tables, -17, -179.999, 0);
  expect(west.kt[0]).toBeCloseTo(east.kt[0]!, 4);
});

test("height cools the air by 6.3 °C a kilometre", () => {
  expect(climate(-33.9, 151.2, 1020).tmaxC[0]! - climate(-33.9, 151.2, 20).tmaxC[0]!).toBeCloseTo(-6.3, 5);
});

test("months without daylight borrow a clearness and say so", () => {
  const { kt, provenance } = climate(78.2, 15.6, 10);
  expect(provenance.borrowedMonths.length).toBeGreaterThan(2);
  expect(provenance.sentence).toContain("borrow");
  expect(kt.every((value) => value > 0 && value < 1)).toBe(true);
});

test("every value is a number within reason, all over the map", () => {
  for (let lat = -58; lat <= 90; lat += 7.4) {
    for (let lon = -180; lon <= 180; lon += 22.5) {
      const { kt, sd, r1, tmaxC, tminC, windMs } = climate(lat, lon, null);
      for (let month = 0; month < 12; month++) {
        expect(kt[month]).toBeGreaterThanOrEqual(0.05);
        expect(kt[month]).toBeLessThanOrEqual(0.85);
        expect(sd[month]).toBeGreaterThanOrEqual(0.04);
        expect(r1[month]).toBeGreaterThanOrEqual(0.08);
        expect(tmaxC[month]! - tminC[month]!).toBeGreaterThanOrEqual(0);
        expect(Math.abs(tmaxC[month]!)).toBeLessThan(60);
        expect(windMs[month]).toBeGreaterThan(0);
      }
    }
  }
});

test("what is fetched for a place gives the same climate as the whole world, to the last bit", async () => {
  // Round the stations and round the circle in which each is heard, on the seams of tiles, the date line, near the poles, and all over.
  const around = tables.world.stationPlaces.flatMap(([lat, lon], k) => [
    [lat, lon],
    [lat + (k % 2 === 0 ? 17.98 : -17.98), lon],
    [lat, lon + (k % 2 === 0 ? 1 : -1) * 25],
  ]);
  const seams = [-58.5, -30, -28.5, 0, 30, 31.5, 60, 61.4999, 82.5, 90].flatMap((lat) =>
    [-180, -178.5, -150, -1.5, 0, 28.5, 30, 120, 178.5, 179.999, 180].map((lon) => [lat, lon]),
  );
  const anywhere = Array.from({ length: 300 }, (_, k) => [
    ((k * 0.618034) % 1) * 148.5 - 58.5,
    ((k * 0.754878) % 1) * 360 - 180,
  ]);
  const places = [...around, ...seams, ...anywhere].filter(([lat]) => lat! >= -58.5 && lat! <= 90);
  expect(places.length).toBeGreaterThan(800);
  for (const [lat, lon] of places as [number, number][]) {
    const wrapped = wrapLongitudeDeg(lon);
    const near = await loadClimateNear([{ lat, lon }]);
    expect(near.tiles.size).toBeLessThan(13);
    const found = climateAt(near, lat, wrapped, null);
    expect(JSON.stringify(found)).toBe(JSON.stringify(climateAt(tables, lat, wrapped, null)));
  }
});

test("tables for several places serve each of them, and are the same for the same", async () => {
  const [vienna, sydney] = [
    { lat: 48.2, lon: 16.4 },
    { lat: -33.9, lon: 151.2 },
  ];
  const both = await loadClimateNear([vienna, sydney]);
  for (const { lat, lon } of [vienna, sydney])
    expect(climateAt(both, lat, lon, 20)).toEqual(climateAt(tables, lat, lon, 20));
  expect(await loadClimateNear([sydney, vienna, vienna])).toBe(both);
});

test("tables that were fetched for another place refuse instead of answering from what they have", async () => {
  const near = await loadClimateNear([{ lat: -33.9, lon: 151.2 }]);
  expect(() => climateAt(near, 48.2, 16.4, 200)).toThrow(/tile \d+ of the climate tables is not here/);
  const europe = await loadClimateNear([{ lat: 75, lon: 15 }]);
  expect(europe.stations.length).toBeGreaterThan(0);
  expect(() => climateAt(europe, 40, 15, 200)).toThrow(EngineFault);
});

test("the tiles hold every station once, in the tile that the index says", () => {
  expect(tables.stations.map(({ lat, lon }) => [lat, lon])).toEqual(tables.world.stationPlaces);
  expect(new Set(tables.stations.map(({ id }) => id)).size).toBe(160);
});

test("south of the tables there is a problem and no climate", () => {
  const found = climateAt(tables, -64.8, -64, 10);
  expect(found).toMatchObject({ ok: false, problems: [{ code: "no-climate-here", path: ["latitudeDeg"] }] });
});

// New York JFK to London Heathrow, 5,540 km: published great-circle distance, from memory; a sphere errs by 0.5 %.
test("distances run over the globe", () => {
  expect(distanceKm({ lat: 40.64, lon: -73.78 }, { lat: 51.47, lon: -0.46 }) / 5540).toBeCloseTo(1, 2);
  expect(distanceKm({ lat: 0, lon: 179.5 }, { lat: 0, lon: -179.5 })).toBeCloseTo(111.2, 1);
});
