import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { findFirefox } from "./driveFirefox.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, openExplorer, plain, savedBytes, settled } from "./openExplorer.ts";

const BUILT = "dist/duskline.html";
const TITLE = "//input[@aria-label='Title of the notebook']";

let browser: Browser;
let folder: string;
let file: string;
let url: string;
beforeAll(async () => {
  if (!existsSync(BUILT)) throw new Error("This test needs the page as one file: run `npm run build:single`.");
  browser = await launchBrowser();
  folder = mkdtempSync(join(tmpdir(), "duskline-"));
  mkdirSync(join(folder, "USB stick"));
  file = join(folder, "USB stick", "duskline #1.html");
  copyFileSync(BUILT, file);
  url = pathToFileURL(file).href;
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** The file in a browser that is on no network. */
async function opened(of: string): Promise<{ page: Page; complaints: string[] }> {
  await Promise.all(browser.contexts().map((earlier) => earlier.close()));
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, offline: true });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("request", (request) => {
    if (!/^(data|blob):/.test(request.url()) && !request.url().startsWith(url)) complaints.push(request.url());
  });
  await page.goto(of);
  return { page, complaints };
}

test("it is one file of at most 3 MB that names nothing outside of itself", () => {
  expect(statSync(BUILT).size).toBeLessThanOrEqual(3_000_000);
  const html = readFileSync(BUILT, "utf8").replace(/<(script|style)>[\s\S]*?<\/\1>/g, "");
  const named = [...html.matchAll(/\b(?:src|href)="([^"]*)"/g)].map(([, address]) => address!.slice(0, 20));
  expect(named).toEqual(["data:image/svg+xml;b"]);
  expect(html).toContain("default-src 'none'; script-src 'sha256-");
  expect(html).not.toContain("from-folder");
});

test("from a disk it answers to the same skies as the hosted page, and shade, map, form and shelf work with no network", async () => {
  const hosted = await openExplorer(browser);
  await allWorkedOut(hosted.page);
  const answer = plain(await hosted.page.locator("h1").textContent());
  const { page, complaints } = await opened(url);
  await settled(page);
  await allWorkedOut(page);
  expect(plain(await page.locator("h1").textContent())).toBe(answer);
  await page.locator("#shade").getByRole("button", { name: "Unfold" }).click();
  await page.locator("#shade svg").first().waitFor();
  await page.locator("#plan").getByRole("button", { name: "All fields" }).click();
  await page.locator("#plan .scenario-form").waitFor();
  const faces = await page.evaluate(() => [...document.fonts].map(({ family, status }) => `${family} ${status}`));
  expect(faces).toContain("Radio Canada Variable loaded");
  await page.getByLabel("Title of the notebook").fill("On the stick");
  await page.getByLabel("Title of the notebook").press("Enter");
  await page.getByText("All kept in this browser.").waitFor();
  await page.reload();
  await settled(page);
  expect(await page.getByLabel("Title of the notebook").inputValue()).toBe("On the stick");
  await page.getByRole("link", { name: "Shelf" }).click();
  await page.getByRole("link", { name: "On the stick" }).waitFor();
  await page.getByRole("link", { name: "New notebook, six questions" }).click();
  await page.getByRole("application", { name: /^Map/ }).focus();
  await page.keyboard.press("+");
  await expect.poll(() => page.locator(".map-land").getAttribute("d")).toMatch(/^M/);
  expect(complaints).toEqual([]);
});

test("it offers the file and no link, for none leads to it", async () => {
  const { page, complaints } = await opened(url);
  await page.getByRole("button", { name: "Share link" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByText("This page is a file, and no link leads to it from elsewhere.").waitFor();
  expect(await dialog.getByRole("textbox").count()).toBe(0);
  expect(await dialog.getByRole("button", { name: /QR|Copy/ }).count()).toBe(0);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    dialog.getByRole("button", { name: "Save as a file" }).click(),
  ]);
  expect(JSON.parse((await savedBytes(download)).toString("utf8")).title).toBe("Autumn weekend in the walnut grove");
  expect(complaints).toEqual([]);
});

test("where the browser keeps nothing for files it says so, and works all the same", async () => {
  await Promise.all(browser.contexts().map((earlier) => earlier.close()));
  const page = await (await browser.newContext()).newPage();
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("not here", "SecurityError");
    };
  });
  await page.goto(url);
  await settled(page);
  await page.getByText("This browser keeps nothing here").waitFor();
  expect(await page.getByText("All kept in this browser.").count()).toBe(0);
});

test("its policy lets its own script run, and nothing that was written into the file", async () => {
  const other = join(folder, "written into.html");
  const html = readFileSync(file, "utf8");
  const written = `<script>window.harmed = 1</script><img src="data:," onerror="window.harmed = 2"><style>body{outline:7px solid}</style>`;
  writeFileSync(
    other,
    html.replace(/<\/body>(?=\s*<\/html>\s*$)/, () => `${written}</body>`),
  );
  const { page } = await opened(pathToFileURL(other).href);
  await settled(page);
  expect(await page.evaluate(() => (window as { harmed?: number }).harmed)).toBeUndefined();
  expect(await page.evaluate(() => getComputedStyle(document.body).outlineWidth)).not.toBe("7px");
  const changed = join(folder, "changed.html");
  writeFileSync(changed, html.replace("self.dusklineScript=", "self.harmed=self.dusklineScript="));
  await page.goto(pathToFileURL(changed).href);
  expect(await page.evaluate(() => (window as { harmed?: unknown }).harmed)).toBeUndefined();
  expect(await page.locator("h1").count()).toBe(0);
});

const firefox = findFirefox();
test.skipIf("why" in firefox)("in Firefox too it answers from a disk, and keeps what was typed", async () => {
  if ("why" in firefox) throw new Error(firefox.why);
  const driven = await firefox.start();
  try {
    const state = () =>
      driven.look(() => ({
        answer: document.querySelector("h1")?.textContent ?? "",
        isKept: document.querySelector(".kept")?.textContent === "All kept in this browser.",
        title: document.querySelector<HTMLInputElement>(".notebook-title")?.value ?? "",
      }));
    await driven.goTo(url);
    // The answer stands long before the whole example is worked out, for which nobody here has to wait.
    await expect.poll(state).toMatchObject({ isKept: true, answer: expect.stringMatching(/\d of 100 skies/) });
    await driven.typeOver(TITLE, "On the stick");
    await driven.press("Enter");
    await expect.poll(state).toMatchObject({ isKept: true, title: "On the stick" });
    await driven.goTo(url);
    await expect.poll(state).toMatchObject({ isKept: true, title: "On the stick" });
    expect(driven.complaints).toEqual([]);
  } finally {
    await driven.close();
  }
});
