import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { type PreviewServer, preview } from "vite";
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from "vitest";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, plain, settled } from "./openExplorer.ts";

const BUILT = "dist/explorer";

let browser: Browser;
let folder: string;
let server: PreviewServer;
let url: string;

const serve = async (port: number) => {
  server = await preview({ logLevel: "warn", build: { outDir: folder }, preview: { port, strictPort: port > 0 } });
  url = server.resolvedUrls!.local[0]!;
};
const stop = async () => {
  (server.httpServer as { closeAllConnections?: () => void }).closeAllConnections?.();
  await server.close();
};
/** A browser that has been here once and has everything put by. */
const visited = async (query = ""): Promise<{ context: BrowserContext; page: Page; complaints: string[] }> => {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: "reduce" });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  await page.goto(url + query);
  if (query === "") await settled(page);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return { context, page, complaints };
};

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "duskline-"));
  cpSync(BUILT, folder, { recursive: true });
  await serve(0);
});
afterEach(async () => {
  await stop();
  rmSync(folder, { recursive: true });
});

test("after one visit everything works with the server stopped: answers, edits, shade, map, shelf, type face", async () => {
  const { page, complaints } = await visited();
  const port = Number(new URL(url).port);
  await stop();
  await expect(fetch(url)).rejects.toThrow();
  await page.reload();
  await settled(page);
  await allWorkedOut(page);
  const before = plain(await page.locator("h1").textContent());
  expect(before).toMatch(/in \d+ of 100 skies/);
  await page.getByRole("textbox", { name: "Ampere-hours of one block" }).first().fill("120");
  await settled(page);
  await allWorkedOut(page);
  expect(plain(await page.locator("h1").textContent())).not.toBe(before);
  await page.locator("#shade").getByRole("button", { name: "Unfold" }).click();
  await page.locator("#shade svg").first().waitFor();
  await page.locator("#plan").getByRole("button", { name: "All fields" }).click();
  await page.locator("#plan .scenario-form").waitFor();
  const faces = await page.evaluate(() => [...document.fonts].map(({ family, status }) => `${family} ${status}`));
  expect(faces).toContain("Radio Canada Variable loaded");
  await page.getByText("All kept in this browser").waitFor();
  await page.goto(`${url}?shelf`);
  await page.getByRole("link", { name: "Autumn weekend in the walnut grove" }).waitFor();
  await page.goto(`${url}?new`);
  await page.getByRole("application", { name: /^Map/ }).focus();
  await page.keyboard.press("+"); // nearer: the finer outlines
  await page.locator(".map-station").first().waitFor();
  expect(await page.locator(".map-land").getAttribute("d")).toMatch(/^M/);
  expect(complaints).toEqual([]);
  await serve(port);
});

test("a newer version is put by, offered, and taken only when somebody asks for it", async () => {
  const { context, page } = await visited("?shelf");
  await page.getByRole("button", { name: "Put the example here" }).click();
  await page.locator(".shelf li a").waitFor();
  const other = await context.newPage();
  await other.goto(`${url}?new`);
  const map = other.getByRole("application", { name: /^Map/ });
  await map.waitFor();
  const place = (file: string) => join(folder, file);
  const html = readFileSync(place("index.html"), "utf8");
  writeFileSync(place("index.html"), html.replace("<head>", '<head><meta name="newer">'));
  const worker = readFileSync(place("offlineWorker.js"), "utf8");
  writeFileSync(place("offlineWorker.js"), worker.replace(/"version":"[^"]+"/, '"version":"newer"'));
  expect(readFileSync(place("offlineWorker.js"), "utf8")).not.toBe(worker);

  await page.reload(); // a reload looks for a newer worker, but shows what is put by
  const offer = page.getByRole("complementary", { name: "A newer version" });
  await offer.waitFor();
  const isNewer = (of: Page) => of.locator("meta[name=newer]").count();
  expect(await isNewer(page)).toBe(0);

  await offer.getByRole("button", { name: "Use it now" }).click();
  await page.locator("meta[name=newer]").waitFor({ state: "attached" });
  await page.getByRole("link", { name: "Autumn weekend in the walnut grove" }).waitFor();
  expect(await offer.count()).toBe(0);
  // The other tab was not asked: it stays as it is, and what it has yet to fetch is still there for it.
  expect(await isNewer(other)).toBe(0);
  await map.focus();
  await other.keyboard.press("+");
  await expect.poll(() => other.locator(".map-land").getAttribute("d")).toMatch(/^M/);
});

test("the page can be installed: manifest, icons and worker come from beside it, as what they are", async () => {
  const type = async (file: string) => (await fetch(inject("explorerUrl") + file)).headers.get("content-type");
  expect(await type("offlineWorker.js")).toContain("javascript");
  expect(await type("manifest.webmanifest")).toContain("manifest+json");
  const manifest = (await (await fetch(`${inject("explorerUrl")}manifest.webmanifest`)).json()) as {
    icons: { src: string; sizes: string }[];
  };
  for (const { src, sizes } of manifest.icons) {
    const response = await fetch(inject("explorerUrl") + src);
    expect(response.headers.get("content-type")).toBe("image/png");
    // A PNG has its width and height at bytes 16 and 20 (PNG specification, IHDR).
    const head = new DataView(await response.arrayBuffer());
    expect(`${head.getUint32(16)}x${head.getUint32(20)}`).toBe(sizes);
  }
});

test("what must be there for the first picture is small", () => {
  const page = readFileSync(join(BUILT, "index.html"), "utf8");
  const scripts = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, file]) => file!);
  expect(scripts.length).toBeGreaterThan(0);
  const gzippedKb = scripts.reduce((sum, file) => sum + gzipSync(readFileSync(join(BUILT, file))).length / 1000, 0);
  expect(gzippedKb).toBeLessThan(130);
});
