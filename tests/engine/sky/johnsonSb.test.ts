import { expect, test } from "vitest";
import { nextNormal, openStream, seedWords } from "../../../engine/chance/stream.ts";
import {
  boundedShape,
  boundedValue,
  fillTable,
  readTable,
  TABLE_NODES,
  tableInverse,
} from "../../../engine/sky/johnsonSb.ts";

test.each([
  [0.5, 0.15, 0.02, 0.77],
  [0.7, 0.1, 0.02, 0.82],
  [0.3, 0.18, 0.02, 0.78],
  [0.7, 0.28, 0, 1.12],
  [0.98, 0.05, 0, 1.12],
])("draws with mean %d and spread %d between %d and %d have them", (mean, sd, low, high) => {
  const shape = boundedShape(mean, sd, low, high);
  const table = new Float64Array(TABLE_NODES);
  fillTable(table, 0, (z) => boundedValue(shape, z));
  const state = new Uint32Array(4);
  openStream(state, seedWords("johnson"), 0, "sky");
  const n = 100_000;
  let [first, second, outside] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const value = readTable(table, 0, nextNormal(state));
    if (value < low || value > high) outside++;
    first += value / n;
    second += value ** 2 / n;
  }
  expect(outside).toBe(0);
  // Three sampling errors of a mean, and 1 % for the table's straight lines.
  expect(Math.abs(first - mean)).toBeLessThan((3 * sd) / Math.sqrt(n) + 0.0005);
  expect(Math.abs(Math.sqrt(second - first ** 2) / sd - 1)).toBeLessThan(0.01);
});

test("more spread than the bounds can carry is held, not refused", () => {
  for (const sd of [0.5, 5]) {
    const shape = boundedShape(0.4, sd, 0, 1);
    expect([shape.shift, shape.scale].every(Number.isFinite)).toBe(true);
    for (const z of [-4, 0, 4]) expect(boundedValue(shape, z)).toBeGreaterThanOrEqual(0);
  }
});

test("a table reads straight between its nodes, level beyond, and back again", () => {
  const table = new Float64Array(TABLE_NODES + 5);
  fillTable(table, 5, (z) => 2 * z + 1);
  expect(readTable(table, 5, 0.123)).toBeCloseTo(1.246, 5);
  expect(readTable(table, 5, 9)).toBeCloseTo(2 * 4.8 + 1, 3);
  expect(readTable(table, 5, -9)).toBeCloseTo(-2 * 4.8 + 1, 3);
  expect(tableInverse(table, 5, 1.246)).toBeCloseTo(0.123, 5);
  expect(tableInverse(table, 5, 100)).toBeCloseTo(3, 6);
});
