import { expect, test } from "vitest";
import { smallestReaching } from "../../../engine/reach/smallestReaching.ts";

test("finds every place at which something is reached first, from wherever it looks first, and asks seldom", async () => {
  for (const most of [1, 2, 3, 7, 30]) {
    for (let first = 1; first <= most + 1; first++) {
      for (const about of [undefined, ...Array.from({ length: most }, (_, k) => k + 1)]) {
        const asked: number[] = [];
        const reaches = async (at: number) => {
          asked.push(at);
          return at >= first;
        };
        const found = await smallestReaching(most, true, reaches, about);
        expect([most, first, about, found]).toEqual([most, first, about, first <= most ? first : null]);
        expect(asked.every((at) => at >= 1 && at <= most)).toBe(true);
        expect(new Set(asked).size).toBe(asked.length);
        expect(asked.length).toBeLessThanOrEqual(2 * Math.ceil(Math.log2(most + 1)) + 2);
      }
    }
  }
});

test("where going on may take back what was reached, the first of all is found", async () => {
  const holds = [false, true, false, false, true];
  const reaches = async (at: number) => holds[at - 1]!;
  expect(await smallestReaching(5, false, reaches)).toBe(2);
  expect(await smallestReaching(1, false, reaches)).toBe(null);
  expect(await smallestReaching(0, true, reaches)).toBe(null);
});
