import { expect, test } from "vitest";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { absoluteMinimumC, recordColdC } from "../../../engine/place/recordColdC.ts";

/**
 * Lowest temperatures that stations have on record, °C, with place and height: from memory, rounded as they are quoted; look one up before it is
 * relied on. Half of them told how far the rule has to be lowered, the other half is what it is tried on.
 */
const FITTED = [
  ["De Bilt", 52.1, 5.18, 2, -24.8],
  ["Denver", 39.85, -104.66, 1650, -33.9],
  ["Miami", 25.8, -80.3, 3, -2.8],
  ["Minneapolis", 44.88, -93.2, 256, -40.6],
  ["Honolulu", 21.3, -157.9, 2, 11.1],
  ["London, Heathrow", 51.48, -0.45, 25, -16.1],
  ["Sydney", -33.86, 151.2, 39, 2.1],
  ["Swift Current", 50.3, -107.7, 817, -42.8],
  ["Berlin, Tempelhof", 52.47, 13.4, 48, -26],
  ["Paris, Montsouris", 48.8, 2.34, 75, -23.9],
  ["Tokyo", 35.7, 139.75, 25, -9.2],
  ["New York, Central Park", 40.78, -73.97, 40, -26.1],
  ["Atlanta", 33.63, -84.4, 315, -22.8],
  ["Salt Lake City", 40.78, -111.97, 1288, -34.4],
  ["Winnipeg", 49.9, -97.2, 239, -47.8],
  ["Delhi", 28.58, 77.2, 216, -2.2],
  ["Johannesburg", -26.1, 28.2, 1694, -8.2],
  ["Edinburgh", 55.97, -3.2, 26, -15.5],
  ["Vienna", 48.25, 16.36, 198, -25.8],
  ["Tromsø", 69.65, 18.9, 10, -18.4],
  ["Los Angeles", 33.94, -118.4, 38, -5],
] as const;
const TRIED = [
  ["Graz", 47, 15.4, 340, -22],
  ["Phoenix", 33.43, -112, 337, -8.9],
  ["Fairbanks", 64.8, -147.9, 135, -54.4],
  ["Seattle", 47.45, -122.3, 132, -17.8],
  ["Singapore", 1.35, 103.9, 5, 19.4],
  ["Madrid", 40.47, -3.56, 609, -15.2],
  ["Moscow", 55.83, 37.6, 156, -42.2],
  ["Oslo", 59.94, 10.72, 94, -26],
  ["Munich", 48.16, 11.54, 515, -31.6],
  ["Rome", 41.8, 12.6, 129, -11],
  ["Chicago", 41.98, -87.9, 205, -32.8],
  ["Boston", 42.36, -71, 6, -27.8],
  ["Dallas", 32.9, -97, 182, -22.2],
  ["Anchorage", 61.17, -150, 40, -36.7],
  ["Helsinki", 60.3, 24.97, 51, -35.9],
  ["Nairobi", -1.3, 36.76, 1798, 3.9],
  ["Melbourne", -37.8, 144.97, 31, -2.8],
  ["Dublin", 53.36, -6.3, 61, -15.7],
  ["Warsaw", 52.16, 20.96, 106, -32.7],
  ["San Francisco", 37.6, -122.4, 5, -6.7],
  ["Albuquerque", 35.04, -106.6, 1619, -27.2],
] as const;

test("nine records in ten are warmer than the estimate, and none is much colder", async () => {
  const tables = await loadClimateTables();
  const above = (rows: typeof FITTED | typeof TRIED) =>
    rows.map(([, lat, lon, elev, recordC]) => recordC - recordColdC(tables, lat, lon, elev)!).sort((a, b) => a - b);
  for (const room of [above(FITTED), above(TRIED)]) {
    expect(room.filter((kelvin) => kelvin >= 0).length / room.length).toBeGreaterThanOrEqual(0.9);
    // The coldest of all, Fairbanks, is 2.5 K colder: 0.8 % of a string's volts, below what the code's table leaves over the sheets.
    expect(room[0]).toBeGreaterThan(-3);
    // And not so far below that every string would be over: at half of the places less than 7 K.
    expect(room[Math.floor(room.length / 2)]).toBeLessThan(7);
  }
  expect(recordColdC(tables, -75, 0, null)).toBeNull();
});

test("the rule's own figures", () => {
  // BIOME4 as public notes give it: 0.006 T² + 1.316 T − 21.9, by hand at three temperatures.
  expect(absoluteMinimumC(0)).toBeCloseTo(-21.9, 9);
  expect(absoluteMinimumC(10)).toBeCloseTo(0.6 + 13.16 - 21.9, 9);
  expect(absoluteMinimumC(-20)).toBeCloseTo(2.4 - 26.32 - 21.9, 9);
});
