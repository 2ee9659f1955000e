import { expect, test } from "vitest";
import { sizeContours } from "../../../engine/answers/sizing/sizeContours.ts";
import { sizeLayout } from "../../../engine/answers/sizing/sizeLayout.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { failsFromStep } from "../../../engine/odds/fails.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { SizeWish } from "../../../engine/size/sizeAxis.ts";
import { prepareSizes } from "../../../engine/size/sizeMap.ts";
import { sizeMembers } from "../../../engine/size/sizeMembers.ts";
import { type RunMap, solvedSizes } from "../../../engine/size/sizeReport.ts";
import { SIZE_SCENARIO } from "./sizeScenario.ts";

const MEMBERS = 60;
const AIMS = { targetShare: 0.9, autonomyDays: 2 };
let ran = 0;
const run: RunMap = async (x, y) => {
  const ready = prepareSizes(SIZE_SCENARIO, x, y, {}, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  ran += ready.map.cells.length;
  return { map: ready.map, part: sizeMembers(ready.map, 0, MEMBERS) };
};

/** Of MEMBERS, how many hold with a block of so many Ah and so many modules: each by itself, without a map. */
function held(blockAh: number, count: number): number {
  const [roof, ...others] = SIZE_SCENARIO.panels!;
  const bank = { ...SIZE_SCENARIO.bank, blockAh };
  const read = readScenario({ ...SIZE_SCENARIO, bank, panels: [{ ...roof!, count }, ...others] });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepareEnsemble(read.scenario, {}, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { outcomes } = runMembers(ready.ensemble, 0, MEMBERS);
  return outcomes.belowFromStep.filter((_, m) => failsFromStep(outcomes, m) < 0).length;
}

test("between the cells the least size is found: it holds the target, and 5 Ah less does not, tried one by one", async () => {
  const [low, high] = [60, 200];
  const x: SizeWish = { at: "bank.blockAh", values: [low, high] };
  const y: SizeWish = { at: "panels.roof.count", values: [1, 2, 4] };
  const { report } = await solvedSizes(x, y, AIMS, run);
  let solved = 0;
  for (const row of report.rows) {
    const sizes = Array.from({ length: (high - low) / 5 + 1 }, (_, k) => low + 5 * k);
    const first = sizes.find((ah) => held(ah, row.y!) >= AIMS.targetShare * MEMBERS) ?? null;
    expect([row.y, row.smallest?.x ?? null]).toEqual([row.y, first]);
    if (first === null || first === low) continue;
    solved++;
    expect(row.smallest!.holds.count).toBe(held(first, row.y!));
    const below = row.between.find(({ x: ah }) => ah === first - 5) ?? row.cells[0]!;
    expect([below.x, below.meets]).toEqual([first - 5, false]);
  }
  expect(solved).toBeGreaterThan(1);
  expect(report.sentences[0]).toContain(
    `2 blocks of ${report.rows.find(({ y: count }) => count === 2)!.smallest!.x} Ah`,
  );
  // What is named is among what was run, and nothing cheaper that was run does it.
  const meeting = report.rows.flatMap((row) => [...row.cells, ...row.between].filter(({ meets }) => meets));
  expect(report.cheapest!.cost).toBe(Math.min(...meeting.map(({ cost }) => cost!)));
  expect(ran).toBeLessThan(90);

  // The line of the target goes between the least size and the next smaller, at every row.
  const layout = sizeLayout(report, 900, 400);
  const { target } = sizeContours(report, layout);
  const points = [...target.path.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, px, py]) => [Number(px), Number(py)]);
  for (const row of report.rows.slice(1, -1)) {
    const near = points.filter(([, py]) => Math.abs(py! - layout.y(row.y!)) < 0.6);
    expect(near.length).toBeGreaterThan(0);
    for (const [px] of near) {
      expect(px).toBeGreaterThanOrEqual(layout.x(row.smallest!.x - 5) - 0.1);
      expect(px).toBeLessThanOrEqual(layout.x(row.smallest!.x) + 0.1);
    }
  }
});

test("a habit is no size, and nothing is looked for between its values", async () => {
  const { report } = await solvedSizes({ at: "bank.startShare", values: [0.5, 1] }, null, AIMS, run);
  expect(report.rows.flatMap(({ between }) => between)).toEqual([]);
});

test("modules are bought by the string", async () => {
  const { report } = await solvedSizes({ at: "panels.roof.count", values: [0, 8] }, null, AIMS, run);
  for (const { x } of report.rows[0]!.between) expect(Number.isInteger(x)).toBe(true);
});
