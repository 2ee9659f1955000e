import { almostSame, foldName, sameWord, wordMatches } from "./foldName.ts";
import type { Town } from "./townTable.ts";

/** What a name that fits as it stands, or from its first word, counts for beside ten times the people. */
const EXACT = 3;
const FROM_START = 1.5;
/** A name that is not the town's own counts for less. */
const OTHER_NAME = 0.5;
/** A large town whose name is a letter or two off. */
const ALMOST = 2.2;
const LARGE = 100_000;
/** Typed words beyond these are not looked at. */
const MOST_WORDS = 12;

/** What is asked for: a name, and behind it what says which of several it is: region and country, by name or code. */
interface Asked {
  /** What stands before a comma, and the words behind it. */
  readonly name: string;
  readonly behind: readonly string[];
  readonly words: readonly string[];
  /** So many words at least belong to the name; all of those before a comma. */
  readonly least: number;
  readonly most: number;
}

/**
 * Towns by their name, the best first: how well the name fits, and how many live there. Accents are forgiven, and so are abbreviations ("St", "Mt"),
 * beginnings of words, and a region or country behind the name ("Paris, Texas", "Springfield IL").
 * @param typed what was typed, of any length
 * @param most how many at most
 * @param countryName the name of a country by its code, "DE"
 */
export function findTowns(
  towns: readonly Town[],
  typed: string,
  most: number,
  countryName: (code: string) => string,
): Town[] {
  const asked = askedOf(typed);
  if (asked === null) return [];
  const wheres = new Map<string, string[]>();
  const whereOf = (town: Town) => {
    const id = `${town.countryCode}.${town.regionCode}`;
    const known = wheres.get(id) ?? whereWords(town, countryName);
    wheres.set(id, known);
    return known;
  };
  const found: { town: Town; score: number }[] = [];
  for (const town of towns) {
    const fit = fitOf(town, asked, whereOf);
    if (fit !== null) found.push({ town, score: fit + Math.log10(town.people + 1000) });
  }
  found.sort((a, b) => b.score - a.score || (a.town.name < b.town.name ? -1 : 1));
  return found.slice(0, most).map(({ town }) => town);
}

function askedOf(typed: string): Asked | null {
  const [name = "", ...behind] = typed.slice(0, 200).split(",").map(foldName);
  const named = name === "" ? [] : name.split(" ");
  if (named.length === 0) return null;
  const where = behind.filter((part) => part !== "").flatMap((part) => part.split(" "));
  const words = [...named, ...where].slice(0, MOST_WORDS);
  const isTold = where.length > 0;
  return { name, behind: where, words, least: isTold ? named.length : 1, most: isTold ? named.length : words.length };
}

function whereWords({ region, regionCode, countryCode }: Town, countryName: (code: string) => string): string[] {
  const code = /^[A-Z]+$/.test(regionCode) ? regionCode : "";
  return foldName(`${region} ${code} ${countryName(countryCode)} ${countryCode}`).split(" ");
}

/** How well a town fits, or null where it does not. */
function fitOf(town: Town, asked: Asked, whereOf: (town: Town) => readonly string[]): number | null {
  const { words, least, most } = asked;
  const isThere = (behind: readonly string[]) =>
    behind.every((word) => whereOf(town).some((each) => wordMatches(word, each)));
  const isAlmost = town.people >= LARGE && almostSame(asked.name, town.keys[0]!.join(" "));
  let best = isAlmost && isThere(asked.behind) ? ALMOST : null;
  for (const [k, key] of town.keys.entries()) {
    const start = key.findIndex((word) => wordMatches(words[0]!, word));
    if (start < 0) continue;
    const named = wordsInOrder(words, key, start, most);
    if (named < least || !isThere(words.slice(named))) continue;
    const isWhole = key.length === named && start === 0 && key.every((word, n) => sameWord(words[n]!, word));
    const fit = (isWhole ? EXACT : start === 0 ? FROM_START : 0) - (k > 0 ? OTHER_NAME : 0);
    if (best === null || fit > best) best = fit;
  }
  return best;
}

/** How many of the words, from the first, are found in a name in their order. */
function wordsInOrder(words: readonly string[], key: readonly string[], start: number, most: number): number {
  let named = 1;
  for (let n = start + 1; n < key.length && named < most && named < words.length; n++)
    if (wordMatches(words[named]!, key[n]!)) named++;
  return named;
}
