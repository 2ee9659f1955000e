/**
 * How long tests wait for anything, in one place. Nobody waits that long, on any machine that can show the page at all: a limit only says
 * that something will never come, so it costs nothing to be generous with it. Read by the set-up of all tests and by every page.
 */

/** For one thing on a page: an element, a download, an address, an answer. */
export const WAIT_MS = 240_000;
/** For one test in a browser, and for what stands before and after it. */
export const BROWSER_TEST_MS = 1_800_000;
/** For one test without a browser. */
export const NODE_TEST_MS = 600_000;

/**
 * How many times slower the processor is made for the pages under test: `DUSKLINE_SLOWER=6 npx vitest run --project browser` shows whether
 * a test depends on how fast the machine is. The browser slows the thread of a page but not its workers.
 */
export const SLOWER_BY = Math.max(1, Number(process.env.DUSKLINE_SLOWER ?? 1) || 1);
