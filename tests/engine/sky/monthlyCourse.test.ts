import { expect, test } from "vitest";
import { monthlyCourse } from "../../../engine/sky/monthlyCourse.ts";

const year = Array.from({ length: 365 }, (_, day) => new Date(Date.UTC(2025, 0, 1 + day)).toISOString().slice(0, 10));
const monthly = [0.3, 0.36, 0.42, 0.46, 0.47, 0.46, 0.45, 0.46, 0.43, 0.38, 0.31, 0.26];

test("each month keeps its mean", () => {
  const course = monthlyCourse(monthly, year);
  monthly.forEach((wanted, month) => {
    const days = [...course].filter((_, day) => Number(year[day]!.slice(5, 7)) === month + 1);
    // Months differ in length by a tenth, which the rule for the middles leaves out.
    expect(Math.abs(days.reduce((sum, value) => sum + value, 0) / days.length - wanted)).toBeLessThan(0.0005);
  });
});

test("nothing jumps between months or between years", () => {
  const course = monthlyCourse(monthly, year);
  for (let day = 0; day < 365; day++) {
    expect(Math.abs(course[day]! - course[(day + 364) % 365]!)).toBeLessThan(0.004);
  }
  // A leap day lies between its neighbours.
  const leap = monthlyCourse(monthly, ["2024-02-28", "2024-02-29", "2024-03-01"]);
  expect(leap[1]! > leap[0]! && leap[1]! < leap[2]!).toBe(true);
});
