import type { Browser, BrowserContextOptions, Download, Page } from "playwright-core";
import { inject } from "vitest";

/** A page with the explorer on it, and everything that went wrong or went astray on the way. */
export interface OpenPage {
  readonly page: Page;
  /** Errors of the page and its console, requests that failed or went to another host. */
  readonly complaints: string[];
}

/** A page of its own with nothing on it yet; what goes wrong on it is kept. */
export async function openPage(browser: Browser, options: BrowserContextOptions = {}): Promise<OpenPage> {
  // Pages of earlier tests would go on working out odds and slow this one down.
  await Promise.all(browser.contexts().map((earlier) => earlier.close()));
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  // Being put by for days without a network is a test of its own; here it would only take time from the others.
  await context.addInitScript(() => Object.defineProperty(navigator, "serviceWorker", { value: undefined }));
  const page = await context.newPage();
  const explorerUrl = inject("explorerUrl");
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("requestfailed", (request) => {
    // What a page was still fetching when it was left is no failure.
    if (request.failure()?.errorText !== "net::ERR_ABORTED") complaints.push(`failed: ${request.url()}`);
  });
  page.on("response", (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`);
  });
  page.on("request", (request) => {
    const url = request.url();
    if (/^https?:/.test(url) && !url.startsWith(explorerUrl)) complaints.push(`stranger: ${url}`);
  });
  return { page, complaints };
}

/**
 * Opens the built explorer on its example, as a first visit does, and waits for the first picture of a run. All that the example asks is
 * worked out then, under a thousand skies: where no figure of the example is looked at, `openExample` is quicker.
 */
export async function openExplorer(browser: Browser, options: BrowserContextOptions = {}): Promise<OpenPage> {
  const opened = await openPage(browser, options);
  await opened.page.goto(inject("explorerUrl"));
  await opened.page.locator("svg.strata").waitFor();
  await settled(opened.page);
  return opened;
}

/** Waits until the picture of the run belongs to the scenario that stands in the fields. */
export async function settled(page: Page): Promise<void> {
  await page.locator("#run > div:not(.entry-stale) svg.strata").waitFor();
}

/** Waits until everything on the sheet is worked out. */
export async function allWorkedOut(page: Page): Promise<void> {
  await page.locator(".page:not(.working)").waitFor();
}

/** Whether anything on the sheet sticks out sideways, px. */
export function overhangPx(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** What a page saved, byte for byte. */
export async function savedBytes(download: Download): Promise<Buffer> {
  const pieces: Buffer[] = [];
  for await (const piece of await download.createReadStream()) pieces.push(piece as Buffer);
  return Buffer.concat(pieces);
}

/** Text with its narrow spaces turned into plain ones. */
export function plain(text: string | null): string {
  return (text ?? "").replaceAll("\u202f", " ").replace(/\s+/g, " ").trim();
}
