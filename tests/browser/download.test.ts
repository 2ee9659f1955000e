import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { KIND_NAMES, kindOf } from "../../engine/answers/kinds.ts";
import { notWellFormed } from "../cli/wellFormed.ts";
import { everyKind } from "./everyKind.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, savedBytes } from "./openExplorer.ts";
import { notebookWith, openExample, openNotebook } from "./openNotebook.ts";

const PICTURED_KINDS = new Set(KIND_NAMES.filter((name) => kindOf(name).isDrawn === true));
// Readings and logs are of an event that has begun; the example's has not.
const pictured = everyKind.entries.filter(
  ({ kind }) => PICTURED_KINDS.has(kind) && kind !== "readings" && kind !== "actual",
);
let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function saved(page: Page, id: string, button: "SVG" | "PNG" | "CSV") {
  const downloading = page.waitForEvent("download");
  await page.locator(`#${id}`).getByRole("button", { name: button, exact: true }).click();
  const download = await downloading;
  return { name: download.suggestedFilename(), bytes: await savedBytes(download) };
}

test("every kind of picture is saved as SVG that stands alone and as PNG twice as fine", async () => {
  const { readings: _, actual: __, ...shown } = Object.fromEntries([...PICTURED_KINDS].map((kind) => [kind, true]));
  expect([...new Set(pictured.map(({ kind }) => kind))].sort()).toEqual(Object.keys(shown).sort());
  const { page, complaints } = await openNotebook(browser, notebookWith(pictured));
  await allWorkedOut(page);
  for (const { id, kind } of pictured) {
    const svg = await saved(page, id, "SVG");
    expect(svg.name).toMatch(/\.svg$/);
    const text = svg.bytes.toString("utf8");
    expect(notWellFormed(text), kind).toBeNull();
    expect(text).not.toMatch(/<script|href=|undefined|NaN|url\((?!["']?(#|data:font))/);
    const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(text)!;
    const png = await saved(page, id, "PNG");
    expect(png.bytes.subarray(1, 4).toString()).toBe("PNG");
    expect(Math.abs(png.bytes.readUInt32BE(16) - 2 * Number(width))).toBeLessThan(2);
    expect(Math.abs(png.bytes.readUInt32BE(20) - 2 * Number(height))).toBeLessThan(2);
    // Not an empty sheet: paper of one colour packs to almost nothing.
    expect(png.bytes.length, kind).toBeGreaterThan(8000);
  }
  expect(complaints).toEqual([]);
});

/** What an entry's charts and its saved file are drawn with, the page's own marks (what is read, chosen, held) left out. */
function strokesOf(page: Page, id: string, file: string) {
  return page.evaluate(
    ({ id, file }) => {
      const strokes = (root: Element) =>
        [...root.querySelectorAll("path, rect, line, circle")]
          .filter((each) => each.closest("defs, .reading, .size-chosen, .strip-hour") === null)
          .map((each) => {
            const names = ["class", "d", "x", "y", "x1", "x2", "y1", "y2", "cx", "cy", "r", "width", "height"];
            return [each.localName, ...names.map((name) => each.getAttribute(name) ?? "-")].join(" ");
          });
      const saved = new DOMParser().parseFromString(file, "image/svg+xml").querySelector("g.drawing")!;
      const charts = [...document.querySelectorAll(`#${id} svg[role=img]:not(.sky-drawing)`)];
      return { saved: strokes(saved), shown: charts.flatMap(strokes) };
    },
    { id, file },
  );
}

test("what stands on the page is the drawing that is saved, piece by piece", async () => {
  const least: Record<string, number> = { forecast: 20, run: 20, sizing: 40, versus: 120, shade: 10 };
  const { page } = await openNotebook(browser, notebookWith(pictured.filter(({ kind }) => kind in least)));
  await allWorkedOut(page);
  await page.locator(".shade:not(.shade-stale) .sun-strip-drawing").waitFor();
  for (const { id, kind } of pictured.filter((entry) => entry.kind in least)) {
    const text = (await saved(page, id, "SVG")).bytes.toString("utf8");
    const strokes = await strokesOf(page, id, text);
    expect(strokes.shown.length, kind).toBeGreaterThan(least[kind]!);
    expect(strokes.shown.filter((each) => !strokes.saved.includes(each))).toEqual([]);
  }
});

test("a picture is saved in the light that the page is read by", async () => {
  const { page } = await openExample(browser, ["run"]);
  const day = (await saved(page, "run", "SVG")).bytes.toString("utf8");
  await page.getByRole("button", { name: /^Light:/ }).click();
  const dusk = (await saved(page, "run", "SVG")).bytes.toString("utf8");
  expect(day).toContain("--sheet:#fcfcf9");
  expect(dusk).toContain("--sheet:#111b30");
});

test("scenarios held against one another are saved in figures", async () => {
  const { page } = await openExample(browser, ["versus"]);
  await allWorkedOut(page);
  const { name, bytes } = await saved(page, "versus", "CSV");
  expect(name).toBe("roof-alone-versus.csv");
  const lines = bytes.toString("utf8").split("\n");
  expect(lines[0]).toBe(',Roof alone,Roof and meadow,"Roof, two blocks"');
  expect(lines[1]).toMatch(/^"?Holds, of 100 skies"?(,[>\d]+ \(\d+–\d+\)){3}$/);
  const steps = lines.filter((line) => /^2026-10-\d\dT/.test(line));
  expect(steps).toHaveLength(469);
  expect(steps[0]).toMatch(/^2026-10-08T10:00\+02:00,0\.00,0\.00,0\.00(,\d+\.\d\d){3}$/);
  for (const step of steps) {
    const [low, middle, high] = step.split(",").slice(1, 4).map(Number) as [number, number, number];
    expect(low).toBeLessThanOrEqual(middle);
    expect(middle).toBeLessThanOrEqual(high);
  }
});
