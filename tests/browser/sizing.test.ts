import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { scenarioDocument } from "../../engine/notebook/scenarioDocument.ts";
import { runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { prepareSizes } from "../../engine/size/sizeMap.ts";
import { sizeMembers } from "../../engine/size/sizeMembers.ts";
import { solvedSizes } from "../../engine/size/sizeReport.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { exampleWith, openExample } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const notebook = exampleWith("sizing");
const found = scenarioDocument(notebook, "meadow");
if (!found.ok) throw new Error(found.sentence);
const meadow: ScenarioInput = found.document;
const entry = notebook.entries.find(({ kind }) => kind === "sizing");
if (entry?.kind !== "sizing") throw new Error("the example has a map");
const { across, up } = entry.doc;

const text = async (page: Page, selector: string) => plain(await page.locator(selector).first().textContent());
const cell = (page: Page, row: number, column: number) => page.locator(`#sizing [data-cell="${row}-${column}"]`);
const scenarios = (page: Page) => page.getByLabel("Scenario that is sized").locator("option").allTextContents();

test("the map says what the engine's map says, cell by cell, with the answers in sentences", async () => {
  const { page, complaints } = await openExample(browser, ["sizing"]);
  await allWorkedOut(page);
  const climate = await loadClimateTables();
  const { report } = await solvedSizes(across!, up!, { targetShare: 0.95, autonomyDays: 2 }, async (x, y) => {
    const ready = prepareSizes(meadow, x, y, { climate }, notebook.seed);
    if (!ready.ok) throw new Error(ready.problems[0]!.message);
    return { map: ready.map, part: sizeMembers(ready.map, 0, notebook.members) };
  });
  expect(await text(page, "#sizing .verdict")).toBe(plain(report.sentences[0]!));
  const said = await text(page, "#sizing .size-said");
  for (const sentence of report.sentences.slice(1)) expect(said).toContain(plain(sentence));
  const odds = (share: number) => (share === 1 || share === 0 ? String(100 * share) : String(Math.round(100 * share)));
  for (const [r, row] of report.rows.entries()) {
    for (const [c, each] of row.cells.entries()) {
      const shown = plain(await cell(page, r, c).textContent()).replace(/[<>~*]/g, "");
      if (each.holds.share > 0.005 && each.holds.share < 0.995)
        expect(shown).toMatch(new RegExp(`^${odds(each.holds.share)} `));
      expect(await cell(page, r, c).evaluate((td) => td.classList.contains("size-meets"))).toBe(each.meets);
    }
  }
  // And a cell of the engine's map has the odds of the scenario that it stands for.
  const changed = applyChanges(meadow, [
    { at: across!.at, to: 350 },
    { at: up!.at, to: 4 },
  ]);
  const read = changed.ok ? readScenario(changed.document) : changed;
  if (!read.ok) throw new Error("reads");
  const one = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, notebook.seed);
  if (!one.ok) throw new Error("prepares");
  const held = runMembers(one.ensemble, 0, notebook.members).outcomes.belowFromStep.filter((step) => step < 0).length;
  expect(report.rows[2]!.cells[4]!.holds.count).toBe(held);
  expect(complaints).toEqual([]);
});

test("by keyboard alone: from cell to cell with the arrows, and Enter makes a scenario with its two changes in words", async () => {
  const { page, complaints } = await openExample(browser, ["sizing"]);
  await allWorkedOut(page);
  const before = await scenarios(page);
  await cell(page, 1, 3).focus();
  expect(await text(page, "#sizing .size-reading")).toContain("A bank of 280 Ah with 2 modules of 120 W");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowUp");
  expect(await page.evaluate(() => document.activeElement?.getAttribute("data-cell"))).toBe("2-4");
  expect(await page.locator("#sizing [tabindex='0'][data-cell]").count()).toBe(1);
  expect(await text(page, "#sizing .size-reading")).toMatch(
    /^A bank of 350 Ah with 4 modules of 120 W .* holds in .* of 100 skies \(\d+–\d+\) and goes dark in .*: meets the target/,
  );
  await page.keyboard.press("Enter");
  const name = "Roof and meadow, 350 Ah, 4 × 120 W Folding panels in the meadow";
  expect((await scenarios(page)).map(plain)).toEqual([...before, name]);
  expect(await text(page, "#sizing .size-made")).toMatch(/: 4 panels, was 2; bank 280 → 350 Ah\./);
  expect(await text(page, "#scenario .based-on")).toMatch(
    /Based on Roof and meadow, with these changes:.*4 panels, was 2.*350 Ah/,
  );
  await page.keyboard.press("Control+z");
  expect(await scenarios(page)).toEqual(before);
  expect(complaints).toEqual([]);
});

test("a click on the map makes the scenario that lies there; the button does the same", async () => {
  const { page } = await openExample(browser, ["sizing"]);
  await allWorkedOut(page);
  const before = (await scenarios(page)).length;
  const map = page.locator("#sizing svg.size-pick");
  await map.scrollIntoViewIfNeeded();
  const box = (await map.locator(".size-frame").boundingBox())!;
  await page.mouse.click(box.x + box.width - 2, box.y + 2);
  expect(plain((await scenarios(page)).at(-1)!)).toBe(
    "Roof and meadow, 560 Ah, 6 × 120 W Folding panels in the meadow",
  );
  await page.locator("#sizing").getByRole("button", { name: "Make this a scenario" }).click();
  expect((await scenarios(page)).length).toBe(before + 2);
});

test("another target moves the stair, another field makes another map, and what is wrong is said", async () => {
  const { page } = await openExample(browser, ["sizing"]);
  await allWorkedOut(page);
  const sizing = page.locator("#sizing");
  const enough = () => sizing.locator("td.size-meets").count();
  const first = await enough();
  await sizing.getByLabel("Is to hold in").fill("50");
  await sizing.getByLabel("Is to hold in").press("Enter");
  await allWorkedOut(page);
  expect(await enough()).toBeGreaterThan(first);
  await sizing.getByLabel("Is to hold in").fill("many");
  await sizing.getByLabel("Is to hold in").press("Enter");
  expect(await text(page, "#sizing .wrong")).toMatch(
    /“Is to hold in” is “many” but must be a number from 1 to 100 of 100 skies/,
  );
  await sizing.getByLabel("Across: values").fill("100; 900");
  await sizing.getByLabel("Across: values").press("Enter");
  await sizing.locator("thead th").filter({ hasText: "900" }).waitFor();
  await allWorkedOut(page);
  expect(await sizing.locator("tbody tr").first().locator("td").count()).toBe(2);
  await sizing.getByLabel("Up: what is looked along").selectOption("bank.reserveShare");
  await allWorkedOut(page);
  expect(await text(page, "#sizing caption")).toMatch(/down: Bank: .*%/);
  await sizing.getByLabel("Across: values").fill("-3, 5");
  await sizing.getByLabel("Across: values").press("Enter");
  await sizing.locator(".wrongs").waitFor();
  expect(await text(page, "#sizing .wrongs")).toMatch(/-3 but must be a number from/);
});
