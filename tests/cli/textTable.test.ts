import { expect, test } from "vitest";
import { csvRowsOf } from "../../engine/answers/column.ts";
import { textTable } from "../../engine/cli/textTable.ts";

const COLUMNS = [
  { head: "scenario", cell: ([name]: readonly [string, number]) => name, isWords: true },
  {
    head: "Lowest charge, 1 in 20 under",
    cell: ([, share]: readonly [string, number]) => `${Math.round(100 * share)}\u202f%`,
    raw: ([, share]: readonly [string, number]) => [share.toFixed(3), "0.010"] as const,
    hasPlusMinus: true,
  },
];
const ROWS = [
  ["the plan as it is", 0.0634],
  ["a second block", 1],
] as const;

test("long heads stand in several lines, low on the rule; figures stand right, narrow spaces are plain", () => {
  expect(textTable(ROWS, COLUMNS).split("\n")).toEqual([
    "                         Lowest",
    "                   charge, 1 in",
    "scenario               20 under",
    "-----------------  ------------",
    "the plan as it is           6 %",
    "a second block            100 %",
  ]);
});

test("the same columns leave for a spreadsheet unrounded, each ± in a column of its own", () => {
  expect(csvRowsOf(COLUMNS, ROWS)).toEqual([
    ["scenario", "Lowest charge, 1 in 20 under", "±"],
    ["the plan as it is", "0.063", "0.010"],
    ["a second block", "1.000", "0.010"],
  ]);
});
