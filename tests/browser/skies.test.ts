import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Change, loadClimateTables } from "../../engine/index.ts";
import { runMembers } from "../../engine/run/odds.ts";
import { prepareEnsemble } from "../../engine/run/prepareEnsemble.ts";
import { inHundred } from "../../engine/run/sizeSentences.ts";
import { wilson } from "../../engine/run/wilson.ts";
import { exampleRun } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { openExplorer, plain, settled } from "./openExplorer.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

/** The line under the answer once all members are in. */
async function caption(page: Page): Promise<string> {
  const line = page.locator(".skies [role=status]");
  await page.waitForFunction(() => document.querySelector(".skies [role=status]")?.textContent !== "");
  return plain(await line.textContent());
}

/** What the same members say in Node, on one thread. */
async function expected(changes: readonly Change[]): Promise<string> {
  const { scenario } = (await exampleRun(changes)).prepared;
  const ready = prepareEnsemble(scenario, { climate: await loadClimateTables() }, "duskline");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { outcomes } = runMembers(ready.ensemble, 0, 1000);
  const { share, low, high } = wilson(outcomes.belowFromStep.filter((step) => step < 0).length, 1000);
  return `it holds in ${inHundred(share)} of 100 (${Math.round(100 * low)} to ${Math.round(100 * high)} by`;
}

test("the page's workers count what Node counts, for the plan as it opens and as it is changed", async () => {
  const { page, complaints } = await openExplorer(browser);
  const first = await caption(page);
  expect(first).toContain(await expected([]));
  await page.getByRole("textbox", { name: "Panels, Van roof" }).fill("4");
  await settled(page);
  const second = await caption(page);
  expect(second).toContain(await expected([{ at: "panels.roof.count", to: 4 }]));
  expect(second).not.toBe(first);
  expect(complaints).toEqual([]);
});

test("an edit before the count is done ends it, and only the last plan's is told", async () => {
  const { page, complaints } = await openExplorer(browser);
  // The next page's workers are held back until the edit is made; what they are told meanwhile waits for them in order.
  let release = () => {};
  const edited = new Promise<void>((resolve) => {
    release = resolve;
  });
  const asked = new Promise<void>((resolve) => {
    void page.context().route(/poolWorker/, async (route) => {
      resolve();
      await edited;
      await route.continue();
    });
  });
  await page.exposeFunction("tell", (text: string) => told.push(plain(text)));
  const told: string[] = [];
  await page.reload();
  await settled(page);
  await page.evaluate(() => {
    const line = document.querySelector(".skies")!;
    const said = () => line.querySelector("[role=status]")!.textContent!;
    const tell = (window as unknown as { tell: (text: string) => void }).tell;
    new MutationObserver(() => said() !== "" && tell(said())).observe(line, {
      characterData: true,
      childList: true,
      subtree: true,
    });
  });
  await asked;
  await page.getByRole("textbox", { name: "Panels, Van roof" }).fill("6");
  await settled(page);
  release();
  const last = await caption(page);
  expect(last).toContain(await expected([{ at: "panels.roof.count", to: 6 }]));
  expect([...new Set(told)]).toEqual([last]);
  expect(complaints).toEqual([]);
});

test("the line is accessible while it works and when it is done, and moves nothing", async () => {
  const { page } = await openExplorer(browser);
  const height = () => page.locator(".skies").evaluate((line) => line.getBoundingClientRect().height);
  const audit = async () => {
    const { violations } = await new AxeBuilder({ page }).include(".skies").analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
  };
  const before = await height();
  await audit();
  await caption(page);
  await audit();
  expect(await height()).toBe(before);
});
