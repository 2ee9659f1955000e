import type { Browser, Page, Request } from "playwright-core";

export interface FirstVisit {
  /** From the address on. */
  readonly paintMs: number;
  readonly typedMs: number;
  readonly answerMs: number;
  /** Scripts that the page and its workers had asked for when the answer stood, and those that came until all was worked out. */
  readonly beforeAnswer: readonly string[];
  readonly afterAnswer: readonly string[];
}

/**
 * A visit to the example by a browser that has nothing put by, over a network that costs nothing. Somebody types in the notebook's title
 * as soon as it is there. What the service worker puts by meanwhile does not count.
 * @param prepare is handed the page before it goes anywhere
 */
export async function firstVisit(
  browser: Browser,
  url: string,
  prepare: (page: Page) => Promise<unknown> = async () => {},
): Promise<FirstVisit> {
  const context = await browser.newContext();
  const page = await context.newPage();
  const requests: Request[] = [];
  page.on("request", (request) => {
    if (new URL(request.url()).pathname.endsWith(".js") && request.serviceWorker() === null) requests.push(request);
  });
  await page.addInitScript(() => {
    const marks = { answerMs: Number.NaN, typedMs: Number.NaN };
    Object.assign(globalThis, { marks });
    addEventListener("input", () =>
      requestAnimationFrame(() => {
        marks.typedMs = performance.now();
      }),
    );
    const look = () => {
      const said = document.querySelector("h1.answer")?.textContent ?? "Working it out…";
      if (said === "Working it out…") requestAnimationFrame(look);
      else marks.answerMs = performance.now();
    };
    look();
  });
  await prepare(page);
  await page.goto(url, { waitUntil: "commit" });
  await page.locator(".notebook-title").press("x");
  await page.waitForFunction(() => (globalThis as unknown as { marks: { answerMs: number } }).marks.answerMs > 0);
  const times = await page.evaluate(() => ({
    ...(globalThis as unknown as { marks: { answerMs: number; typedMs: number } }).marks,
    paintMs: performance.getEntriesByName("first-contentful-paint")[0]!.startTime,
    fromMs: performance.timeOrigin,
  }));
  await page.locator(".page:not(.working)").waitFor();
  const { fromMs, ...marks } = times;
  const firstMs = new Map<string, number>();
  for (const request of requests) {
    const { pathname } = new URL(request.url());
    const startMs = request.timing().startTime - fromMs;
    firstMs.set(pathname, Math.min(startMs, firstMs.get(pathname) ?? Number.POSITIVE_INFINITY));
  }
  await context.close();
  const files = [...firstMs.keys()];
  return {
    ...marks,
    beforeAnswer: files.filter((file) => firstMs.get(file)! <= marks.answerMs),
    afterAnswer: files.filter((file) => firstMs.get(file)! > marks.answerMs),
  };
}
