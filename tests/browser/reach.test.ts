import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { partWords, reachSentence, wayWords } from "../../engine/answers/reach/reachWords.ts";
import { poolOr } from "../../engine/library/poolOr.ts";
import type { Entry } from "../../engine/notebook/notebook.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { reachPlan } from "../../engine/reach/reachPlan.ts";
import { makeReachMemory, runReach } from "../../engine/reach/runReach.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, smallTexts } from "./looks.ts";
import { allWorkedOut, overhangPx, plain, savedBytes } from "./openExplorer.ts";
import { notebookWith, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const DOC = { scenario: "roof", targetIn100: 90, most: "money", locked: [], lent: ["meadow"] };
const entry = (doc: object = DOC) => ({ id: "reach", kind: "reach", title: "What would it take?", doc }) as Entry;
const notebook = notebookWith([entry()]);

/** The engine's own answer for what the page shows. */
async function reportOf(locked: readonly string[] = []) {
  const [roof, meadow] = ["roof", "meadow"].map((id) => documentOf(id));
  const ready = reachPlan(roof!, [meadow!]);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const aims = { targetShare: 0.9, order: "money", locked } as const;
  const { seed, members } = notebook;
  const surroundings = { climate: await loadClimateTables() };
  const works = { pool: poolOr(undefined), surroundings, seed, members, memory: makeReachMemory() };
  return runReach(ready.plan, aims, works);
}

function documentOf(id: string): ScenarioInput {
  const scenario = notebook.scenarios.find((each) => each.id === id)!;
  if ("document" in scenario) return scenario.document as ScenarioInput;
  const changed = applyChanges(documentOf(scenario.basedOn), scenario.changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  return changed.document as unknown as ScenarioInput;
}

const nameOf = (id: string) => notebook.scenarios.find((each) => each.id === id)!.name;
const said = (page: Page) => page.locator("#reach .verdict").textContent();

test("the entry says what the engine says: the answer, every lever with its odds, the pairs", async () => {
  const { page, complaints } = await openNotebook(browser, notebook);
  await allWorkedOut(page);
  const report = await reportOf();
  const sentence = reachSentence(report, nameOf("roof"), "second").map(({ text }) => text);
  expect(plain(await said(page))).toBe(plain(sentence.join("")));
  const rows = page.locator("#reach table").first().locator("tr:not(.reach-head)");
  await page
    .locator("#reach")
    .getByRole("button", { name: /more, which bring less/ })
    .click();
  const told = (await rows.allTextContents()).map(plain);
  expect(told).toHaveLength(report.alone.length);
  for (const [k, { name, words, holds }] of report.alone.entries()) {
    expect(told[k]).toContain(name);
    expect(told[k]).toContain(words);
    expect(told[k]).toContain(String(Math.round(100 * holds.share)));
  }
  expect(told.some((row) => row.includes("not stated"))).toBe(true);
  const pairs = page.getByRole("region", { name: "Two together" }).locator("tr:not(.reach-head) th");
  expect((await pairs.allTextContents()).map((text) => plain(text).replaceAll(" ", ""))).toEqual(
    report.pairs.map((way) => plain(wayWords(way)).replaceAll(" ", "")),
  );
  expect(complaints).toEqual([]);
});

test("from the keyboard alone: a lever is locked, a row read out and made a scenario, another target set", async () => {
  const { page, complaints } = await openNotebook(browser, notebook);
  await allWorkedOut(page);
  const report = await reportOf();
  const first = report.alone[0]!;
  const table = page.getByRole("region", { name: "One thing alone" });
  await table.getByRole("button", { name: first.name, exact: true }).focus();
  await page.keyboard.press("Enter");
  expect(plain(await page.locator("#reach .reach-reading").textContent())).toContain(plain(partWords(first)));
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await table.getByRole("button", { name: `Unlock: ${first.name}` }).waitFor();
  await allWorkedOut(page);
  const locked = await reportOf([first.id]);
  const sentence = reachSentence(locked, nameOf("roof"), "second").map(({ text }) => text);
  expect(plain(await said(page))).toBe(plain(sentence.join("")));
  expect(plain(await said(page))).not.toContain(plain(first.words));
  await table.getByRole("button", { name: first.name, exact: true }).focus();
  await page.keyboard.press("Enter");
  await page.locator("#reach").getByRole("button", { name: "Make this a scenario" }).focus();
  await page.keyboard.press("Enter");
  const made = plain(await page.locator("#reach .reach-made").textContent());
  expect(made).toContain(`is a scenario now, based on ${nameOf("roof")}`);
  const target = page.locator("#reach").getByLabel("Target");
  await target.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("200");
  await page.keyboard.press("Enter");
  expect(plain(await page.locator("#reach [role=alert]").textContent())).toContain("must be a number from 1 to 100");
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("5");
  await page.keyboard.press("Enter");
  await page.getByRole("region", { name: "What can stay at home" }).waitFor();
  await allWorkedOut(page);
  expect(plain(await said(page))).toContain("5 of 100 are asked for");
  expect(complaints).toEqual([]);
});

test("every row leaves as CSV", async () => {
  const { page } = await openNotebook(browser, notebook);
  await allWorkedOut(page);
  const downloading = page.waitForEvent("download");
  await page.locator("#reach").getByRole("button", { name: "CSV" }).click();
  const text = (await savedBytes(await downloading)).toString("utf8");
  expect(text).toMatch(/^bank,A bigger bank,/m);
  expect(text).toContain("not stated");
});

test.each([
  [1440, 900],
  [1024, 768],
  [360, 740],
])("at %i px nothing sticks out, nothing is small, and no light is too faint", async (width, height) => {
  const { page, complaints } = await openNotebook(browser, notebook, { viewport: { width, height } });
  await allWorkedOut(page);
  await page.locator("#reach .reach-table").first().waitFor();
  expect(await overhangPx(page)).toBe(0);
  expect(await smallTexts(page, "#reach")).toEqual([]);
  expect(await axeFaults(page, "#reach")).toEqual([]);
  expect(complaints).toEqual([]);
});
