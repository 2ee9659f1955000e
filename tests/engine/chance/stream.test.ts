import { expect, test } from "vitest";
import {
  nextNormal,
  nextUnit,
  nextWord,
  openStream,
  PURPOSES,
  type Purpose,
  STREAM_WORDS,
  seedWords,
} from "../../../engine/chance/stream.ts";

const opened = (seed: string, member: number, purpose: Purpose) => {
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, seedWords(seed), member, purpose);
  return state;
};
const names = Object.keys(PURPOSES) as Purpose[];

// First ten outputs of the authors' reference program xoshiro128plusplus.c (Blackman and Vigna, 2019) from the state 1, 2, 3, 4, as
// kept in the tests of several libraries that port it.
test("the generator gives its authors' vector", () => {
  const state = Uint32Array.of(1, 2, 3, 4);
  const vector = [
    641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295, 495546011, 621204420,
  ];
  expect(vector.map(() => nextWord(state))).toEqual(vector);
});

test("a purpose keeps its number, and with it all its draws, for ever", () => {
  // New purposes go on after these; none of these lines ever changes.
  expect(Object.entries(PURPOSES).slice(0, 7)).toEqual([
    ["sky", 1],
    ["cloud", 2],
    ["air", 3],
    ["activity", 4],
    ["start", 5],
    ["sureness", 6],
    ["blocks", 7],
  ]);
  expect(new Set(Object.values(PURPOSES)).size).toBe(names.length);
  expect([...seedWords("duskline")]).toMatchInlineSnapshot(`
    [
      -1292476840,
      -1062033254,
      -248165915,
      -813182154,
    ]
  `);
  const firsts = names.slice(0, 7).map((name) => nextWord(opened("duskline", 7, name)));
  expect(firsts).toMatchInlineSnapshot(`
    [
      3491631633,
      4081949973,
      626355812,
      406708262,
      909688112,
      2412890125,
      43617513,
    ]
  `);
});

test("the same seed, member and purpose give the same draws, whatever else was drawn", () => {
  const alone = opened("a", 3, "cloud");
  const first = [nextNormal(alone), nextUnit(alone), nextNormal(alone)];
  const other = opened("a", 4, "cloud");
  for (let i = 0; i < 100; i++) nextNormal(other);
  const again = opened("a", 3, "cloud");
  expect([nextNormal(again), nextUnit(again), nextNormal(again)]).toEqual(first);
});

test("no two members and purposes of a seed start alike, nor two seeds", () => {
  const seen = new Set<string>();
  for (let member = 0; member < 3000; member++) {
    for (const name of names) seen.add(opened("a", member, name).join());
  }
  expect(seen.size).toBe(3000 * names.length);
  expect([...seedWords("a")]).not.toEqual([...seedWords("b")]);
  expect([...seedWords("")]).not.toEqual([...seedWords(" ")]);
});

test("even draws lie inside 0 and 1 whatever the word", () => {
  // 2^32 − 1 comes out of the state 2^32 − 1, 0, 0, 0: ((s0 + s3) rotated) + s0 with s0 = −1 is −2; s3 = 1 gives 0 − 1.
  expect(nextUnit(Uint32Array.of(0xffffffff, 7, 7, 1))).toBe(1 - 2 ** -33);
  expect(nextUnit(Uint32Array.of(0, 7, 7, 0))).toBe(2 ** -33);
  expect(Number.isFinite(nextNormal(Uint32Array.of(0xffffffff, 7, 7, 1)))).toBe(true);
  expect(Number.isFinite(nextNormal(Uint32Array.of(0, 7, 7, 0)))).toBe(true);
});

/** χ² of counts that should be equal, as standard deviations from its mean. */
function chiSquareZ(counts: Float64Array): number {
  const expected = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  const chi = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  return (chi - (counts.length - 1)) / Math.sqrt(2 * (counts.length - 1));
}

// Knuth, The Art of Computer Programming, vol. 2, section 3.3.1: χ² of a sound generator strays from its mean by 3 standard
// deviations once in some hundred tests; the draws here are fixed, so the tests either pass for ever or not at all.
test("draws fill 0 to 1 evenly, one after the other and in pairs", () => {
  const state = opened("even", 0, "sky");
  const singles = new Float64Array(256);
  const pairs = new Float64Array(32 * 32);
  let before = nextUnit(state);
  for (let i = 0; i < 400_000; i++) {
    const unit = nextUnit(state);
    singles[Math.floor(unit * 256)]!++;
    if (i % 2 === 0) pairs[Math.floor(before * 32) * 32 + Math.floor(unit * 32)]!++;
    before = unit;
  }
  expect(Math.abs(chiSquareZ(singles))).toBeLessThan(3);
  expect(Math.abs(chiSquareZ(pairs))).toBeLessThan(3);
});

test.each([
  ["members next to each other", (k: number) => [opened("i", k, "sky"), opened("i", k + 1, "sky")] as const],
  ["purposes of a member", (k: number) => [opened("i", k, "sky"), opened("i", k, "cloud")] as const],
  ["seeds that differ in a letter", (k: number) => [opened(`s${k}`, 0, "sky"), opened(`t${k}`, 0, "sky")] as const],
])("%s have nothing in common", (_what, pairOf) => {
  const cells = new Float64Array(16 * 16);
  let product = 0;
  const n = 20_000;
  for (let k = 0; k < n; k++) {
    const [one, other] = pairOf(k * 2);
    const [a, b] = [nextUnit(one), nextUnit(other)];
    cells[Math.floor(a * 16) * 16 + Math.floor(b * 16)]!++;
    product += nextNormal(one) * nextNormal(other);
  }
  expect(Math.abs(chiSquareZ(cells))).toBeLessThan(3);
  expect(Math.abs(product / n) * Math.sqrt(n)).toBeLessThan(3);
});

test("normal draws have the moments of a normal distribution", () => {
  const state = opened("normal", 1, "air");
  const n = 400_000;
  const moments = [0, 0, 0, 0];
  let beyond = 0;
  for (let i = 0; i < n; i++) {
    const z = nextNormal(state);
    for (let k = 0; k < 4; k++) moments[k]! += z ** (k + 1) / n;
    if (Math.abs(z) > 2.575829) beyond++;
  }
  // Sampling errors: 1, √2, √15, √96 over √n.
  expect(Math.abs(moments[0]!)).toBeLessThan(3 / Math.sqrt(n));
  expect(Math.abs(moments[1]! - 1)).toBeLessThan((3 * Math.sqrt(2)) / Math.sqrt(n));
  expect(Math.abs(moments[2]!)).toBeLessThan((3 * Math.sqrt(15)) / Math.sqrt(n));
  expect(Math.abs(moments[3]! - 3)).toBeLessThan((3 * Math.sqrt(96)) / Math.sqrt(n));
  expect(Math.abs(beyond / n - 0.01)).toBeLessThan(3 * Math.sqrt(0.0099 / n));
});
