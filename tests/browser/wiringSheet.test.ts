import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { wiringSheet } from "../../engine/answers/limits/wiringSheet.ts";
import { limits } from "../../engine/checks/limits.ts";
import { gear, nastyPlan } from "../engine/checks/nastyPlan.ts";
import { exampleRun } from "../explorer/exampleRun.ts";
import { traceInput } from "../truth/run/plainScenario.ts";
import { launchBrowser } from "./launchBrowser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const OF = { plan: "A plan", place: "Nowhere (invented)", when: "Fri 12 June 2026" };

test("the wiring sheet is one page on A4 and on Letter, whatever the plan has, and nothing sticks out", async () => {
  const plans = [
    await exampleRun(),
    traceInput(nastyPlan()),
    // Forty runs: a page of small print, and one page all the same.
    traceInput({ ...nastyPlan(), gear: Array.from({ length: 28 }, (_, k) => gear(`thing-${k}`, 1, {})) }),
  ];
  const page = await browser.newPage({ viewport: { width: 794, height: 1123 } });
  for (const [k, run] of plans.entries()) {
    await page.setContent(wiringSheet({ ...limits(run), remarks: [], sheetOf: OF }));
    for (const format of ["A4", "Letter"]) {
      const pdf = (await page.pdf({ format })).toString("latin1");
      expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g), `plan ${k} on ${format}`).toHaveLength(1);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(794);
    const cut = await page.evaluate(() => {
      const svg = document.querySelector("svg")!.getBoundingClientRect();
      return [...document.querySelectorAll("svg text")]
        .filter((text) => {
          const box = text.getBoundingClientRect();
          return box.left < svg.left - 1 || box.right > svg.right + 1 || box.bottom > svg.bottom + 1;
        })
        .map(({ textContent }) => textContent);
    });
    expect(cut, `plan ${k}`).toEqual([]);
  }
  await page.close();
});
