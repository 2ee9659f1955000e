/**
 * How long the page takes from an edit to repainted bands: the example with four scenarios and 1,000 members each, in the browser
 * that the tests use. Two times are taken for each edit: until all four bands show a coarse pass, and until they show all members.
 * Before that, what a first visit to the example takes when the page's own thread is made slower, as a phone's is.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { type CDPSession, chromium, type Page } from "playwright-core";
import { build, preview } from "vite";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { findBrowser } from "../browser/findBrowser.ts";
import { isRoot } from "../browser/findProgram.ts";
import { type FirstVisit, firstVisit } from "../browser/firstVisit.ts";

const EDITS = 16;
const WARMING_EDITS = 4;
const FIRST_VISITS = 5;
const SLOWER_BY = 4;

const folder = mkdtempSync(join(tmpdir(), "duskline-bench-"));
const outDir = join(folder, "explorer");
await build({ configFile: "vite.config.ts", logLevel: "error", build: { outDir } });
const server = await preview({
  configFile: "vite.config.ts",
  logLevel: "error",
  build: { outDir },
  preview: { port: 4179, strictPort: false },
});
const browser = await chromium.launch({ executablePath: findBrowser(), chromiumSandbox: !isRoot() });
try {
  const slowed = async (page: Page) => {
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER_BY });
  };
  const visits: FirstVisit[] = [];
  for (let k = 0; k < FIRST_VISITS; k++) {
    visits.push(await firstVisit(browser, server.resolvedUrls!.local[0]!, slowed));
  }
  // The browser slows the page's own thread but none of its workers: an answer, which they work out, comes later than this on a
  // processor that is slow as a whole.
  console.log(
    `\nfirst visit to the example, the page's own thread ${SLOWER_BY} times slower (load ${loadavg()[0]!.toFixed(1)}), from the address on:`,
  );
  console.log(`first picture: ${quartiles(visits.map(({ paintMs }) => paintMs))}`);
  console.log(`typing in the title shows: ${quartiles(visits.map(({ typedMs }) => typedMs))}`);
  console.log(`the answer stands: ${quartiles(visits.map(({ answerMs }) => answerMs))}`);
  const { beforeAnswer, afterAnswer } = visits[0]!;
  console.log(
    `scripts asked for before the answer: ${sizeWords(beforeAnswer)}; until all is worked out: ${sizeWords([...beforeAnswer, ...afterAnswer])}`,
  );

  const page = await (await browser.newContext({ serviceWorkers: "block" })).newPage();
  await page.goto(`${server.resolvedUrls!.local[0]!}?shelf`);
  const path = join(folder, "four.json");
  writeFileSync(path, JSON.stringify(fourScenarios()));
  await page.locator("input[type=file]").setInputFiles(path);
  await page.locator(".page:not(.working) #forecast svg.bands").waitFor({ timeout: 60_000 });
  const wholeBrowser = await browser.newBrowserCDPSession();
  const thisPage = await page.context().newCDPSession(page);
  await thisPage.send("Performance.enable", { timeDomain: "threadTicks" });
  const edits: { name: string; label: string; values: number[] }[] = [
    { name: "the bank's ampere-hours", label: "Ampere-hours of one block", values: range(250, EDITS) },
    { name: "panels on the roof", label: "Panels, Van roof", values: range(1, EDITS) },
  ];
  const load = loadavg()[0]!.toFixed(1);
  console.log(
    `\n4 scenarios × 1000 members, ${availableParallelism()} cores (load ${load}), from the edit to the paint:`,
  );
  for (const { name, label, values } of edits) {
    const times: { coarseMs: number; wholeMs: number; slowestFrameMs: number }[] = [];
    let before = await processorMs(wholeBrowser, thisPage);
    for (const [k, value] of values.entries()) {
      if (k === WARMING_EDITS) before = await processorMs(wholeBrowser, thisPage);
      times.push(await editAndWait(page, label, value));
    }
    const after = await processorMs(wholeBrowser, thisPage);
    const settled = times.slice(WARMING_EDITS);
    const perEdit = (of: keyof typeof after) => ((after[of] - before[of]) / settled.length).toFixed(0);
    console.log(
      `${name}: processor time an edit ${perEdit("all")} ms on all threads, of which the page's own ${perEdit("own")} ms`,
    );
    console.log(`${name}: first bands (100 members) ${quartiles(settled.map(({ coarseMs }) => coarseMs))}`);
    console.log(`${name}: whole bands (1000 members) ${quartiles(settled.map(({ wholeMs }) => wholeMs))}`);
    console.log(`${name}: longest wait for a frame ${quartiles(settled.map(({ slowestFrameMs }) => slowestFrameMs))}`);
  }
} finally {
  await browser.close();
  await server.close();
  rmSync(folder, { recursive: true });
}
process.exit(0);

/** "31 with 239.7 kB of gzip" */
function sizeWords(files: readonly string[]): string {
  const bytes = files.reduce((sum, file) => sum + gzipSync(readFileSync(join(outDir, file))).length, 0);
  return `${files.length} with ${(bytes / 1000).toFixed(1)} kB of gzip`;
}

