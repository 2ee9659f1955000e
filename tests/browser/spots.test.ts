import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { spotsSentence } from "../../engine/answers/shade/spotsWords.ts";
import { poolOr } from "../../engine/library/poolOr.ts";
import type { Entry } from "../../engine/notebook/notebook.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { readVariant } from "../../engine/scenario/readScenario.ts";
import { runSpots } from "../../engine/spots/runSpots.ts";
import { spotsPlan } from "../../engine/spots/spotsPlan.ts";
import { EXAMPLE } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, smallTexts } from "./looks.ts";
import { allWorkedOut, overhangPx, plain, savedBytes } from "./openExplorer.ts";
import { notebookWith, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const entry = (spots?: string) =>
  ({
    id: "shade",
    kind: "shade",
    title: "Who gets the sun?",
    doc: { scenario: "meadow", ...(spots === undefined ? {} : { spots }) },
  }) as Entry;

/** The engine's own answer for what the page shows. */
async function reportOf(group: string) {
  const read = readVariant(EXAMPLE, "meadow");
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = spotsPlan(read.scenario, group);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const surroundings = { climate: await loadClimateTables() };
  return runSpots(ready.plan, { pool: poolOr(undefined), surroundings });
}

const part = (page: Page) => page.locator("#shade .spots");
const map = (page: Page) => page.locator("#shade .spots-pick");
const said = async (page: Page) => plain(await part(page).locator(".verdict").textContent());
const reading = async (page: Page) => plain(await part(page).locator(".spots-reading").textContent());
const done = async (page: Page) => plain(await part(page).locator(".spots-done").textContent());
const sentenceOf = (report: Awaited<ReturnType<typeof reportOf>>) =>
  plain(
    spotsSentence({ report })
      .map(({ text }) => text)
      .join(""),
  );

test("asked for by a press, the map says what the engine says; a click puts the panels there, undo takes it back", async () => {
  const { page, complaints } = await openNotebook(browser, notebookWith([entry()]));
  await part(page).getByRole("button", { name: "Folding panels in the meadow" }).click();
  await map(page).waitFor();
  await allWorkedOut(page);
  const report = await reportOf("meadow");
  expect(await said(page)).toBe(sentenceOf(report));
  const rows = (await part(page).locator("tbody tr").allTextContents()).map(plain);
  expect(rows).toHaveLength(3);
  expect(rows[0]).toContain(String(Math.round(report.here.dayWh)));
  expect(rows[1]).toContain(`${report.asGood.leadM} m`);
  const downloading = page.waitForEvent("download");
  await part(page).getByRole("button", { name: "CSV" }).click();
  expect((await savedBytes(await downloading)).toString("utf8")).toMatch(/^here now,4,-27,883\.8/m);

  await map(page).scrollIntoViewIfNeeded();
  const box = (await map(page).boundingBox())!;
  await page.mouse.click(box.x + box.width * 0.5, box.y + box.height * 0.8);
  await part(page).locator(".spots-done", { hasText: "Put there:" }).waitFor();
  expect(await done(page)).toMatch(/Folding panels in the meadow.* Undo takes it back\./);
  await allWorkedOut(page);
  expect(await said(page)).not.toBe(sentenceOf(report));
  await page.keyboard.press("ControlOrMeta+z");
  await allWorkedOut(page);
  expect(await said(page)).toBe(sentenceOf(report));
  expect(complaints).toEqual([]);
});

test("from the keyboard alone: arrows move the spot, Enter makes a scenario of it, a wall is refused", async () => {
  const { page, complaints } = await openNotebook(browser, notebookWith([entry("meadow")]));
  await map(page).waitFor();
  await allWorkedOut(page);
  await map(page).focus();
  await page.keyboard.press("Home");
  expect(await reading(page)).toMatch(/^Where they are: 884 Wh a day, on 25 m of lead, which loses 1\.4 %\.$/);
  await page.keyboard.press("Enter");
  expect(await done(page)).toBe("That is the scenario as it stands.");
  for (const key of ["Shift+ArrowUp", "ArrowUp", "ArrowLeft"]) await page.keyboard.press(key);
  expect(await reading(page)).toMatch(/^9 m north and 2 m west of where they are: \d+ Wh a day, on 16 m of lead, /);
  await page.keyboard.press("Enter");
  expect(await done(page)).toMatch(/is a scenario now, based on Roof and meadow: .*16 m/);
  // West and north until the barn.
  await page.keyboard.press("Home");
  for (let k = 0; k < 3; k++) await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("ArrowLeft");
  for (let k = 0; k < 4; k++) await page.keyboard.press("Shift+ArrowUp");
  expect(await reading(page)).toContain("Something stands there");
  await page.keyboard.press("Enter");
  expect(await done(page)).toContain("choose another spot");
  expect(complaints).toEqual([]);
});

test.each([
  [1440, 900],
  [1024, 768],
  [360, 740],
])("at %i px nothing sticks out, nothing is small, and no light is too faint", async (width, height) => {
  const { page, complaints } = await openNotebook(browser, notebookWith([entry("roof")]), {
    viewport: { width, height },
  });
  await map(page).waitFor();
  await allWorkedOut(page);
  expect(await said(page)).toContain("Raised 15°");
  expect(await overhangPx(page)).toBe(0);
  expect(await smallTexts(page, "#shade")).toEqual([]);
  expect(await axeFaults(page, "#shade .spots", width === 1440 ? undefined : ["day"])).toEqual([]);
  expect(complaints).toEqual([]);
});
