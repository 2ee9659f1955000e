import { readFileSync } from "node:fs";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { htmlOf } from "../explorer/report/reportOf.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, openExplorer } from "./openExplorer.ts";

let browser: Browser;
let path: string;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test("the page saves the report that Node makes of the same notebook, to the byte", async () => {
  const { page, complaints } = await openExplorer(browser);
  // Asked for while the page is at work, it waits until everything is worked out.
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 60_000 }),
    page.getByRole("button", { name: "Report", exact: true }).click(),
  ]);
  expect(download.suggestedFilename()).toBe("autumn-weekend-in-the-walnut-grove.html");
  path = await download.path();
  const saved = readFileSync(path, "utf8");
  expect(saved).toBe(await htmlOf(exampleNotebook("example")));
  expect(saved.length).toBeLessThan(700_000);
  expect(complaints).toEqual([]);
}, 120_000);

test.each([1190, 360])(
  "the file is readable without script and network at %i px, and axe finds nothing",
  async (width) => {
    const { page: source } = await openExplorer(browser);
    await allWorkedOut(source);
    const [download] = await Promise.all([
      source.waitForEvent("download"),
      source.getByRole("button", { name: "Report", exact: true }).click(),
    ]);
    const html = readFileSync(await download.path(), "utf8");
    const context = await browser.newContext({
      viewport: { width, height: 800 },
      javaScriptEnabled: false,
      offline: true,
    });
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
    expect(await page.locator("section.entry").count()).toBe(exampleNotebook("x").entries.length + 2);
    expect(await page.locator("svg.drawing").count()).toBeGreaterThanOrEqual(8);
    const { scrollWidth } = await page.locator("html").evaluate((root) => ({ scrollWidth: root.scrollWidth }));
    expect(scrollWidth).toBeLessThanOrEqual(width);
    const sizes = await page
      .locator("body *")
      .evaluateAll((all) => [
        ...new Set(
          all
            .filter((each) => each.textContent?.trim())
            .map((each) => Number.parseFloat(getComputedStyle(each).fontSize)),
        ),
      ]);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(16);
    // The checker itself is a script; the report's own policy and the closed door are lifted for it alone.
    const open = await browser.newContext({ viewport: { width, height: 800 }, bypassCSP: true });
    const checked = await open.newPage();
    await checked.setContent(html);
    const { violations } = await new AxeBuilder({ page: checked }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`)).toEqual([]);
    await open.close();
    await context.close();
  },
);
