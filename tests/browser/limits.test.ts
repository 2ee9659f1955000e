import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { limitsSentence } from "../../engine/answers/limits/limitsWords.ts";
import { limits } from "../../engine/checks/limits.ts";
import type { Entry } from "../../engine/notebook/notebook.ts";
import { exampleRun } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults } from "./looks.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { notebookWith, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const ENTRY: Entry = { id: "limits", kind: "limits", title: "Wiring and limits", doc: { scenario: "roof" } };

test("the entry says what the engine says, line by line, and the weak link of each radio", async () => {
  const { page, complaints } = await openNotebook(browser, notebookWith([ENTRY]));
  await page.locator("#limits .limit-table").first().waitFor();
  const report = limits(await exampleRun());
  const entry = page.locator("#limits");
  expect(plain(await entry.locator(".verdict").textContent())).toBe(plain(limitsSentence(report)));
  await entry.locator("summary", { hasText: "Within" }).click();
  expect(await entry.locator(".limit-table tbody tr").count()).toBe(report.lines.length);
  expect(await entry.locator(".chain").count()).toBe(report.radios.length);
  const weak = await entry.locator(".chain-weak th").allTextContents();
  expect(weak.map(plain)).toEqual(report.radios.map(({ weakLink }) => `${weakLink.link} (weak link)`));
  await entry.getByRole("link", { name: /^rule/ }).first().click();
  expect(await entry.locator(".limit-rules li").first().isVisible()).toBe(true);
  expect(complaints).toEqual([]);
});

test("a choice moves the lines and undo takes it back; a wrong one is said in a sentence and changes nothing", async () => {
  const { page } = await openNotebook(browser, notebookWith([ENTRY]));
  const verdict = page.locator("#limits .verdict");
  await verdict.waitFor();
  const before = await verdict.textContent();
  const box = page.getByLabel("Most that a run may lose");
  await box.fill("1");
  await box.press("Enter");
  await page
    .getByText(/drop at/)
    .first()
    .waitFor();
  await allWorkedOut(page);
  expect(plain(await verdict.textContent())).toMatch(/over (its|their) limit/);
  await box.fill("77");
  await box.press("Enter");
  expect(plain(await page.locator("#limits [role=alert]").first().textContent())).toBe(
    "“Most that a run may lose” is “77” but must be a number from 0.1 to 50 % of its volts; it stays as it was.",
  );
  expect(await box.inputValue()).toBe("1");
  await page.getByRole("button", { name: "Undo" }).click();
  await allWorkedOut(page);
  expect(await verdict.textContent()).toBe(before);
});

test("on a phone and in all three lights it fits, and nothing is out of reach", async () => {
  const phone = { viewport: { width: 360, height: 740 } };
  const { page, complaints } = await openNotebook(browser, notebookWith([ENTRY]), phone);
  await page.locator("#limits .limit-list").first().waitFor();
  await page.locator("#limits summary").first().click();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  expect(await axeFaults(page, "#limits")).toEqual([]);
  expect(complaints).toEqual([]);
});
