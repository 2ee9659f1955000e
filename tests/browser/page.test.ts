import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { launchBrowser } from "./launchBrowser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test("the page opens with its title, no error in the console, and nothing asked of another host", async () => {
  const page = await browser.newPage();
  const complaints: string[] = [];
  const strangers: string[] = [];
  const explorerUrl = inject("explorerUrl");
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  page.on("request", (request) => {
    const url = request.url();
    if (/^https?:/.test(url) && !url.startsWith(explorerUrl)) strangers.push(url);
  });
  const response = await page.goto(explorerUrl);
  await page.locator("#root > *").first().waitFor();
  expect(await page.title()).toMatch(/duskline/i);
  expect(response?.headers()["content-security-policy"]).toContain("default-src 'none'");
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});
