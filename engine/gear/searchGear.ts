import { GENERIC_GEAR, type GenericGear } from "./gearTable.ts";

const plain = (text: string) => text.normalize("NFKD").toLowerCase();

/** Kinds of gear in which every word of the query begins a word of the name, or of what else it is called; all for an empty query. */
export function searchGear(query: string): GenericGear[] {
  const wanted = plain(query)
    .split(/[^a-z0-9]+/)
    .filter(Boolean);
  const has = (text: string, word: string) =>
    plain(text)
      .split(/[^a-z0-9]+/)
      .some((each) => each.startsWith(word));
  const found = GENERIC_GEAR.filter(({ name, words }) => wanted.every((word) => has(`${name} ${words}`, word)));
  // What is named so stands before what is only called so.
  const byName = (gear: GenericGear) => (wanted.every((word) => has(gear.name, word)) ? 0 : 1);
  return found.sort((a, b) => byName(a) - byName(b));
}
