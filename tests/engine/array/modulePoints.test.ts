import { expect, test } from "vitest";
import { modulePoints } from "../../../engine/array/modulePoints.ts";
import { panelGroup } from "./oneGroup.ts";

const module = { ratedW: 100, bypassSections: 3, lengthM: 1, widthM: 0.6 };
const at = { eastM: 10, northM: 20, heightM: 2 };

/** Points as rows of east, north, up. */
function rows(points: Float64Array): number[][] {
  return Array.from({ length: points.length / 3 }, (_, p) => [...points.subarray(3 * p, 3 * p + 3)]);
}

test("one point to each module stands in its middle, in a row with gaps, centred on the group", () => {
  const group = panelGroup({ count: 3, module: { ...module, bypassSections: 1 }, at });
  const points = rows(modulePoints(group, 0, 180, { across: 1, along: 1 }));
  // Facing south, the row runs east and west.
  expect(points.map((p) => p[0]! - 10).sort((a, b) => a - b)).toEqual([
    expect.closeTo(-0.62),
    expect.closeTo(0),
    expect.closeTo(0.62),
  ]);
  for (const p of points) {
    expect(p[1]).toBeCloseTo(20);
    expect(p[2]).toBeCloseTo(2);
  }
});

test("sections are stripes side by side, each as long as the module", () => {
  const group = panelGroup({ module, at });
  const points = rows(modulePoints(group, 0, 180, { across: 1, along: 2 }));
  expect(points).toHaveLength(6);
  for (let section = 0; section < 3; section++) {
    const [first, second] = points.slice(2 * section, 2 * section + 2);
    expect(first![0]).toBeCloseTo(second![0]!); // one stripe
    expect(Math.abs(first![1]! - second![1]!)).toBeCloseTo(0.5); // half the length apart
  }
  expect(Math.abs(points[0]![0]! - points[2]![0]!)).toBeCloseTo(0.2); // a third of the width apart
  expect(Math.abs(points[0]![0]! - points[4]![0]!)).toBeCloseTo(0.4);
});

test("a tilted panel's lower edge lies towards where it faces", () => {
  const group = panelGroup({ module: { ...module, bypassSections: 1 }, at });
  const points = rows(modulePoints(group, 30, 90, { across: 1, along: 2 }));
  const [low, high] = points[0]![2]! < points[1]![2]! ? points : [...points].reverse();
  expect(high![2]! - low![2]!).toBeCloseTo(0.5 * Math.sin(Math.PI / 6));
  expect(low![0]! - high![0]!).toBeCloseTo(0.5 * Math.cos(Math.PI / 6)); // east, where it faces
  expect((low![2]! + high![2]!) / 2).toBeCloseTo(2);
});

test("a level group's heading is the bearing of its modules' length", () => {
  const group = panelGroup({ module: { ...module, bypassSections: 1 }, at });
  const [a, b] = rows(modulePoints(group, 0, 45, { across: 1, along: 2 }));
  expect(Math.abs(a![0]! - b![0]!)).toBeCloseTo(0.5 * Math.SQRT1_2);
  expect(a![0]! - b![0]!).toBeCloseTo(a![1]! - b![1]!); // north-east and south-west
});
