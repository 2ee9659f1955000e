import { expect, test } from "vitest";
import { VersusDoc } from "../../../engine/answers/versus/ask.ts";
import { gainsWords } from "../../../engine/answers/versus/gainsWords.ts";
import type { PlanColumn } from "../../../engine/answers/versus/planColumns.ts";
import { decisionTable } from "../../../engine/answers/versus/rows.ts";
import { tallyCounts, tallyDrawing, tallyKey } from "../../../engine/answers/versus/tallyDrawing.ts";
import { versusCsv } from "../../../engine/answers/versus/versusCsv.ts";
import { versusPicture } from "../../../engine/answers/versus/versusPicture.ts";
import { versusSentence } from "../../../engine/answers/versus/versusWords.ts";
import { failsFromStep } from "../../../engine/odds/fails.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import type { Look } from "../../../engine/words/look.ts";
import { exampleEnsemble, variantChanges } from "../ensemble/exampleEnsemble.ts";

const MEMBERS = 60;
const contestant = (changes: readonly Change[]) => {
  const ensemble = exampleEnsemble("walnut-grove", changes);
  return { ensemble, part: runMembers(ensemble, 0, MEMBERS) };
};
const roof = contestant([]);
const others = {
  meadow: contestant(variantChanges("walnut-grove", "meadow")),
  "one-station": contestant(variantChanges("walnut-grove", "one-station")),
  "two-blocks": contestant(variantChanges("walnut-grove", "two-blocks")),
};
const plain = (text: string) => text.replaceAll("\u202f", " ");
const pairs = Object.entries(others).map(([id, other]) => ({ id, pair: versusPicture(roof, other) }));
const columns: PlanColumn[] = [
  { id: "roof", name: "Roof alone", look: "second", side: pairs[0]!.pair.first, pair: null },
  ...pairs.map(({ id, pair }, k): PlanColumn => {
    return { id, name: id, look: (["first", "third", "fourth"] as Look[])[k]!, side: pair.second, pair };
  }),
];
const { rows, same } = decisionTable(columns);
const row = (id: string) => rows.find((each) => each.id === id)!;
const texts = (id: string) => row(id).cells.map(({ text }) => plain(text));
const best = (id: string) => row(id).cells.map(({ isBest }) => isBest);

test("every column is held against the first: its tally is counted member by member", () => {
  const holds = (of: typeof roof, member: number) => failsFromStep(of.part.outcomes, member) < 0;
  Object.values(others).forEach((other, k) => {
    const count = (both: boolean, only: boolean) =>
      Array.from({ length: MEMBERS }, (_, m) => m).filter((m) => holds(roof, m) === both && holds(other, m) === only)
        .length;
    const { tally } = columns[k + 1]!.pair!;
    expect(tally).toEqual({
      both: count(true, true),
      onlySecond: count(false, true),
      onlyFirst: count(true, false),
      neither: count(false, false),
    });
    const [open, only, lost, neither] = tallyCounts(columns[k + 1]!);
    expect(open + only + lost + neither).toBe(100);
    expect(Math.abs(only - (100 * tally.onlySecond) / MEMBERS)).toBeLessThan(1);
  });
  expect(tallyDrawing(columns[1]!).body.text.match(/<rect|<circle/g)).toHaveLength(100);
  expect(tallyKey(columns)).not.toContain("half: only without");
});

test("money, weight, work and hours are a person's sums, and what is not stated says so", () => {
  expect(texts("money")).toEqual(["900", "1 160", "900", "1 800"]);
  expect(texts("mass")).toEqual(["23 kg", "37 kg", "23 kg", "46 kg"]);
  // 24 min to set up and 11 turns of 3 min; a block more of one that took none.
  expect(texts("work")).toEqual(["0 min", "57 min", "0 min", "not stated"]);
  // Three stations: 10 to 20, 17 to 21 and 10 to 18 o'clock, from Thursday 10:00 to Sunday 16:00: 36 + 12 + 30 h.
  expect(texts("onAir")).toEqual(["78 h", "78 h", "66 h", "78 h"]);
  expect(best("money")).toEqual([true, false, true, false]);
  expect(best("work")).toEqual([true, false, true, false]);
  expect(best("onAir")).toEqual([true, true, false, true]);
});

