import fc from "fast-check";

const JUNK: readonly unknown[] = [
  null, true, "", " ", "x", "0", "-1", "1e999", "NaN", "2026-02-30T25:61", "__proto__", "\u0000\u202e\ud800", "=1+1",
  0, -1, 1.5, 1e-320, 1e308, -1e308, 2 ** 53, [], {}, [[]], [null], { id: "x" }, { kind: "tree" }, "y".repeat(5000),
  Array.from({ length: 300 }, () => ({})), Array.from({ length: 30 }).reduce((inner) => [inner], "deep"),
]; // biome-ignore format: a list of values

type Holder = Record<string | number, unknown>;

/** Every place of a document that something can be done to. */
function placesOf(value: unknown): { holder: Holder; key: string | number }[] {
  if (typeof value !== "object" || value === null) return [];
  const keys: (string | number)[] = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return keys.flatMap((key) => [{ holder: value as Holder, key }, ...placesOf((value as Holder)[key])]);
}

const WAYS = ["replace", "delete", "rename", "add", "twice", "swap"] as const;
const damage = fc.record({
  place: fc.nat(),
  other: fc.nat(),
  way: fc.constantFrom(...WAYS),
  junk: fc.nat({ max: JUNK.length - 1 }),
});
type Damage = typeof damage extends fc.Arbitrary<infer Value> ? Value : never;

function damaged(document: unknown, { place, other, way, junk }: Damage): void {
  const places = placesOf(document);
  if (places.length === 0) return;
  const { holder, key } = places[place % places.length]!;
  const value = structuredClone(JUNK[junk]);
  if (way === "replace") holder[key] = value;
  else if (way === "delete") Array.isArray(holder) ? holder.splice(Number(key), 1) : delete holder[key];
  else if (way === "twice" && Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
  else if (way === "swap") {
    const that = places[other % places.length]!;
    // A copy, or a part could come to lie inside itself.
    holder[key] = structuredClone(that.holder[that.key]);
  } else if (!Array.isArray(holder)) {
    holder[way === "rename" ? `${key}x` : `new${junk}`] = value;
    if (way === "rename") delete holder[key];
  }
}

/** Documents that were right once, with a few things done to them. */
export function brokenDocument(documents: readonly unknown[]): fc.Arbitrary<unknown> {
  return fc
    .record({ which: fc.nat({ max: documents.length - 1 }), damages: fc.array(damage, { minLength: 1, maxLength: 4 }) })
    .map(({ which, damages }) => {
      const document = structuredClone(documents[which]);
      for (const each of damages) damaged(document, each);
      return document;
    });
}

const PIECES: readonly string[] = [
  "", " ", ",", ";", "\t", "\n", "\r\n", "\n\n", '"', '""', "'", "\u0000", "\ufeff", "\u2212", "1e999", "-", "=1+1", "24:00", "2026-13-45",
  "31/12/2026 23:59", "-9900", "9999", "99.9", "x", "ä", "\u202e", " ".repeat(300), ",".repeat(300), "9".repeat(300), "# latitude: 91", "T", "Z",
]; // biome-ignore format: a list of texts

const cut = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.nat({ max: 60 }),
  piece: fc.constantFrom(...PIECES),
});

/** Files that were right once, with pieces cut out and others put in. */
export function brokenText(texts: readonly string[]): fc.Arbitrary<string> {
  return fc
    .record({ which: fc.nat({ max: texts.length - 1 }), cuts: fc.array(cut, { minLength: 1, maxLength: 5 }) })
    .map(({ which, cuts }) => {
      let text = texts[which]!;
      for (const { at, length, piece } of cuts) {
        const from = Math.floor(at * text.length);
        text = text.slice(0, from) + piece + text.slice(from + length);
      }
      return text;
    });
}
