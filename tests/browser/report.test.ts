import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { htmlOf } from "../explorer/report/reportOf.ts";
import { everyKind } from "./everyKind.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, smallTexts } from "./looks.ts";
import { overhangPx, savedBytes } from "./openExplorer.ts";
import { openNotebook } from "./openNotebook.ts";

let browser: Browser;
let html: string;
beforeAll(async () => {
  browser = await launchBrowser();
  html = await htmlOf(everyKind);
});
afterAll(() => browser?.close());

test("the page saves the report that Node makes of the same notebook, to the byte", async () => {
  const { page, complaints } = await openNotebook(browser, everyKind);
  // Asked for while the page is at work, it waits until everything is worked out.
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Report", exact: true }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe("everything-unfolded.html");
  expect((await savedBytes(download)).toString("utf8")).toBe(html);
  expect(html.length).toBeLessThan(700_000);
  expect(complaints).toEqual([]);
});

test("the file is readable without script and network, on a desk and on a phone, and axe finds nothing", async () => {
  const context = await browser.newContext({ javaScriptEnabled: false, offline: true });
  const page = await context.newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  await context.route("**/*", (route) => {
    if (route.request().url() === "https://report.invalid/")
      return route.fulfill({ contentType: "text/html", body: html });
    asked.push(route.request().url());
    return route.abort();
  });
  page.on("console", (message) => complaints.push(message.text()));
  await page.goto("https://report.invalid/");
  expect(asked.filter((url) => !url.startsWith("data:"))).toEqual([]);
  expect(complaints).toEqual([]);
  expect(await page.locator("h1").textContent()).toMatch(/of 100 skies/);
  expect(await page.locator("section.entry").count()).toBe(everyKind.entries.length + 2);
  expect(await page.locator("svg.drawing").count()).toBeGreaterThanOrEqual(8);
  // The checker itself is a script; the report's own policy and the closed door are lifted for it alone.
  const open = await browser.newContext({ bypassCSP: true });
  const checked = await open.newPage();
  await checked.setContent(html);
  for (const width of [1190, 360]) {
    await page.setViewportSize({ width, height: 800 });
    await checked.setViewportSize({ width, height: 800 });
    expect(await overhangPx(page)).toBeLessThanOrEqual(0);
    expect(await smallTexts(page)).toEqual([]);
    // A report has one light of its own.
    expect(await axeFaults(checked, undefined, ["day"])).toEqual([]);
  }
  await open.close();
  await context.close();
});
