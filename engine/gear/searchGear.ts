import { nearestName } from "../nearestName.ts";
import { GENERIC_GEAR, type GenericGear } from "./gearTable.ts";

const wordsIn = (text: string) =>
  text
    .normalize("NFKD")
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter(Boolean);

/** More words, or longer ones, are no words to look for. */
const MOST_WORDS = 12;

/**
 * Kinds of gear in which every word of the query begins a word of the name, or of what else it is called; all for an empty query.
 * @param own kinds that somebody wrote down, which stand before the shelf's
 */
export function searchGear(query: string, own: readonly GenericGear[] = []): GenericGear[] {
  const wanted = wordsIn(query);
  const has = (text: string, word: string) => wordsIn(text).some((each) => each.startsWith(word));
  const found = [...own, ...GENERIC_GEAR].filter(({ name, words }) =>
    wanted.every((word) => has(`${name} ${words}`, word)),
  );
  // What is named so stands before what is only called so.
  const byName = (gear: GenericGear) => (wanted.every((word) => has(gear.name, word)) ? 0 : 1);
  return found.sort((a, b) => byName(a) - byName(b));
}

/** Letters from which on a word can be a slip of another. */
const SHORTEST_SLIP = 3;

/**
 * Kinds that somebody probably looked for with words that find nothing: each word is looked for as the one nearest to it that the shelf knows, and
 * where one is near to none the others do.
 * @returns nothing where no word is near
 */
export function nearGear(query: string, own: readonly GenericGear[] = []): GenericGear[] {
  const known = [...new Set([...own, ...GENERIC_GEAR].flatMap(({ name, words }) => wordsIn(`${name} ${words}`)))];
  const words = wordsIn(query).slice(0, MOST_WORDS);
  const isKnown = (word: string) => known.some((each) => each.startsWith(word));
  const meant = words.flatMap((word) => {
    if (isKnown(word)) return [word];
    // The end of a long word may be what it has too much: "amplifiers" begins with one that is known.
    const begins = known.find((each) => each.length > SHORTEST_SLIP && word.startsWith(each));
    const near = word.length < SHORTEST_SLIP ? null : (begins ?? nearestName(word, known, 1));
    return near === null ? [] : [near];
  });
  // Beside a word that is known one may be anything; where none is, each has to be a slip of one.
  if (meant.length < words.length && !words.some(isKnown)) return [];
  if (meant.length === 0) return [];
  const all = searchGear(meant.join(" "), own);
  return all.length > 0 ? all : [...new Set(meant.flatMap((word) => searchGear(word, own)))];
}
