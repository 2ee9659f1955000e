import { expect, test } from "vitest";
import { distanceKm } from "../../../engine/place/index.ts";
import { findTowns, heightAsTowns, type Town, townTable } from "../../../engine/towns/index.ts";
import { countryName } from "../../../explorer/place/townWords.ts";
import { PACKED_TOWNS, TOWN_BYTES, TOWNS, textOf } from "./ownTable.ts";

const find = (typed: string, most = 8) => findTowns(TOWNS, typed, most, countryName);
const told = ({ name, region, countryCode }: Town) => `${name}, ${region}, ${countryCode}`;

/** Latitude, longitude and height as atlases and encyclopaedias give them, in whole minutes of arc and metres: from memory. */
const PUBLISHED: readonly (readonly [string, number, number, number])[] = [
  ["Wien", 48.2, 16.37, 170],
  ["Innsbruck", 47.27, 11.39, 574],
  ["Zürich", 47.37, 8.54, 408],
  ["München", 48.14, 11.58, 520],
  ["Madrid", 40.42, -3.7, 660],
  ["Ankara", 39.93, 32.86, 890],
  ["Reykjavík", 64.15, -21.94, 20],
  ["Nairobi", -1.29, 36.82, 1700],
  ["Johannesburg", -26.2, 28.05, 1750],
  ["Addis Ababa", 9.03, 38.74, 2355],
  ["Denver", 39.74, -104.99, 1609],
  ["Calgary", 51.05, -114.07, 1045],
  ["Mexico City", 19.43, -99.13, 2240],
  ["Quito", -0.18, -78.47, 2850],
  ["La Paz, Bolivia", -16.5, -68.15, 3640],
  ["Brasília", -15.79, -47.88, 1172],
  ["Alice Springs", -23.7, 133.88, 576],
  ["Christchurch, New Zealand", -43.53, 172.64, 20],
  ["Kathmandu", 27.72, 85.32, 1400],
  ["Tokyo", 35.69, 139.69, 40],
];

test.each(PUBLISHED)("%s is found first, within 10 km and 150 m of what is published", (name, lat, lon, heightM) => {
  const town = find(name)[0]!;
  expect(distanceKm(town, { lat, lon })).toBeLessThan(10);
  expect(Math.abs(town.heightM! - heightM)).toBeLessThan(150);
});

test.each([
  ["st louis", "St. Louis, Missouri, US"],
  ["Saint Louis, mo", "St. Louis, Missouri, US"],
  ["Mt. Vernon, WA", "Mount Vernon, Washington, US"],
  ["ft worth", "Fort Worth, Texas, US"],
  ["st. polten", "Sankt Pölten, Lower Austria, AT"],
  ["koln", "Köln, North Rhine-Westphalia, DE"],
  ["Koeln", "Köln, North Rhine-Westphalia, DE"],
  ["COLOGNE", "Köln, North Rhine-Westphalia, DE"],
  ["Frankfurt a. M.", "Frankfurt am Main, Hesse, DE"],
  ["lodz", "Łódź, Łódź Voivodeship, PL"],
  ["sao paulo", "São Paulo, São Paulo, BR"],
  ["aarhus", "Århus, Central Jutland, DK"],
  ["Seville", "Sevilla, Andalusia, ES"],
  ["Paris Texas", "Paris, Texas, US"],
  ["london, ontario", "London, Ontario, CA"],
  ["cambridge, uk", "Cambridge, England, GB"],
])("%s is %s", (typed, words) => {
  expect(find(typed).map(told)[0]).toBe(words);
});

test.each([
  ["tromso", "Tromsø"],
  ["Malmo", "Malmö"],
  ["Gießen", "Gießen"],
  ["giessen", "Gießen"],
  ["geneva", "Genève"],
])("%s forgives: %s is among the first", (typed, name) => {
  expect(find(typed).map((town) => town.name)).toContain(name);
});

test("towns of one name in several countries come with the most people first, and the one that is called so before those that begin so", () => {
  expect(find("paris").slice(0, 2).map(told)).toEqual(["Paris, Île-de-France, FR", "Paris, Texas, US"]);
  expect(find("saint-louis").map((town) => town.countryCode)).toEqual(expect.arrayContaining(["US", "SN", "FR", "RE"]));
  expect(find("york")[0]!.countryCode).toBe("GB");
});

test.each([
  "",
  "   ",
  ",",
  "(((",
  "<img src=x onerror=alert(1)>",
  "\\",
  "%00",
  "a".repeat(100_000),
  "🙂",
  "__proto__",
  "constructor",
])("hostile text finds nothing that is not a town, and breaks nothing (%#)", (typed) => {
  for (const town of find(typed)) expect(TOWNS).toContain(town);
  expect(find(typed).length).toBeLessThanOrEqual(8);
});

test("the file has 20 to 50 thousand towns, in at most 500 kB, says whose they are, and knows its end", () => {
  expect(TOWNS.length).toBeGreaterThan(20_000);
  expect(TOWNS.length).toBeLessThan(50_000);
  expect(PACKED_TOWNS.length).toBeLessThanOrEqual(500_000);
  const head = textOf(TOWN_BYTES.subarray(0, TOWN_BYTES.indexOf(10)));
  expect(head).toMatch(/GeoNames.*CC BY 4\.0/);
  expect(() => townTable(TOWN_BYTES.subarray(0, -1), textOf)).toThrow(RangeError);
  expect(() => townTable(new Uint8Array([1, 2, 10]), textOf)).toThrow(RangeError);
  const places = TOWNS.filter(({ lat, lon, name }) => Math.abs(lat) <= 90 && Math.abs(lon) <= 180 && name !== "");
  expect(places.length).toBe(TOWNS.length);
});

test("a place's height is that of the towns near by; far from all there is none", () => {
  // Each town's height from the others, over every fortieth: half come within 30 m, nine of ten within 200 m.
  const off = TOWNS.filter((_, k) => k % 200 === 0).flatMap((town) => {
    const height = heightAsTowns(
      TOWNS.filter((other) => other !== town),
      town.lat,
      town.lon,
    );
    return height === null || town.heightM === null ? [] : [Math.abs(height.heightM - town.heightM)];
  });
  off.sort((a, b) => a - b);
  expect(off.length).toBeGreaterThan(150);
  expect(off[Math.floor(off.length / 2)]).toBeLessThanOrEqual(30);
  expect(off[Math.floor(off.length * 0.9)]).toBeLessThanOrEqual(200);
  expect(heightAsTowns(TOWNS, 0, -30)).toBeNull();
  // Graz stands at 353 m (from memory); Leadville, Colorado, at 3,094 m, the highest town of its country (from memory).
  expect(Math.abs(heightAsTowns(TOWNS, 47.07, 15.44)!.heightM - 353)).toBeLessThanOrEqual(40);
  expect(Math.abs(heightAsTowns(TOWNS, 39.25, -106.29)!.heightM - 3094)).toBeLessThanOrEqual(150);
});