/** Processor time of the browser's pages with their workers so far, and of the page's own thread: no matter what else runs. */
async function processorMs(wholeBrowser: CDPSession, thisPage: CDPSession): Promise<{ all: number; own: number }> {
  const { processInfo } = await wholeBrowser.send("SystemInfo.getProcessInfo");
  const pages = processInfo.filter(({ type }) => type === "renderer");
  const { metrics } = await thisPage.send("Performance.getMetrics");
  return {
    all: 1000 * pages.reduce((sum, { cpuTime }) => sum + cpuTime, 0),
    own: 1000 * (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN),
  };
}

function range(first: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => first + k);
}

/** The example's scenarios and one more, with nothing on the sheet but their forecasts and the fields to edit. */
function fourScenarios() {
  const example = exampleNotebook("four");
  const fourth = {
    id: "both",
    name: "Meadow, two blocks",
    basedOn: "meadow",
    changes: [{ at: "bank.inParallel", to: 2 }],
  };
  return {
    ...example,
    title: "Four scenarios",
    scenarios: [...example.scenarios, fourth],
    entries: [
      {
        id: "forecast",
        kind: "forecast",
        title: "Four",
        doc: { scenarios: ["meadow", "roof", "two-blocks", "both"] },
      },
      { id: "plan", kind: "scenario", title: "The plan", doc: { scenario: "roof" } },
    ],
  };
}

/** Types a value and watches, frame by frame, for bands that are no longer stale and for work that is done. */
function editAndWait(page: Page, label: string, value: number) {
  return page.evaluate(
    async ([name, text]) => {
      const box = document.querySelector<HTMLInputElement>(`input[aria-label="${name}"]`)!;
      await new Promise(requestAnimationFrame);
      const fromMs = performance.now();
      box.value = text!;
      box.dispatchEvent(new InputEvent("input", { bubbles: true }));
      let coarseMs = Number.NaN;
      let slowestFrameMs = 0;
      for (let lastMs = fromMs; ; ) {
        await new Promise(requestAnimationFrame);
        const nowMs = performance.now();
        slowestFrameMs = Math.max(slowestFrameMs, nowMs - lastMs);
        lastMs = nowMs;
        const isStale = document.querySelector("#forecast .entry-stale") !== null;
        const isWorking = document.querySelector(".page.working") !== null;
        if (Number.isNaN(coarseMs) && !isStale) coarseMs = nowMs - fromMs;
        if (!isStale && !isWorking) return { coarseMs, wholeMs: nowMs - fromMs, slowestFrameMs };
      }
    },
    [label, String(value)],
  );
}

function quartiles(values: readonly number[]): string {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!.toFixed(0);
  return `median ${at(0.5)} ms (a quarter under ${at(0.25)}, a quarter over ${at(0.75)})`;
}
