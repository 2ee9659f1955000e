import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { launchBrowser } from "./launchBrowser.ts";
import { openPage } from "./openExplorer.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const url = () => inject("explorerUrl");
const search = (page: Page) => page.getByRole("combobox", { name: "Nearest town" });

test.each([1440, 1024, 360])(
  "at %i px a town is found and taken by keyboard, its height proposed, and the own one kept",
  async (width) => {
    const { page, complaints } = await openPage(browser);
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.setViewportSize({ width, height: 800 });
    await page.goto(`${url()}?new`);
    await page.getByRole("application", { name: /^Map/ }).waitFor();
    const fetches = (part: string) => asked.filter((each) => each.includes(part)).length;
    expect(fetches("/assets/towns")).toBe(0);
    await search(page).focus();
    await page.keyboard.type("st polten");
    await page.getByRole("option", { name: /^Sankt Pölten Lower Austria, Austria/ }).waitFor();
    expect(await search(page).getAttribute("aria-expanded")).toBe("true");
    await page.keyboard.press("ArrowDown");
    const active = await search(page).getAttribute("aria-activedescendant");
    expect(await page.locator(`[id="${active}"]`).getAttribute("aria-selected")).toBe("true");
    await page.keyboard.press("Escape");
    expect(await search(page).getAttribute("aria-expanded")).toBe("false");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await page.getByText(/^48\.2° N, 15\.6\d° E/).waitFor();
    await page.getByText(/^About 2\d0 m, as the nearest towns/).waitFor();
    expect(await page.getByRole("textbox", { name: "Name of the place" }).inputValue()).toBe("Sankt Pölten");
    await page.getByText("Towns: GeoNames, CC BY 4.0").waitFor();
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(sideways).toBeLessThanOrEqual(0);
    const height = page.getByRole("textbox", { name: "Height above the sea, m" });
    await height.fill("812");
    await height.press("Enter");
    await search(page).fill("paris, texas");
    await page.getByRole("option", { name: /^Paris Texas, United States/ }).waitFor();
    await search(page).press("Enter");
    await page.getByText(/^33\.66° N, 95\.5\d° W/).waitFor();
    expect(await height.inputValue()).toBe("812");
    expect(fetches("/assets/towns")).toBe(1);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test("hostile text stays text, and what is not found is told", async () => {
  const { page, complaints } = await openPage(browser);
  await page.goto(`${url()}?new`);
  await search(page).fill("<img src=x onerror=\"document.title='harmed'\">");
  await page.getByText(/^None of 44.?\d{3} towns is called so/).waitFor();
  expect(await page.title()).not.toBe("harmed");
  await search(page).press("Enter");
  expect(page.url()).toContain("?new");
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("the device's position is asked on a click only; a refusal is told in words, and the near map has towns and states", async () => {
  const context = await browser.newContext({ geolocation: { latitude: 39.74, longitude: -104.99, accuracy: 30 } });
  const page = await context.newPage();
  await page.goto(`${url()}?new`);
  await page.getByRole("button", { name: "Where this device is" }).click();
  await page.getByText(/The browser may not tell this page where it is/).waitFor();
  await context.grantPermissions(["geolocation"]);
  await page.getByRole("button", { name: "Where this device is" }).click();
  await page.getByText(/^39\.74° N, 104\.99° W/).waitFor();
  await page.getByText(/^To about 30 m/).waitFor();
  await page.getByText(/^About 1.?[56]\d0 m, as the nearest towns/).waitFor();
  await page.getByRole("button", { name: "Show what is nearby" }).click();
  await page.locator(".map-town-name", { hasText: "Denver" }).waitFor();
  await expect.poll(async () => (await page.locator(".map-states").getAttribute("d"))?.length).toBeGreaterThan(200);
  await context.close();
});

test("the towns are among the files that are put by for days without a network, and the one file has none of them", () => {
  expect(readFileSync("dist/explorer/offlineWorker.js", "utf8")).toMatch(/assets\/towns-[\w-]{8}\.bin/);
  expect(readFileSync("dist/duskline.html", "utf8")).toContain(
    "The search by town is left out of the page that is one file",
  );
});