test("rows that are equal in all columns fold into one line, and none that tells them apart does", () => {
  expect(rows.map(({ id }) => id)).toEqual([
    "holds",
    "dark",
    "fails",
    "lowest",
    "sun",
    "onAir",
    "money",
    "mass",
    "work",
  ]);
  expect(plain(same)).toBe("no fuel; reserve 20 %; the same 60 skies and operators.");
  for (const { cells } of rows) expect(new Set(cells.map(({ text }) => text)).size).toBeGreaterThan(1);
  // Two columns that are one plan: only the odds stay, and nobody is best.
  const twice = decisionTable([columns[0]!, { ...columns[0]!, pair: versusPicture(roof, roof) }]);
  expect(twice.rows.map(({ id }) => id)).toEqual(["holds"]);
  expect(twice.rows[0]!.cells.some(({ isBest }) => isBest)).toBe(false);
});

test("a sum that is short of something is a least, and never the best of its row", () => {
  const short = (cost: number | null, lacks: readonly ["cost"] | readonly []) => ({
    ...columns[1]!,
    side: { ...columns[1]!.side, burden: { ...columns[1]!.side.burden, cost, lacks } },
  });
  const money = (...of: ReturnType<typeof short>[]) => {
    const { cells } = decisionTable(of).rows.find(({ id }) => id === "money")!;
    return cells.map(({ text, isBest }) => `${plain(text)}${isBest ? "*" : ""}`);
  };
  expect(money(short(900, []), short(400, ["cost"]))).toEqual(["900", "at least 400"]);
  expect(money(short(900, []), short(950, ["cost"]))).toEqual(["900*", "at least 950"]);
  expect(money(short(900, []), short(null, ["cost"]))).toEqual(["900*", "not stated"]);
});

test("who gains and who pays, in two sentences", () => {
  const said = plain(
    gainsWords(columns)
      .map(({ text }) => text)
      .join(""),
  );
  expect(said).toMatch(/^.+ gains most: with .+ it goes without .+ on average, not .+Wh\. With /);
  expect(said).toContain("with one-station HF data position gives up 12 h");
  expect(said).toContain("With meadow somebody re-aims panels 11 times, 3 min each");
  expect(gainsWords(columns).filter(({ as }) => as !== undefined).length).toBeGreaterThan(2);
});

test("the sentence has the gain of each with what it costs, and CSV the table's own rows", () => {
  const said = plain(
    versusSentence(columns)
      .map(({ text }) => text)
      .join(""),
  );
  const saved = Math.round((100 * pairs[0]!.pair.tally.onlySecond) / MEMBERS);
  expect(said).toMatch(
    new RegExp(`^meadow against Roof alone: in ${saved} of 100 skies it turns a bank that fails into one that holds`),
  );
  expect(said).toContain(", for 260 in money, 14 kg and 57 min of work.");
  expect(said).toContain(", for 900 in money and 23 kg.");
  const lines = versusCsv(columns).split(/\r?\n/);
  expect(lines[0]).toBe(",Roof alone,meadow,one-station,two-blocks");
  expect(lines.find((line) => line.startsWith("Money"))).toBe("Money,900,1160,900,1800");
  expect(lines.some((line) => line.includes("not stated"))).toBe(true);
});

test("a table written while two were all that could be compared opens as one of two; five are refused, and so is one", () => {
  expect(VersusDoc.parse({ first: "roof", second: "meadow" })).toEqual({ scenarios: ["roof", "meadow"] });
  expect(VersusDoc.safeParse({ scenarios: ["a", "b", "c", "d", "e"] }).success).toBe(false);
  expect(VersusDoc.safeParse({ scenarios: ["a"] }).success).toBe(false);
  expect(VersusDoc.safeParse({ first: "roof" }).success).toBe(false);
  expect(VersusDoc.safeParse({ first: "roof", second: "meadow", third: "x" }).success).toBe(false);
});
