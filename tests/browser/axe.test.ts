import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { ENTRY_DOCS, type Notebook } from "../../explorer/notebook/notebook.ts";
import { everyKind } from "./everyKind.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, openExplorer } from "./openExplorer.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const empty: Notebook = { ...everyKind, title: "Nothing on it", entries: [] };

const found = async (page: Page, screen: string) => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${screen}, ${id}: ${node.html.slice(0, 120)}`));
};
const wide = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
/** Tables that have to be scrolled to be read. */
const cutOff = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("main .wide")]
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth)
      .map((part) => `${part.closest(".entry")?.id}: ${part.getAttribute("aria-label")}`),
  );

test("every kind of entry is looked at", () => {
  const kinds = new Set<string>(everyKind.entries.map(({ kind }) => kind));
  expect(Object.keys(ENTRY_DOCS).filter((kind) => !kinds.has(kind))).toEqual([]);
});

test.each(
  (["day", "dusk", "red"] as const).flatMap((light) => [
    { light, width: 1440, height: 900 },
    { light, width: 360, height: 740 },
  ]),
)(
  "axe finds nothing on any screen by $light light at $width px",
  { timeout: 180_000 },
  async ({ light, width, height }) => {
    const { page, complaints } = await openExplorer(browser, { viewport: { width, height }, reducedMotion: "reduce" });
    await page.evaluate((choice) => localStorage.setItem("duskline.light", choice), light);
    const url = inject("explorerUrl");
    const take = async (notebook: Notebook) => {
      await page.goto(`${url}?shelf`);
      await page
        .locator("input[type=file]")
        .setInputFiles({ name: "n.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(notebook)) });
      await page.waitForURL(/notebook=/);
      await page.locator("h1").waitFor();
    };
    const violations: string[] = [];
    const look = async (screen: string) => {
      violations.push(...(await found(page, screen)));
      expect(await wide(page), `${screen} is too wide`).toBeLessThanOrEqual(0);
      if (width > 1000) expect(await cutOff(page), `${screen} has tables that are cut off`).toEqual([]);
    };

    await take(everyKind);
    await page.locator("svg.strata").first().waitFor();
    await allWorkedOut(page);
    await page.locator("#plan").getByRole("button", { name: "All fields" }).click();
    await page.locator("#plan .scenario-form").waitFor();
    await look("everything unfolded");
    await take(empty);
    await look("empty notebook");
    await page.goto(`${url}?shelf`);
    await page.getByRole("link", { name: "Nothing on it" }).waitFor();
    await look("shelf");
    await page.goto(`${url}?new`);
    await page.locator(".map-station").first().waitFor();
    await look("six questions");
    await page.goto(`${url}?notebook=never-there`);
    await page.getByRole("heading", { name: "This notebook is not opened." }).waitFor();
    await look("refused");
    expect(violations).toEqual([]);
    expect(complaints).toEqual([]);
  },
);
