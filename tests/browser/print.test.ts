import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchBrowser } from "./launchBrowser.ts";
import { LIGHTS } from "./looks.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { EXAMPLE_IDS, exampleWith, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test("on paper the sheet of every light is black on white, without controls, and ends with what was assumed", async () => {
  const { page } = await openNotebook(browser, exampleWith(...EXAMPLE_IDS));
  await allWorkedOut(page);
  for (const light of LIGHTS) {
    await page.emulateMedia({ media: "screen" });
    for (let turns = 0; (await page.locator("html").getAttribute("data-light")) !== light && turns < 3; turns++)
      await page.getByRole("button", { name: /^Light:/ }).click();
    expect(await page.locator("html").getAttribute("data-light")).toBe(light);
    await page.locator(".print-end").waitFor({ state: "attached" }); // the words for paper are fetched when the page has come to rest
    expect(await page.locator(".print-end").isVisible()).toBe(false);
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    await page.emulateMedia({ media: "print" });
    const end = plain(await page.locator(".print-end").textContent());
    expect(end).toContain("drawn from the seed 4127");
    expect(end).toContain("Climate from");
    expect(end).toContain("A plan and not a permit.");
    expect(end.indexOf("Cautions")).toBeGreaterThan(end.indexOf("What was assumed"));
    for (const control of await page.locator("main :is(button:not(.letter), select, input, textarea)").all())
      expect(await control.isVisible()).toBe(false);
    const colours = await page.locator("main").evaluate((main) => {
      const { color, backgroundColor } = getComputedStyle(main);
      return { color, backgroundColor };
    });
    expect(colours).toEqual({ color: "rgb(0, 0, 0)", backgroundColor: "rgb(255, 255, 255)" });
    const breaks = await page
      .locator("#forecast, #versus, #run, #ledger")
      .evaluateAll((entries) => entries.map((entry) => getComputedStyle(entry).breakBefore));
    expect(breaks).toEqual(["page", "page", "page", "page"]);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(8);
    expect(pages).toBeLessThan(24);
  }
});
