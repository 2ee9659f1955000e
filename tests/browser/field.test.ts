import type { Browser, Page } from "playwright-core";
import { type PreviewServer, preview } from "vite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, overhangPx, plain, settled } from "./openExplorer.ts";

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true };
const BEFORE_THE_EVENT = new Date("2026-09-01T10:00:00Z");

let browser: Browser;
let server: PreviewServer;

/** A server of its own, because it is stopped on the way. */
const stop = async () => {
  (server.httpServer as { closeAllConnections?: () => void }).closeAllConnections?.();
  await server.close();
};
const keptReading = (page: Page) => page.locator("#readings .readings-list li");

beforeAll(async () => {
  browser = await launchBrowser();
  server = await preview({ logLevel: "warn", preview: { port: 0, strictPort: false } });
});
afterAll(async () => {
  await browser?.close();
  await stop();
});

test("in the field, on a phone without a network, a reading is typed, learned from, and still there after a reload", async () => {
  const page = await (await browser.newContext({ ...PHONE, reducedMotion: "reduce" })).newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  await page.clock.setFixedTime(BEFORE_THE_EVENT);
  const url = server.resolvedUrls!.local[0]!;
  await page.goto(url);
  await settled(page);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await stop();
  await expect(fetch(url)).rejects.toThrow();
  await page.reload();
  await settled(page);
  // Three hundred skies instead of a thousand: the same way through, in less time.
  await page.getByLabel("Skies drawn").selectOption("300");
  await page.getByLabel("Add an entry before all others").tap();
  await page.getByRole("button", { name: /^Readings/ }).tap();

  const entry = page.locator("#readings");
  await entry.locator("form").waitFor();
  expect(plain(await entry.locator(".reading-says").textContent())).toContain("before the event begins");
  for (const digit of ["4", "0"]) await entry.getByRole("button", { name: digit, exact: true }).tap();
  expect(await entry.getByRole("textbox", { name: "Charge, %" }).inputValue()).toBe("40");
  await entry.getByLabel(/^Read at/).fill("2026-10-10T08:00");
  expect(await overhangPx(page)).toBeLessThanOrEqual(0);
  await entry.getByRole("button", { name: "Save" }).tap();
  await entry.locator("svg.bands").waitFor();
  await allWorkedOut(page);
  // It is typed in before the event, so it is asked about, and counts once somebody says that it is so.
  const asked = entry.locator(".readings-list .wrong");
  expect(plain(await asked.textContent())).toContain(
    "2026-10-10 08:00, which was still to come when it was typed in. Really?",
  );
  expect(plain(await entry.locator(".verdict").textContent())).toContain("from Thu 8 10:00 on the bank holds");
  await asked.getByRole("button", { name: "say that it is so" }).tap();
  await asked.waitFor({ state: "detached" });
  await allWorkedOut(page);
  const learned = /^Sat 10 08:00: 40 %\. .*from Sat 10 08:00 on the bank holds to Sun 16:00 in .* of 100 skies; before/;
  expect(plain(await entry.locator(".verdict").textContent())).toMatch(learned);
  expect(await entry.locator(".reading-mark").count()).toBe(1);
  expect(await overhangPx(page)).toBeLessThanOrEqual(0);
  await page.getByText("All kept in this browser.").waitFor();

  await page.reload();
  await keptReading(page).waitFor();
  expect(plain(await keptReading(page).textContent())).toContain("Sat 10 08:00 40 %");
  await entry.locator("svg.bands").waitFor();
  await allWorkedOut(page);
  expect(plain(await entry.locator(".verdict").textContent())).toMatch(learned);
  expect(await overhangPx(page)).toBeLessThanOrEqual(0);
  expect(complaints).toEqual([]);
});
