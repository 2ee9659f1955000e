import { expect, test } from "vitest";
import { firstOfEachTime, rowsInOrder } from "../../../engine/meter/rowOrder.ts";

test("rows in order stay as they are, and nothing is said", () => {
  expect(rowsInOrder([1, 2, 2, 3], [2, 3, 4, 5])).toEqual({ rows: [0, 1, 2, 3], findings: [] });
});

test("rows out of order are put in order, those of one time as they stand, and the first line back is named", () => {
  const { rows, findings } = rowsInOrder([10, 30, 20, 10, 40], [2, 3, 5, 6, 7]);
  expect(rows).toEqual([0, 3, 2, 1, 4]);
  expect(findings.map(({ code, rows, line }) => [code, rows, line])).toEqual([["out-of-order", 2, 5]]);
});

test("of rows with one time the first stays, and those with other values are counted", () => {
  const { rows, findings } = firstOfEachTime([0, 1, 2, 3], [10, 10, 20, 20], [2, 3, 4, 5], [[1, 1, 2, 3]]);
  expect(rows).toEqual([0, 2]);
  expect(findings[0]).toMatchObject({ code: "duplicates", rows: 2, line: 3 });
  expect(findings[0]!.message).toMatch("2 rows repeat a time, 1 of them with other values, first on line 3");
});

test("two cells without a number are the same", () => {
  const [column] = [[Number.NaN, Number.NaN]];
  expect(firstOfEachTime([0, 1], [10, 10], [2, 3], [column!]).findings[0]!.message).not.toMatch("other values");
});
