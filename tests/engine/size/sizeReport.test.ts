import { expect, test } from "vitest";
import type { SizePart } from "../../../engine/size/sizeMembers.ts";
import { type SizeReport, sizeReport } from "../../../engine/size/sizeReport.ts";
import { SIZE_SCENARIO, sizeMapOf } from "./sizeScenario.ts";

const AIMS = { targetShare: 0.95, autonomyDays: 2 };
const MAP = sizeMapOf("bank.blockAh=80,100,120,150", "panels.roof.count=1,2,4");

/** A part with these counts of 200, as if it had been run. @param without members that keep their reserve and go dark */
function partOf(held: readonly number[], without: readonly number[] = held.map(() => 0), of = 200): SizePart {
  const goesWithout = Uint32Array.from(without);
  return { seed: "4127", from: 0, to: of, held: Uint32Array.from(held), dark: goesWithout, goesWithout };
}

// The stair runs 150, 120, 100; the last row falls back under the line once.
const HELD = [20, 90, 180, 195, 60, 150, 192, 199, 100, 191, 189, 200];

test("each row has the least value that meets the target, and says where a larger one does not", () => {
  const report = sizeReport(MAP, partOf(HELD), AIMS);
  expect(report.rows.map((row) => row.smallest?.x)).toEqual([150, 120, 100]);
  expect(report.rows.map((row) => row.failsAgainAt)).toEqual([[], [], [120]]);
  expect(report.sentences.join("\n")).toMatch(/bank\.blockAh 120 fails where the smaller 100 does not/);
  expect(report.rows[1]!.cells[2]!.holds.share).toBe(0.96);
  // Wilson's interval for 192 of 200 by hand: middle (0.96 + 1.9207/200)/(1 + 3.8415/200) = 0.9513, half 0.0282.
  expect(report.rows[1]!.cells[2]!.holds.low).toBeCloseTo(0.9231, 4);
  expect(report.rows[1]!.cells[2]!.holds.high).toBeCloseTo(0.9796, 4);
  expect(report.sentences[0]).toMatch(/^With 2 modules of 120 W in roof, as now, it takes 2 blocks of 120 Ah/);
});

test("a cell exactly on the target meets it; one whose interval holds the target is open", () => {
  const report = sizeReport(MAP, partOf(HELD.map((_, k) => (k === 0 ? 190 : k === 1 ? 189 : 200))), AIMS);
  const [on, under, over] = report.rows[0]!.cells;
  expect([on!.meets, under!.meets, over!.meets]).toEqual([true, false, true]);
  expect([on!.isOpen, under!.isOpen, over!.isOpen]).toEqual([true, true, false]);
});

test("a size whose charge keeps its reserve because loads are cut off is not counted as enough", () => {
  const held = HELD.map((count, k) => (k === 11 ? 189 : count));
  const report = sizeReport(
    MAP,
    partOf(
      held,
      HELD.map((_, k) => (k === 11 ? 11 : 0)),
    ),
    AIMS,
  );
  const cell = report.rows[2]!.cells[3]!;
  expect([cell.holds.share, cell.goesWithout.share, cell.meets]).toEqual([0.945, 0.055, false]);
  expect(report.sentences.join("\n")).toMatch(/keeps its reserve often enough, but loads go without/);
});

test("the cheapest and the lightest follow what bring says, by ampere-hour and by module", () => {
  const report = sizeReport(MAP, partOf(HELD), AIMS);
  // Two blocks of 100 Ah for 150 and 18 kg each, modules for 100 and 8 kg each: 1 and 150 Ah: 550, 62 kg; 2 and 120 Ah: 560,
  // 59.2 kg; 4 and 100 Ah: 700, 68 kg.
  expect([report.cheapest!.x, report.cheapest!.y, report.cheapest!.cost]).toEqual([150, 1, 550]);
  expect([report.lightest!.x, report.lightest!.y]).toEqual([120, 2]);
  expect(report.lightest!.massKg).toBeCloseTo(59.2, 9);
  expect(report.rows[2]!.cells[1]!.cost).toBe(700);
});

