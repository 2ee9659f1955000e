import { expect, test } from "vitest";
import { normalOfWord } from "../../../engine/chance/normalOfWord.ts";
import { normalQuantile } from "../../../engine/chance/normalQuantile.ts";

const LAST = 2 ** 32 - 1;
const exact = (word: number) => normalQuantile((word + 0.5) / 2 ** 32);

/** Words from one end to the other, and those around each seam of the table. */
const words = [
  ...Array.from({ length: 400_000 }, (_, k) => Math.floor((k / 400_000) * LAST)),
  ...Array.from({ length: 4095 }, (_, k) => (k + 1) * 2 ** 20).flatMap((seam) => [seam - 1, seam, seam + 1]),
  0,
  1,
  LAST - 1,
  LAST,
].sort((a, b) => a - b);

test("a word's normal value is its share's quantile", () => {
  // The quantile itself is held to published tables in normalQuantile.test.ts.
  let worst = 0;
  for (const word of words) worst = Math.max(worst, Math.abs(normalOfWord(word) - exact(word)));
  expect(worst).toBeLessThan(1.1e-5);
  for (const word of [0, 1000, 2 ** 26 - 1, LAST - 2 ** 26 + 1, LAST]) expect(normalOfWord(word)).toBe(exact(word));
});

test("it rises with the word, and is odd about the middle", () => {
  let before = Number.NEGATIVE_INFINITY;
  let leastRise = Number.POSITIVE_INFINITY;
  let worstOdd = 0;
  for (const word of new Set(words)) {
    const z = normalOfWord(word);
    leastRise = Math.min(leastRise, z - before);
    before = z;
    worstOdd = Math.max(worstOdd, Math.abs(normalOfWord(LAST - word) + z));
  }
  expect(leastRise).toBeGreaterThan(0);
  expect(worstOdd).toBeLessThan(1e-6);
});

test("over all words, the mean is 0 and the spread is 1", () => {
  const n = 1 << 20;
  let sum = 0;
  let squares = 0;
  for (let k = 0; k < n; k++) {
    const z = normalOfWord(k * 4096 + 2048);
    sum += z;
    squares += z * z;
  }
  expect(Math.abs(sum / n)).toBeLessThan(1e-8);
  expect(squares / n).toBeCloseTo(1, 4);
});
