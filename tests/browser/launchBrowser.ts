import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { inject } from "vitest";
import { SLOWER_BY, WAIT_MS } from "./waits.ts";

/**
 * The run's one browser, for one file of tests: its contexts and pages are its own, and closing it closes those. Every wait on a page has
 * the limit of `waits.ts`.
 */
export async function launchBrowser(): Promise<Browser> {
  const browser = await chromium.connect(inject("browserEndpoint"), { timeout: WAIT_MS });
  browser.on("context", (context) => {
    context.setDefaultTimeout(WAIT_MS);
    if (SLOWER_BY > 1) context.on("page", (page) => void slowed(context, page));
  });
  return browser;
}

async function slowed(context: BrowserContext, page: Page): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER_BY });
}
