import { expect, test } from "vitest";
import { wiringDiagram, wiringDrawing } from "../../../engine/answers/limits/wiringDrawing.ts";
import { wiringSheet } from "../../../engine/answers/limits/wiringSheet.ts";
import { takeCare, toPutRight, wiringTitle } from "../../../engine/answers/limits/wiringWords.ts";
import { limits } from "../../../engine/checks/limits.ts";
import { exampleRun } from "../exampleRun.ts";

const FIT = { lowestShare: 0.5 };
const OF = { plan: "Roof", place: "Walnut grove <invented>", when: "Thu 8 to Sun 11 October 2026" };
const sheetOf = async (changes: Parameters<typeof exampleRun>[0] = []) => {
  const report = limits(await exampleRun(changes), FIT);
  return { report, sheet: wiringSheet({ ...report, remarks: [], sheetOf: OF }) };
};
const NO_FUSE = { at: "mainFeed.otherGear.fuseA", remove: true as const };
const THIN = { at: "stations.hf-run.feed.cable", to: { awg: "18", oneWayM: 2.5 } };

test("numbers run from 1 in the order of the drawing, and each stands in drawing and table", async () => {
  const { report, sheet } = await sheetOf();
  expect(report.wiring.map(({ number }) => number)).toEqual(report.wiring.map((_, k) => k + 1));
  expect(report.wiring.map(({ id }) => id)).toEqual([
    ...["panels/roof", "controller/roof", "main", "lead/hf-run", "lead/hf-data", "lead/vhf", "gear"],
  ]);
  const drawn = wiringDiagram(report).body.text;
  for (const { number, name } of report.wiring) {
    expect(drawn).toContain(`class="wiring-strong">${number}</text>`);
    expect(sheet).toMatch(new RegExp(`<td class="number">${number}</td><th scope="row">${name}</th>`));
  }
  expect(wiringTitle(report)).toBe("seven runs, none over its limits");
  expect(drawn).not.toMatch(/wiring-none|wiring-heavy|wiring-tint/);
  expect(sheet).toContain("Nothing that is stated is over its limit.");
  // Bank, switch and bar carry their ratings: 280 Ah, 150 A, 100 A.
  for (const words of ["280 Ah LFP", "150\u202fA", "100\u202fA bar", "2 × 200 W"]) expect(drawn).toContain(words);
});

test("a fuse that is not stated is dashed and called none; what is over is heavy, tinted and said", async () => {
  const { report, sheet } = await sheetOf([NO_FUSE, THIN]);
  const drawn = wiringDiagram(report).body.text;
  expect(drawn.match(/wiring-none/g)).toHaveLength(1);
  expect(drawn.match(/>none</g)).toHaveLength(1);
  expect(drawn.match(/wiring-heavy/g)).toHaveLength(2);
  expect(drawn.match(/wiring-tint/g)).toHaveLength(2);
  expect(sheet.match(/<tr class="over">/g)).toHaveLength(2);
  expect(wiringTitle(report)).toBe("seven runs, two to put right");
  const right = toPutRight(report);
  expect(right.find(({ where }) => where === "7")!.change).toBe("Fit a 15 A fuse.");
  expect(right.find(({ where }) => where === "4")!.change).toMatch(
    /^Fit wire of \d+ AWG or thicker|^Fit \d+ AWG or thicker/,
  );
  for (const { change } of right) expect(sheet).toContain(change);
});

test("an unstated lead has its star and is not within", async () => {
  const { report, sheet } = await sheetOf([{ at: "panels.roof.controller.shortCable", remove: true }]);
  const run = report.wiring.find(({ id }) => id === "controller/roof")!;
  expect(run).toMatchObject({ isAssumed: true, verdict: "assumed" });
  expect(sheet).toContain(`<td>${run.size}*</td>`);
  expect(sheet).toContain("<td>assumed</td>");
});

test("the page needs no script, no network and no colour, and names are text", async () => {
  const { sheet, report } = await sheetOf();
  expect(sheet).not.toMatch(/<script|https?:|src=|url\((?!data:)/);
  expect(sheet).toContain("Walnut grove &lt;invented&gt;");
  expect(sheet).toContain("A plan and not a permit");
  expect(takeCare(report).length).toBeGreaterThan(2);
  // No paint but black, white and greys.
  for (const [, hex] of sheet.matchAll(/#([0-9a-f]{3,6})\b/gi)) {
    const parts = hex!.length === 3 ? [...hex!] : hex!.match(/../g)!;
    expect(new Set(parts).size, hex).toBe(1);
  }
});

test("the file has diagram and table in one picture, as wide as an A4 column", async () => {
  const { report } = await sheetOf();
  const drawing = wiringDrawing(report);
  expect(drawing.widthPx).toBe(674);
  expect(drawing.heightPx).toBeGreaterThan(wiringDiagram(report).heightPx + 28 * report.wiring.length);
  for (const { name } of report.wiring) expect(drawing.body.text).toContain(name.slice(0, 20));
});
