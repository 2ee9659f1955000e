import { expect, test } from "vitest";
import { outside, overlapPx2, turnedRoom } from "../../../engine/drawing/nameRoom.ts";

test("a name takes room along its own direction, off its line on the upper side", () => {
  const level = turnedRoom({ x: 100, y: 100, turnDeg: 0 }, 10, 14);
  expect(Math.min(...level.map(({ left }) => left))).toBeCloseTo(59, 9);
  expect(Math.max(...level.map(({ right }) => right))).toBeCloseTo(141, 9);
  expect([level[0]!.top, level[0]!.bottom]).toEqual([77, 95]);
  const upright = turnedRoom({ x: 100, y: 100, turnDeg: 90 }, 10, 14);
  expect(Math.min(...upright.map(({ top }) => top))).toBeCloseTo(59, 9);
  expect(upright.every(({ left, right }) => left > 104 && right < 124)).toBe(true);
  // Down to the right: what lies in the empty corner of the whole name's frame is not taken.
  const slant = turnedRoom({ x: 100, y: 100, turnDeg: 45 }, 20, 0);
  expect(overlapPx2(slant, [{ left: 130, right: 150, top: 50, bottom: 70 }])).toBe(0);
  expect(overlapPx2(slant, [{ left: 130, right: 150, top: 130, bottom: 150 }])).toBeGreaterThan(0);
});

test("what sticks out of a frame lies on its outside", () => {
  const frame = { left: 0, right: 200, top: 0, bottom: 100 };
  const at = (x: number, y: number) => overlapPx2(turnedRoom({ x, y, turnDeg: 0 }, 4, 0), outside(frame));
  expect(at(100, 50)).toBe(0);
  for (const [x, y] of [
    [5, 50],
    [195, 50],
    [100, 3],
    [100, 97],
  ] as const)
    expect(at(x, y)).toBeGreaterThan(0);
});
