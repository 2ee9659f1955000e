import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer, { type ElementHandle } from "puppeteer-core";
import type { Driven, Found } from "./driven.ts";
import { installPackages, isExecutable, onPath } from "./findProgram.ts";
import { WAIT_MS } from "./waits.ts";

const NAMES = ["firefox-esr", "firefox"];

/** What DUSKLINE_FIREFOX names, one on PATH, or as root on Debian or Ubuntu the distribution's package. */
export function findFirefox(): Found {
  const asked = process.env.DUSKLINE_FIREFOX;
  if (asked && !isExecutable(asked))
    throw new Error(`DUSKLINE_FIREFOX names ${asked}, which is not a program that can be run; correct it or unset it.`);
  // Debian and Ubuntu call it by different names.
  const path =
    asked || (onPath(NAMES) ?? (NAMES.some((name) => installPackages("Firefox", [name])) ? onPath(NAMES) : undefined));
  return path === undefined
    ? { why: "no Firefox is on PATH and none could be installed; set DUSKLINE_FIREFOX to one" }
    : { start: () => driveFirefox(path) };
}

/** Starts a Firefox without a window and drives it over WebDriver BiDi. */
async function driveFirefox(executablePath: string): Promise<Driven> {
  const downloads = mkdtempSync(join(tmpdir(), "duskline-firefox-"));
  const browser = await puppeteer.launch({
    browser: "firefox",
    executablePath,
    headless: true,
    timeout: WAIT_MS,
    protocolTimeout: WAIT_MS,
    extraPrefsFirefox: { "browser.download.dir": downloads, "browser.download.folderList": 2 },
  });
  const page = await browser.newPage();
  page.setDefaultTimeout(WAIT_MS);
  await page.setViewport({ width: 1440, height: 900 });
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error instanceof Error ? error.message : String(error)));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warn") complaints.push(message.text());
  });
  const element = async (xpath: string) => (await page.waitForSelector(`xpath/${xpath}`)) as ElementHandle<HTMLElement>;
  const press: Driven["press"] = async (...keys) => {
    for (const key of keys) await page.keyboard.down(key);
    for (const key of keys.toReversed()) await page.keyboard.up(key);
  };
  return {
    name: await browser.version(),
    complaints,
    goTo: async (url) => void (await page.goto(url)),
    look: (at, ...given) => page.evaluate(at as (...all: unknown[]) => unknown, ...given) as never,
    // A locator waits until what is to be clicked has come to rest.
    click: (xpath) => page.locator(`xpath/${xpath}`).click(),
    focus: async (xpath) => (await element(xpath)).focus(),
    async typeOver(xpath, text) {
      await (await element(xpath)).focus();
      await press("Control", "a");
      await page.keyboard.type(text);
    },
    press,
    give: async (xpath, path) => ((await element(xpath)) as ElementHandle<HTMLInputElement>).uploadFile(path),
    picture: () => page.screenshot({ encoding: "base64" }),
    pdf: () => page.pdf({ timeout: WAIT_MS }),
    downloads,
    async close() {
      await browser.close();
      rmSync(downloads, { recursive: true, force: true });
    },
  };
}