test("nothing is called cheapest where bring does not say what more of it costs", () => {
  const panels = [{ ...SIZE_SCENARIO.panels![0]!, bring: { cost: 0, massKg: 8 } }];
  const map = sizeMapOf("bank.blockAh=80,100,120,150", "panels.roof.count=1,2,4", { ...SIZE_SCENARIO, panels });
  const report = sizeReport(map, partOf(HELD), AIMS);
  expect(report.cheapest).toBeNull();
  expect(report.lightest).not.toBeNull();
  const bare = { ...SIZE_SCENARIO, panels: panels.map(({ bring: _free, ...group }) => group) };
  const none = sizeReport(
    sizeMapOf("bank.blockAh=80,100,120,150", "panels.roof.count=1,2,4", bare),
    partOf(HELD),
    AIMS,
  );
  expect(none.lightest).toBeNull();
  // Over the present 100 Ah and 2 modules: 1.5 + 0.5, 1.2 + 1, 1 + 2.
  expect([none.smallest!.x, none.smallest!.y]).toEqual([150, 1]);
});

test("where nothing meets the target the best is named, and where all do it says so", () => {
  const few = sizeReport(MAP, partOf(HELD.map((count) => Math.min(count, 150))), AIMS);
  expect(few.smallest).toBeNull();
  expect(few.sentences[0]).toMatch(/No size looked at holds .* in 95 of 100 skies; the best is/);
  const all = sizeReport(MAP, partOf(HELD.map(() => 200)), AIMS);
  expect(all.sentences.join("\n")).toMatch(/Every size looked at does/);
});

test("a target of 100 in 100 is met by cells without a failure, and it is said what that shows", () => {
  const report = sizeReport(MAP, partOf(HELD), { ...AIMS, targetShare: 1 });
  expect(report.rows.map((row) => row.smallest?.x)).toEqual([undefined, undefined, 150]);
  expect(report.membersToShow).toBeNull();
  // Wilson for n of n: low = n/(n + 3.8415). 200: leaves 1.885 in 100. Under 1 in 1000: n = 3.8415 × 999 = 3838.
  expect(report.sentences.join("\n")).toMatch(
    /No sample shows 100 in 100: 200 members .* room for 1\.9 in 100, .* 3838/,
  );
});

test("too few members to show the target is said", () => {
  // n/(n + 3.8415) ≥ 0.95 from n = 73 on.
  const said = (of: number): SizeReport =>
    sizeReport(
      MAP,
      partOf(
        HELD.map(() => of),
        undefined,
        of,
      ),
      AIMS,
    );
  expect(said(72).membersToShow).toBe(73);
  expect(said(72).sentences.join("\n")).toMatch(/72 members are too few to show 95 in 100/);
  expect(said(72).rows[0]!.cells[0]!.isOpen).toBe(true);
  expect(said(73).sentences.join("\n")).not.toMatch(/too few/);
  expect(said(73).rows[0]!.cells[0]!.isOpen).toBe(false);
});

test("where more may be worse, the values that are enough are told from least to most", () => {
  const map = sizeMapOf("stations.hf.sendingShare=0.05,0.15,0.25,0.35", "panels.roof.count=1,2,4");
  const report = sizeReport(map, partOf([199, 150, 0, 0, 200, 196, 191, 60, 200, 200, 100, 195]), AIMS);
  expect(report.rows.map((row) => row.largest?.x)).toEqual([0.05, 0.25, 0.35]);
  expect(report.sentences[0]).toMatch(
    /^With 2 modules of 120 W in roof, as now, and stations\.hf\.sendingShare from 0\.05 to 0\.25, the bank holds to .* in 95 of 100 skies\.$/,
  );
  expect(report.sentences.join("\n")).not.toMatch(/more does not mean better/);
  const single = sizeMapOf("stations.hf.sendingShare=0.05,0.15,0.25,0.35");
  expect(sizeReport(single, partOf([200, 100, 200, 0]), AIMS).sentences[0]).toMatch(
    /^With stations\.hf\.sendingShare from 0\.05 to 0\.25, but not 0\.15, the bank holds/,
  );
  expect(sizeReport(single, partOf([200, 100, 200, 0]), AIMS).cheapest).toBeNull();
});

test("a wrong call is thrown at the door", () => {
  expect(() => sizeReport(MAP, partOf(HELD), { ...AIMS, targetShare: 0 })).toThrow(/targetShare/);
  expect(() => sizeReport(MAP, partOf(HELD), { ...AIMS, targetShare: 95 })).toThrow(/targetShare/);
  expect(() => sizeReport(MAP, partOf(HELD), { ...AIMS, autonomyDays: 0 })).toThrow(/autonomyDays/);
  expect(() => sizeReport(MAP, partOf(HELD.slice(1)), AIMS)).toThrow(/12 cells, got 11/);
});
