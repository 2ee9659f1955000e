import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { explain } from "../../engine/run/explain.ts";
import { exampleRun } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults } from "./looks.ts";
import { allWorkedOut, overhangPx, plain } from "./openExplorer.ts";
import { exampleWith, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const panel = (page: Page) => page.getByRole("complementary", { name: "Why this number?" });
const open = (viewport = { width: 1440, height: 900 }) =>
  openNotebook(browser, exampleWith("answer", "forecast", "run"), { viewport });

test("Enter on a read instant lays it open with the engine's own numbers, by a link too; Escape leads back", async () => {
  const { page, complaints } = await open();
  const reader = page.locator("#run .reader");
  await reader.focus();
  await page.keyboard.press("Home");
  for (let k = 0; k < 12; k++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  const charge = panel(page).locator("dl > div", { hasText: "charge before" }).first().locator("strong");
  await charge.waitFor();
  const link = (await panel(page).getByRole("link", { name: "Link to this" }).getAttribute("href"))!;
  const ms = Date.parse(/run\.roof\.([\d:TZ-]+)/.exec(decodeURIComponent(link))![1]!);
  const before = explain(await exampleRun(), ms)
    .flatMap(({ numbers }) => numbers)
    .find(({ name }) => name === "charge before")!;
  expect(plain(await charge.textContent())).toBe(`${Number(before.value.toPrecision(5))} Ah`);
  expect(await axeFaults(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await panel(page).waitFor({ state: "detached" });
  expect(await reader.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.goto(new URL(link, page.url()).href);
  await charge.waitFor();
  expect(plain(await charge.textContent())).toBe(`${Number(before.value.toPrecision(5))} Ah`);
  expect(complaints).toEqual([]);
});

test("a click on a forecast asks of its first scenario; another can be chosen; a drag asks nothing", async () => {
  const { page } = await open();
  await allWorkedOut(page);
  const box = (await page.locator("#forecast .reader").boundingBox())!;
  await page.mouse.move(box.x + 200, box.y + 60);
  await page.mouse.down();
  await page.mouse.move(box.x + 260, box.y + 60);
  await page.mouse.up();
  expect(await panel(page).count()).toBe(0);
  await page.mouse.click(box.x + 300, box.y + 60);
  const choice = panel(page).getByRole("combobox", { name: "Scenario that is explained" });
  await panel(page).locator("h3", { hasText: "Folding panels in the meadow" }).waitFor();
  await choice.selectOption({ label: "Roof alone" });
  await panel(page).locator("h3", { hasText: "Folding panels in the meadow" }).waitFor({ state: "detached" });
  expect(await panel(page).locator("h3", { hasText: "Van roof" }).count()).toBe(1);
});

test.each([
  [1440, 900],
  [1024, 768],
  [360, 740],
])("a quoted figure says whose it is, out of how many skies and where it is shown, at %d px", async (width, height) => {
  const { page } = await open({ width, height });
  await allWorkedOut(page);
  const figure = page.locator("#answer .live", { hasText: "of 100" }).first();
  await figure.focus();
  await page.keyboard.press("Enter");
  await panel(page).waitFor();
  const says = plain(await panel(page).textContent());
  expect(says).toContain(plain(await figure.textContent()));
  expect(says).toContain("skies of 100 in which the bank holds");
  expect(says).toContain("Roof alone");
  expect(says).toContain("100 skies and operators, seed 4127");
  expect(says).toContain("B, The bank under a thousand skies");
  expect(await overhangPx(page)).toBeLessThanOrEqual(0);
  expect(await panel(page).evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
  await panel(page).getByRole("button", { name: "Close" }).click();
  await panel(page).waitFor({ state: "detached" });
});
