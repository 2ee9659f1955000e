import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { LATE_MS } from "../../explorer/parts/makeLasting.ts";
import { everyKind } from "./everyKind.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut } from "./openExplorer.ts";
import { openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

/** Waits until a first pass has come in and is drawn under whoever types, or there is nothing to work out. */
async function passDrawn(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let frames = 0; frames < 2; frames++) await new Promise(requestAnimationFrame);
  });
  await page.waitForFunction(
    () =>
      document.querySelector(".page:not(.working)") !== null ||
      document.querySelector("#run > div:not(.entry-stale) svg.strata") !== null,
  );
}

test("whoever types in a field stays in it, whatever comes in meanwhile", async () => {
  const { page, complaints } = await openNotebook(browser, { ...everyKind, title: "Probe" });
  for (const summary of await page.locator("main details:not(.add-entry) > summary").all()) {
    if (await summary.isVisible()) await summary.click();
  }
  await page.locator("#plan").getByRole("button", { name: "All fields" }).click();
  const fields = page.locator("main input:not([type=file]):not([type=checkbox]):not([type=radio]), main textarea");
  const lost: string[] = [];
  const count = await fields.count();
  for (let k = 0; k < count; k++) {
    const field = fields.nth(k);
    if (!(await field.isVisible()) || !(await field.isEditable())) continue;
    const name = (await field.getAttribute("aria-label")) ?? (await field.getAttribute("id")) ?? `field ${k}`;
    const value = await field.inputValue();
    const isText = ["text", "search", "textarea"].includes(await field.evaluate((box: HTMLInputElement) => box.type));
    await field.focus();
    await field.evaluate((element) => element.setAttribute("data-typed", ""));
    // Numbers are typed as they are, a digit more at the end and off again; words likewise.
    await page.keyboard.press("End");
    for (const key of ["1", "Backspace"]) {
      await page.keyboard.press(key);
      await passDrawn(page);
      const isThere = await page.evaluate(() => document.activeElement?.hasAttribute("data-typed") === true);
      if (!isThere) lost.push(`${name} after ${key}`);
    }
    const after = await field.inputValue();
    // A date is rubbed out piece by piece, and a slider knows no digits.
    if (isText && after !== value) lost.push(`${name} reads ${after} and not ${value}`);
    await field.evaluate((element) => {
      element.removeAttribute("data-typed");
      (element as HTMLElement).blur();
    });
  }
  expect(count).toBeGreaterThan(20);
  expect(lost).toEqual([]);
  expect(complaints).toEqual([]);
});

test("an edit that is soon worked out keeps every element and announces nothing", async () => {
  // Notes are written again with their figures, and tables of what takes seconds are late.
  const kinds = new Set(["forecast", "scenario"]);
  const entries = everyKind.entries.filter(({ kind }) => kinds.has(kind));
  const { page } = await openNotebook(browser, { ...everyKind, title: "Probe", members: 100, entries });
  await allWorkedOut(page);
  await page.locator("#forecast svg.bands").waitFor();
  const bank = page.locator("#plan").getByRole("textbox", { name: "Ampere-hours of one block" });
  const edit = async (ampereHours: string) => {
    await bank.fill(ampereHours);
    await allWorkedOut(page);
  };
  await edit("275"); // the words of what comes after that are as many
  await page.evaluate((lateMs) => {
    // However slow this machine is, the answer comes before anything counts as late.
    const { setTimeout } = window;
    const inTime = (work: () => void, ms?: number) => (ms === lateMs ? 0 : setTimeout(work, ms));
    Object.assign(window, { setTimeout: inTime });
    const gone: string[] = [];
    const where = (node: Node) =>
      `${node.parentElement?.className ?? ""} ${node.nodeName} ${node.textContent?.slice(0, 40)}`;
    const watcher = new MutationObserver((changes) => {
      for (const { target, removedNodes, addedNodes } of changes) {
        for (const node of [...removedNodes, ...addedNodes]) {
          if (node instanceof Element) gone.push(`${(target as Element).className}: ${where(node)}`);
        }
      }
    });
    watcher.observe(document.querySelector("main")!, { subtree: true, childList: true });
    Object.assign(window, { gone });
  }, LATE_MS);
  await edit("276");
  expect(await page.evaluate(() => (window as unknown as { gone: string[] }).gone)).toEqual([]);
});
