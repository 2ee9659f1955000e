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
  // What can hardly be is asked about, and counts once somebody says so.
  await mine.fill("320");
  await mine.press("Tab");
  expect(plain(await shelf.getByRole("alert").textContent())).toMatch(/320 A is 80 times the usual.*really\?/);
  await shelf.getByRole("button", { name: "No", exact: true }).click();
  expect(await mine.inputValue()).toBe("");
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

test("words that find nothing lead to what was meant, and what the shelf lacks is written down, added and taken off", async () => {
  const { page, complaints } = await openNotebook(browser, PLAN);
  const shelf = await openShelf(page);
  await shelf.getByRole("searchbox").fill("frige");
  expect(plain(await shelf.textContent())).toContain("Nothing on the shelf answers to “frige”; near it:");
  expect(await shelf.locator(".gear-row").count()).toBe(1);
  await shelf.getByRole("searchbox").fill("winch");
  expect(plain(await shelf.textContent())).toContain("write it down as a kind of your own");
  await shelf.getByRole("button", { name: "A kind of your own" }).click();
  const form = shelf.getByRole("form", { name: "A kind of your own" });
  expect(await form.getByLabel("Name").inputValue()).toBe("winch");
  await form.getByRole("combobox", { name: /^In/ }).selectOption("A");
  await form.getByLabel("At work").fill("much");
  await form.getByLabel("At work").press("Enter");
  expect(plain(await shelf.getByRole("status").textContent())).toMatch(/should be a number from 0 to 5000/);
  await form.getByLabel("At work").fill("28");
  await form.getByLabel("of that time, %").fill("1");
  await form.getByLabel("of that time, %").press("Enter");
  await shelf.getByRole("searchbox").fill("winch");
  await shelf.getByRole("button", { name: "Add winch" }).click();
  expect(plain(await shelf.getByRole("status").textContent())).toMatch(/winch is among the gear now/);
  await shelf.getByRole("button", { name: "Off the shelf: winch" }).click();
  expect(await shelf.locator(".gear-row").count()).toBe(0);
  expect(complaints).toEqual([]);
});

test.each([1440, 360])(
  "the shelf at %i px: nothing for axe in any light, nothing small, nothing too wide",
  async (width) => {
    const { page, complaints } = await openNotebook(browser, PLAN, { viewport: { width, height: 740 } });
    const shelf = await openShelf(page);
    await shelf.getByRole("button", { name: "A kind of your own" }).click();
    expect(await smallTexts(page, ".gear-shelf")).toEqual([]);
    expect(await overhangPx(page)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page, ".gear-shelf")).toEqual([]);
    expect(complaints).toEqual([]);
  },
);
