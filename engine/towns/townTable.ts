import { foldName, foldSpelt } from "./foldName.ts";

/** Stands for a height that the source does not know. */
export const NO_HEIGHT = 32767;
/** Heights are kept in steps of so many metres: what they are proposed for asks no more. */
export const HEIGHT_STEP_M = 10;
/** Steps to a doubling in which people are kept: 4 make steps of 19 %. */
export const PEOPLE_STEPS = 4;

/** A town: what is shown of it, and what it is found by. */
export interface Town {
  readonly name: string;
  /** The first-level region, "Bavaria"; empty where it has none. */
  readonly region: string;
  /** The region's code without the country's, "IL" or "02". */
  readonly regionCode: string;
  /** ISO 3166-1 alpha-2, "DE". */
  readonly countryCode: string;
  readonly lat: number;
  readonly lon: number;
  /** Above the sea to 10 m; null where it is not known. */
  readonly heightM: number | null;
  /** About how many live there, to 10 %. */
  readonly people: number;
  /** Names that it is found by, folded, as words: its own first. */
  readonly keys: readonly (readonly string[])[];
}

interface Head {
  readonly format: string;
  readonly version: number;
  readonly count: number;
  readonly sections: readonly (readonly [string, number])[];
}

/**
 * The towns of our table (docs/fits/towns.ts writes it).
 * @param bytes the table, unpacked: a line of JSON that says what follows, then its sections
 * @param textOf UTF-8 as text
 * @throws RangeError if the bytes are no such table
 */
export function townTable(bytes: Uint8Array, textOf: (bytes: Uint8Array) => string): Town[] {
  const end = bytes.indexOf(10);
  const head = end > 0 ? headOf(textOf(bytes.subarray(0, end))) : null;
  if (head === null) throw new RangeError("These bytes are no table of towns; write it with docs/fits/towns.ts.");
  const sections = new Map<string, Uint8Array>();
  let from = end + 1;
  for (const [name, length] of head.sections) {
    sections.set(name, bytes.subarray(from, from + length));
    from += length;
  }
  if (from !== bytes.length)
    throw new RangeError(`The table of towns has ${bytes.length} bytes and should have ${from}.`);
  const lines = (name: string) => textOf(sections.get(name)!).split("\n");
  const [names, others, people] = [lines("names"), lines("others"), sections.get("people")!];
  const [lat, lon, height] = ["lat", "lon", "height"].map((name) => unplaned(sections.get(name)!));
  const towns: Town[] = [];
  for (const line of lines("regions")) {
    const [code, region, count] = line.split("\t") as [string, string, string];
    for (let k = 0; k < Number(count); k++) {
      const n = towns.length;
      towns.push({
        name: names[n]!,
        region,
        regionCode: code.slice(3),
        countryCode: code.slice(0, 2),
        lat: lat![n]! / 100,
        lon: lon![n]! / 100,
        heightM: height![n] === NO_HEIGHT ? null : height![n]! * HEIGHT_STEP_M,
        people: Math.round(2 ** (people[n]! / PEOPLE_STEPS)),
        keys: keysOf(names[n]!, others[n]!),
      });
    }
  }
  if (towns.length !== head.count)
    throw new RangeError(`The table of towns has ${towns.length} and says ${head.count}.`);
  return towns;
}

function headOf(line: string): Head | null {
  try {
    const head = JSON.parse(line) as Head;
    return head.format === "duskline-towns" && head.version === 1 ? head : null;
  } catch {
    return null;
  }
}

function keysOf(name: string, others: string): string[][] {
  const own = new Set([foldName(name), foldSpelt(name)]);
  const folded = others === "" ? [...own] : [...own, ...others.split("|")];
  return folded.map((key) => key.split(" "));
}

/** Numbers kept as differences, low bytes before high ones. */
function unplaned(bytes: Uint8Array): Int16Array {
  const count = bytes.length / 2;
  const values = new Int16Array(count);
  let last = 0;
  for (let k = 0; k < count; k++) {
    const coded = bytes[k]! | (bytes[count + k]! << 8);
    last = ((last + ((coded >>> 1) ^ -(coded & 1))) << 16) >> 16;
    values[k] = last;
  }
  return values;
}
