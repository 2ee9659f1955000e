import { expect, test } from "vitest";
import { gapFindings, usualInterval } from "../../../engine/meter/gapFindings.ts";

const MIN_MS = 60_000;
const at = (...minutes: number[]) => Float64Array.from(minutes, (minute) => minute * MIN_MS);

test("the usual interval is the one in the middle of all, whatever one gap is", () => {
  expect(usualInterval(at(0, 1, 2, 3, 600))).toBe(MIN_MS);
});

test("a gap of three usual intervals is none; a longer one is, up to the line on which the longest ends", () => {
  expect(gapFindings(at(0, 1, 2, 5), MIN_MS, [2, 3, 4, 5])).toEqual([]);
  const [found] = gapFindings(at(0, 1, 6, 7, 27), MIN_MS, [2, 3, 4, 5, 6]);
  expect(found).toMatchObject({ code: "gaps", rows: 2, line: 6 });
  expect(found!.message).toBe("2 gaps of more than 3 min, 25 min together; the longest, 20 min, ends on line 6.");
});
