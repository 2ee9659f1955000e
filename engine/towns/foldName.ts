import { distance } from "fastest-levenshtein";

/** Letters that Unicode does not take apart into a plain letter and a mark, as they are typed without them. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  ð: "d",
  þ: "th",
  đ: "d",
  ł: "l",
  ħ: "h",
  ı: "i",
  ŋ: "n",
  ŧ: "t",
  ə: "e",
};
/** The same where a second letter stands for the mark: Köln is Koeln as well, Århus is Aarhus. */
const SPELT: Readonly<Record<string, string>> = { ä: "ae", ö: "oe", ü: "ue", å: "aa", ø: "oe" };

/** A name as it is compared: lower case, without marks, each other sign a space between words. Never longer than 200 letters. */
export function foldName(name: string): string {
  const short = name.slice(0, 200);
  // Most names are plain letters, and there are tens of thousands of them.
  if (/^[A-Za-z ]*$/.test(short)) return short.toLowerCase().trim();
  return short
    .toLowerCase()
    .normalize("NFD")
    .replace(/[\p{M}'’‘ʻʼ`´]/gu, "")
    .replace(/[ßæœøðþđłħıŋŧə]/g, (letter) => PLAIN[letter]!)
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/** The name with marks spelt out as a second letter, folded; the same as `foldName` where it has none. */
export function foldSpelt(name: string): string {
  const short = name.slice(0, 200).toLowerCase().normalize("NFC");
  return foldName(short.replace(/[äöüåø]/g, (letter) => SPELT[letter]!));
}

/** Words of which each may stand for the others, beginnings of names mostly. */
const SAME_WORDS = [
  ["st", "saint", "sankt", "sint", "santo", "sao"],
  ["ste", "sainte", "santa"],
  ["mt", "mount", "mont", "monte"],
  ["ft", "fort"],
  ["pt", "point", "port", "porto"],
  ["hts", "heights"],
  ["spgs", "springs"],
  ["jct", "junction"],
  ["is", "island"],
  ["n", "north"],
  ["s", "south"],
  ["e", "east"],
  ["w", "west"],
  ["uk", "gb"],
  ["usa", "us"],
];
const SAME = new Map<string, readonly string[]>(SAME_WORDS.flatMap((words) => words.map((word) => [word, words])));

/** Whether a word that is being typed may be the beginning of a word, or of one that stands for it. Both folded. */
export function wordMatches(typed: string, word: string): boolean {
  return word.startsWith(typed) || SAME.get(word)?.some((other) => other.startsWith(typed)) === true;
}

/** Letters that a name may be off by, from so many on. */
const OFF_BY_ONE_FROM = 5;
const OFF_BY_TWO_FROM = 8;

/** Whether a name was all but typed: a letter or two off, as by another language's ending ("Geneva", "Seville") or a slip. Both folded. */
export function almostSame(typed: string, name: string): boolean {
  const most = typed.length >= OFF_BY_TWO_FROM ? 2 : typed.length >= OFF_BY_ONE_FROM ? 1 : 0;
  return most > 0 && Math.abs(typed.length - name.length) <= most && distance(typed, name) <= most;
}

/** Whether two whole words are the same, or stand for each other. Both folded. */
export function sameWord(typed: string, word: string): boolean {
  return typed === word || SAME.get(typed)?.includes(word) === true;
}
