import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Entry } from "../../engine/notebook/notebook.ts";
import { exampleLog, writtenAbroad } from "../explorer/actual/exampleLog.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults } from "./looks.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { notebookWith, openNotebook } from "./openNotebook.ts";

let browser: Browser;
let text = "";
beforeAll(async () => {
  browser = await launchBrowser();
  text = (await exampleLog()).text;
});
afterAll(() => browser?.close());

const ENTRY: Entry = { id: "actual", kind: "actual", title: "How good was the plan?", doc: { scenario: "roof" } };

const give = (page: Page, content: string, name = "meter.csv") =>
  page.locator("#actual input[type=file]").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(content) });

test("a log is taken, the miss split, a correction accepted into a new scenario; undo takes each back", async () => {
  const { page, complaints } = await openNotebook(browser, notebookWith([ENTRY]));
  const entry = page.locator("#actual");
  await give(page, text);
  await entry.getByText(/Current into the bank is written above 0/).waitFor();
  expect(await entry.getByRole("combobox", { name: "Charge", exact: true }).inputValue()).toBe("charge %");
  await entry.getByRole("button", { name: "Hold it against the plan" }).click();
  await entry.locator("svg.bands").waitFor();
  await allWorkedOut(page);
  expect(plain(await entry.locator(".verdict").textContent())).toMatch(
    /^Roof alone: on Sat 10 \d\d:\d\d the bank had \d+ %, planned \d+ %; (load|sun) took most, \d+ points\.$/,
  );
  await entry.getByLabel("Take Sending into the new scenario").uncheck();
  await entry.getByRole("button", { name: "Accept into a new scenario" }).click();
  const made = page.locator("#scenario");
  await made.waitFor();
  expect(await made.locator(".title-box").inputValue()).toMatch(
    /^Roof alone, calibrated from the meter's log of 2026-10-08/,
  );
  await page.getByRole("button", { name: "Undo" }).click();
  expect(await made.count()).toBe(0);
  await page.getByRole("button", { name: "Undo" }).click();
  expect(plain(await entry.locator(".verdict").textContent())).toContain("No log yet");
  expect(complaints).toEqual([]);
});

test("a log from abroad: the wrong clock is said, set by a button, and remembered for the next log with these titles", async () => {
  const { page } = await openNotebook(browser, notebookWith([ENTRY]));
  const entry = page.locator("#actual");
  await give(page, writtenAbroad(text));
  await entry.getByRole("button", { name: "Set zone to UTC" }).click();
  await entry.getByText(/it probably keeps UTC/).waitFor({ state: "detached" });
  expect(await entry.getByLabel("Clock of the log").inputValue()).toBe("UTC");
  await entry.getByRole("button", { name: "Hold it against the plan" }).click();
  await entry.locator("svg.bands").waitFor();
  await give(page, writtenAbroad(text), "next.csv");
  await entry.getByText("Read as the last log with these titles was.").waitFor();
  expect(await entry.getByLabel("Clock of the log").inputValue()).toBe("UTC");
});

test("hostile, empty, foreign and oversized logs say why and change nothing", async () => {
  const { page, complaints } = await openNotebook(browser, notebookWith([ENTRY]));
  const entry = page.locator("#actual");
  const refused = async (content: string, says: RegExp) => {
    await give(page, content);
    await expect.poll(async () => plain(await entry.locator(".log-taking [role=status]").textContent())).toMatch(says);
    const take = entry.getByRole("button", { name: "Hold it against the plan" });
    if ((await take.count()) > 0) expect(await take.isDisabled()).toBe(true);
  };
  await refused("", /is empty/);
  await refused("\u0000\u0001\u0002PNG", /no line of titles/);
  await refused(`time,<img src=x onerror=alert(1)>\n2026-10-09 10:00,1\n2026-10-09 10:15,2\n`, /map at least one/);
  expect(await entry.locator("img").count()).toBe(0);
  await refused(`${"=cmd|' /C calc'!A0,".repeat(2000)}\n1,2\n`, /./);
  await refused(text.replaceAll("2026-10", "2025-03"), /no step in common/);
  await refused("x".repeat(10_000_001), /at most 10 MB/);
  expect(plain(await entry.locator(".verdict").textContent())).toContain("No log yet");
  expect(complaints).toEqual([]);
});

test("columns are mapped by hand where their titles say nothing", async () => {
  const { page } = await openNotebook(browser, notebookWith([ENTRY]));
  const entry = page.locator("#actual");
  const [, ...rows] = text.split("\n");
  await give(page, ["a,b,c,d,e,f", ...rows].join("\n"));
  await entry.locator(".log-taking .wrong").first().waitFor();
  await entry.getByRole("combobox", { name: "Charge", exact: true }).selectOption("b");
  await expect.poll(() => entry.getByRole("button", { name: "Hold it against the plan" }).isEnabled()).toBe(true);
  await entry.getByRole("combobox", { name: "Panels, W", exact: true }).selectOption("e");
  await entry.getByRole("button", { name: "Hold it against the plan" }).click();
  await entry.locator("svg.bands").waitFor();
  await allWorkedOut(page);
  expect(plain(await entry.textContent())).toContain("Of load nothing can be said");
});

test("on a phone and in all three lights it fits and passes", async () => {
  const phone = { viewport: { width: 360, height: 740 } };
  const { page } = await openNotebook(browser, notebookWith([ENTRY]), phone);
  const entry = page.locator("#actual");
  await give(page, text);
  await entry.locator(".mapping").waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  expect(await axeFaults(page, "#actual")).toEqual([]);
  await entry.getByRole("button", { name: "Hold it against the plan" }).click();
  await entry.locator("svg.bands").waitFor();
  await allWorkedOut(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  expect(await axeFaults(page, "#actual")).toEqual([]);
});
