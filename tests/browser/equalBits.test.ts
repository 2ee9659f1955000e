import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bitsBundle } from "../bitsBundle.ts";
import { differingBits } from "../bitsOf.ts";
import { bitsReport, type ScenarioBits } from "../bitsReport.ts";
import { record } from "../truth/record.ts";
import { launchBrowser } from "./launchBrowser.ts";

const SEED = "4127";
const MEMBERS = 60;

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** The same report, made by a worker of the browser. */
async function reportOfBrowser(): Promise<ScenarioBits[]> {
  const program = `${await bitsBundle()}
    bits.bitsReport(${JSON.stringify(SEED)}, ${MEMBERS}).then((report) => postMessage(report), (error) => postMessage(String(error)));`;
  const page = await browser.newPage();
  try {
    const report = await page.evaluate((text) => {
      const worker = new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })));
      return new Promise<unknown>((resolve, reject) => {
        worker.onmessage = ({ data }) => resolve(data);
        worker.onerror = (event) => reject(new Error(event.message));
      });
    }, program);
    if (!Array.isArray(report)) throw new Error(String(report));
    return report as ScenarioBits[];
  } finally {
    await page.close();
  }
}

test("a browser's worker prepares and counts to the same bits as Node", async () => {
  const [here, there] = await Promise.all([bitsReport(SEED, MEMBERS), reportOfBrowser()]);
  expect(there.map(({ name }) => name)).toEqual(here.map(({ name }) => name));
  const differing = here.flatMap((ours, k) => [
    ...differingBits(ours.prepared, there[k]!.prepared),
    ...differingBits(ours.counted, there[k]!.counted),
  ]);
  record({
    what: "arrays and numbers of an ensemble that differ in any bit between Node and Chromium",
    source: "the same code in a worker of the installed Chromium",
    tolerance: 0,
    why: "same seed, same bits",
    worst: differing.length,
    unit: "",
    n: here.reduce((sum, ours) => sum + Object.keys(ours.prepared).length + Object.keys(ours.counted).length, 0),
  });
  here.forEach((ours, k) => {
    expect(Object.keys(ours.counted).length).toBeGreaterThan(20);
    expect(differingBits(ours.prepared, there[k]!.prepared), ours.name).toEqual([]);
    expect(differingBits(ours.counted, there[k]!.counted), ours.name).toEqual([]);
  });
});
