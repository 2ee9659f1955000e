import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { KIND_NAMES } from "../../engine/answers/kinds.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { everyKind } from "./everyKind.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, LIGHTS, smallTexts } from "./looks.ts";
import { allWorkedOut, openPage, overhangPx } from "./openExplorer.ts";
import { takeNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const empty: Notebook = { ...everyKind, title: "Nothing on it", entries: [] };

/** Tables that have to be scrolled to be read. */
const cutOff = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("main .wide")]
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth)
      .map((part) => `${part.closest(".entry")?.id}: ${part.getAttribute("aria-label")}`),
  );

async function expectFit(page: Page, screen: string): Promise<void> {
  expect(await smallTexts(page), `${screen} has small text`).toEqual([]);
  expect(await overhangPx(page), `${screen} is too wide`).toBeLessThanOrEqual(0);
  if (page.viewportSize()!.width > 1400)
    expect(await cutOff(page), `${screen} has tables that are cut off`).toEqual([]);
}

test("every kind of entry is looked at", () => {
  const kinds = new Set<string>(everyKind.entries.map(({ kind }) => kind));
  expect(KIND_NAMES.filter((kind) => !kinds.has(kind))).toEqual([]);
});

test.each([
  { viewport: { width: 1440, height: 900 }, lights: LIGHTS },
  // Colours are those of the desk; where they lie over one another on a phone, one light shows.
  { viewport: { width: 360, height: 740 }, lights: ["red"] as const },
])(
  "at $viewport.width px axe finds nothing on any screen in $lights, nothing is under 16 px or too wide",
  async ({ viewport, lights }) => {
    const { page, complaints } = await openPage(browser, { viewport, reducedMotion: "reduce" });
    const url = inject("explorerUrl");
    const faults: string[] = [];
    const look = async (screen: string, part?: string) => {
      await expectFit(page, screen);
      faults.push(...(await axeFaults(page, part, lights)).map((fault) => `${screen}, ${fault}`));
    };

    await takeNotebook(page, everyKind);
    await page.locator("svg.strata").first().waitFor();
    await allWorkedOut(page);
    const [heading, ruler] = [await page.locator("h1").boundingBox(), await page.locator(".ruler").boundingBox()];
    expect(heading!.y + heading!.height).toBeLessThan(ruler!.y);
    await page.locator("#plan").getByRole("button", { name: "All fields" }).click();
    await page.locator("#plan .scenario-form").waitFor();
    await page.locator("#forecast").getByRole("button", { name: "Bands in figures" }).click();
    await page.locator("#answer").getByRole("button", { name: "Edit" }).click();
    await page.locator("#run").getByRole("button", { name: "Table" }).click();
    await allWorkedOut(page);
    await look("everything unfolded");
    if (viewport.width < 700) {
      await page.getByRole("button", { name: "Change" }).click();
      await look("changing by thumb", "#planFields");
    } else {
      await page.setViewportSize({ width: 1024, height: 768 });
      await expectFit(page, "everything unfolded at 1024 px");
      await page.setViewportSize(viewport);
    }
    await takeNotebook(page, empty);
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
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
  },
);
