import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, smallTexts } from "./looks.ts";
import { overhangPx, plain, savedBytes } from "./openExplorer.ts";
import { notebookWith, openNotebook } from "./openNotebook.ts";

const PLAN = notebookWith([{ id: "plan", kind: "scenario", title: "The plan", doc: { scenario: "roof" } }]);

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function openShelf(page: Page) {
  await page.locator("#plan").getByRole("button", { name: "Gear shelf", exact: true }).click();
  const shelf = page.locator("#plan").getByRole("region", { name: "Gear shelf" });
  await shelf.waitFor();
  return shelf;
}

test("gear is looked up, measured, added and taken back; the figure is there in the next notebook and in a file", async () => {
  const { page, complaints } = await openNotebook(browser, PLAN, { acceptDownloads: true });
  const shelf = await openShelf(page);
  expect(await shelf.locator(".gear-row").count()).toBeGreaterThan(25);
  await shelf.getByRole("searchbox").fill("fridge");
  expect(await shelf.locator(".gear-row").count()).toBe(1);
  const mine = shelf.getByLabel("Compressor fridge, 30 to 45 L, at work, measured by you, A");
  await mine.fill("much");
  await mine.press("Tab");
  expect(plain(await shelf.getByRole("status").textContent())).toMatch(/"much" should be a number of A from 0 to 5000/);
  await mine.fill("3,6");
  await mine.press("Tab");
  await shelf.getByRole("button", { name: "Add Compressor fridge, 30 to 45 L" }).click();
  expect(plain(await shelf.getByRole("status").textContent())).toMatch(/among the gear now/);
  const downloading = page.waitForEvent("download");
  await page.locator("#plan").getByRole("button", { name: "Scenario file" }).click();
  const scenario = JSON.parse((await savedBytes(await downloading)).toString("utf8"));
  expect(scenario.gear.at(-1)).toMatchObject({
    id: "fridge-2",
    working: { drawA: 3.6, atV: 13.8 },
    use: { share: 0.35 },
  });
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  const saving = page.waitForEvent("download");
  await shelf.getByRole("button", { name: "Save measured figures" }).click();
  const saved = (await savedBytes(await saving)).toString("utf8");
  expect(JSON.parse(saved).measured).toMatchObject([{ gear: "fridge", working: 3.6 }]);
  await page.reload();
  const again = await openShelf(page);
  await again.getByRole("searchbox").fill("fridge");
  const kept = again.getByLabel("Compressor fridge, 30 to 45 L, at work, measured by you, A");
  expect(await kept.inputValue()).toBe("3.6");
  await again.locator("input[type=file]").setInputFiles({
    name: "mine.json",
    mimeType: "application/json",
    buffer: Buffer.from(saved.replace("3.6", "4.4")),
  });
  await expect.poll(() => kept.inputValue()).toBe("4.4");
  expect(complaints).toEqual([]);
});

test.each([1440, 360])(
  "the shelf at %i px: nothing for axe in any light, nothing small, nothing too wide",
  async (width) => {
    const { page, complaints } = await openNotebook(browser, PLAN, { viewport: { width, height: 740 } });
    await openShelf(page);
    expect(await smallTexts(page, ".gear-shelf")).toEqual([]);
    expect(await overhangPx(page)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page, ".gear-shelf")).toEqual([]);
    expect(complaints).toEqual([]);
  },
);
