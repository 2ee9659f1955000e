import fc from "fast-check";
import jsQR from "jsqr";
import { encode } from "uqr";
import { describe, expect, test } from "vitest";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import {
  CODE_BYTES,
  CODE_VERSION,
  codeAddresses,
  fragmentOfPieces,
  MOST_PARTS,
  markOf,
  readPart,
} from "../../../explorer/share/linkParts.ts";
import { addPart, dropParts, PARTS_KEY, type PartStore, setsIn } from "../../../explorer/share/partBox.ts";
import { reachOf } from "../../../explorer/share/reachOf.ts";
import { shareFragment } from "../../../explorer/share/shareLink.ts";

const PAGE = "https://club.example/duskline/";
const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const linkOf = (length: number) =>
  `#share=1.${Array.from({ length }, (_, i) => letters[(i * i * 7 + i) % 64]).join("")}`;
const addressesOf = (fragment: string, page = PAGE) => {
  const codes = codeAddresses(page, fragment);
  if (!codes.ok) throw new Error(codes.sentence);
  return codes.addresses;
};
const hashOf = (address: string) => address.slice(address.indexOf("#"));
const partOf = (address: string) => {
  const read = readPart(hashOf(address));
  if (!read.ok) throw new Error(read.sentences.join(" "));
  return read.part;
};
function makeStore(): PartStore & { text: string | null } {
  const store = {
    text: null as string | null,
    getItem: () => store.text,
    setItem(key: string, value: string) {
      expect(key).toBe(PARTS_KEY);
      store.text = value;
    },
  };
  return store;
}

describe("a link as codes", () => {
  test("the mark is FNV-1a: published vectors (RFC 9923, appendix of test values, from memory)", () => {
    expect(markOf("")).toBe((0x811c9dc5).toString(36));
    expect(markOf("a")).toBe((0xe40c292c).toString(36));
    expect(markOf("foobar")).toBe((0xbf9cf968).toString(36));
  });

  test("a short link is one code, and is itself", () => {
    expect(addressesOf(linkOf(300))).toEqual([`${PAGE}${linkOf(300)}`]);
  });

  test("the example takes few codes, each of which another program reads, letter by letter", async () => {
    const made = await shareFragment(exampleNotebook("example"));
    if (!made.ok) throw new Error(made.sentence);
    const addresses = addressesOf(made.fragment);
    expect(addresses.length).toBeGreaterThan(1);
    expect(addresses.length).toBeLessThanOrEqual(MOST_PARTS);
    for (const address of addresses) {
      const { data, size } = encode(address, { ecc: "L", maxVersion: CODE_VERSION, border: 4 });
      const side = size * 3;
      const dots = new Uint8ClampedArray(side * side * 4);
      for (let i = 0; i < side * side; i++) {
        const isDark = data[Math.floor(i / side / 3)]![Math.floor((i % side) / 3)]!;
        dots.set([isDark ? 0 : 255, isDark ? 0 : 255, isDark ? 0 : 255, 255], i * 4);
      }
      expect(jsQR(dots, side, side, { inversionAttempts: "dontInvert" })?.data).toBe(address);
    }
  });

  test("a code takes as much as it is said to take, and no letter more", () => {
    const full = "x".repeat(CODE_BYTES);
    expect(encode(full, { ecc: "L", maxVersion: CODE_VERSION }).version).toBe(CODE_VERSION);
    expect(() => encode(`${full}x`, { ecc: "L", maxVersion: CODE_VERSION })).toThrow();
  });

  test("whatever its length and address, its parts fit, and in any order and number of times come to the same link", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 7000 }),
        fc.string({ maxLength: 60, unit: fc.constantFrom(..."abc/-".split("")) }),
        fc.infiniteStream(fc.nat()),
        (length, path, chance) => {
          const fragment = linkOf(length);
          const addresses = addressesOf(fragment, `${PAGE}${path}`);
          for (const address of addresses) expect(address.length).toBeLessThanOrEqual(CODE_BYTES);
          if (addresses.length === 1) return;
          const store = makeStore();
          let set = addPart(store, partOf(addresses[0]!));
          while (set.pieces.includes(null)) {
            set = addPart(store, partOf(addresses[chance.next().value % addresses.length]!));
          }
          expect(fragmentOfPieces(set.mark, set.pieces as string[])).toBe(fragment);
          dropParts(store, set.mark);
          expect(setsIn(store.text)).toEqual([]);
        },
      ),
    );
  });

  test("what takes more than six is refused with the number, and the file", () => {
    const codes = codeAddresses(PAGE, linkOf(9000));
    expect(codes).toMatchObject({ ok: false, sentence: expect.stringMatching(/would take 8 QR codes, and 6.*file/) });
    expect(codeAddresses(`${PAGE}${"x".repeat(2000)}`, linkOf(2000)).ok).toBe(false);
  });
});

describe("parts that came", () => {
  test.each([
    ["#part=", /no part of a notebook/],
    ["#part=2.abc.1.2.xyz", /newer duskline/],
    ["#part=1.abc.3.2.xyz", /no part of a notebook/],
    ["#part=1.abc.0.2.xyz", /no part of a notebook/],
    ["#part=1.abc.1.1.xyz", /no part of a notebook/],
    ["#part=1.abc.1.7.xyz", /no part of a notebook/],
    ["#part=1.ABC.1.2.xyz", /no part of a notebook/],
    ["#part=1.abc.1.2.", /no part of a notebook/],
    ["#part=1.abc.1.2.x<y", /no part of a notebook/],
    [`#part=1.abc.1.2.${"x".repeat(CODE_BYTES)}`, /too long/],
  ])("%s is refused", (hash, why) => {
    const read = readPart(hash.slice(0, 3000));
    expect(read.ok ? "read" : read.sentences.join(" ")).toMatch(why);
  });

  test("parts that do not belong together are not put together", () => {
    const [first] = addressesOf(linkOf(2000));
    const { mark, piece } = partOf(first!);
    expect(fragmentOfPieces(mark, [piece, `${"x".repeat(900)}`])).toBeNull();
    const store = makeStore();
    addPart(store, { mark, part: 1, of: 2, piece });
    expect(addPart(store, { mark: "other", part: 2, of: 2, piece: "x" }).pieces).toEqual([null, "x"]);
    expect(addPart(store, { mark, part: 2, of: 3, piece: "x" }).pieces).toEqual([null, "x", null]);
  });

  test("no more than three notebooks wait, and what else lies in the store is passed over", () => {
    const store = makeStore();
    for (const mark of ["a", "b", "c", "d"]) addPart(store, { mark, part: 1, of: 2, piece: mark });
    expect(setsIn(store.text).map(({ mark }) => mark)).toEqual(["d", "c", "b"]);
    const others = [null, 7, {}, { mark: "e" }, { mark: "f", pieces: [3] }, { mark: "g", pieces: Array(7).fill("x") }];
    for (const text of ["{", "7", "null", JSON.stringify(others)]) expect(setsIn(text)).toEqual([]);
  });
});

test.each([
  ["https://club.example/duskline/", "others"],
  ["http://192.168.178.24:4173/", "others"],
  ["http://127.0.0.1:4173/", "machine"],
  ["http://localhost:4173/", "machine"],
  ["http://duskline.localhost/", "machine"],
  ["http://[::1]:4173/", "machine"],
  ["file:///media/stick/duskline.html", "nobody"],
])("%s can be followed by %s", (url, reach) => {
  expect(reachOf(new URL(url))).toBe(reach);
});
