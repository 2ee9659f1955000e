import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { packingSentence, setWords } from "../../engine/answers/packing/packingWords.ts";
import { poolOr } from "../../engine/library/poolOr.ts";
import type { Entry } from "../../engine/notebook/notebook.ts";
import { readOwnedCsv } from "../../engine/packing/ownedCsv.ts";
import type { OwnedThing } from "../../engine/packing/ownedThing.ts";
import { packingPlan } from "../../engine/packing/packingPlan.ts";
import { makePackingMemory, runPacking } from "../../engine/packing/runPacking.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
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

const OWNED: OwnedThing[] = [
  { id: "b280", kind: "battery", name: "Block, 280 Ah", count: 1, chemistry: "lfp", blockAh: 280, massKg: 23, setupMinutes: 0, who: "club" },
  { id: "b100", kind: "battery", name: "Block, 100 Ah", count: 1, chemistry: "lfp", blockAh: 100, massKg: 11, setupMinutes: 3, who: "Ilse" },
  { id: "fold", kind: "panel", name: "Folding panel, 120 W", count: 2, ratedW: 120, as: "meadow", massKg: 7, setupMinutes: 12 },
  { id: "reel", kind: "lead", name: "Lead on a reel", count: 1, lengthM: 25, awg: "10", massKg: 3, setupMinutes: 4, who: "Mara" },
  { id: "gen", kind: "generator", name: "Generator and can", count: 1, chargerA: 20, fuelL: 5, get: "borrow", cost: 30, setupMinutes: 15 },
]; // biome-ignore format: a list of things
const LIMITS = { mostMassKg: 60, mostMinutes: 45, mostMoney: 50 };
const DOC = { scenario: "roof", targetIn100: 70, most: "mass", lent: ["meadow"], owned: OWNED, ...LIMITS };
const entry = (doc: object = DOC) => ({ id: "pack", kind: "packing", title: "What to pack", doc }) as Entry;
const notebook = notebookWith([entry()]);

function documentOf(id: string): ScenarioInput {
  const scenario = notebook.scenarios.find((each) => each.id === id)!;
  if ("document" in scenario) return scenario.document as ScenarioInput;
  const changed = applyChanges(documentOf(scenario.basedOn), scenario.changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  return changed.document as unknown as ScenarioInput;
}

/** The engine's own answer for what the page shows. */
async function reportOf(things: readonly OwnedThing[] = OWNED) {
  const ready = packingPlan(documentOf("roof"), [documentOf("meadow")], things);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const limits = { mass: 60, minutes: 45, money: 50 };
  const { seed, members } = notebook;
  const surroundings = { climate: await loadClimateTables() };
  const works = { pool: poolOr(undefined), surroundings, seed, members, memory: makePackingMemory() };
  return runPacking(ready.plan, { targetShare: 0.7, order: "mass", limits }, works);
}

const pack = (page: Page) => page.locator("#pack");
const said = (page: Page) => pack(page).locator(".verdict").textContent();
const list = (page: Page) => page.getByRole("region", { name: "What the club has" });
const frontier = (page: Page) => page.getByRole("region", { name: "Sets that no other beats" });
const reading = async (page: Page) => plain(await pack(page).locator(".packing-reading").textContent());

test("the entry says what the engine says: the proposal, what the club has, the frontier, every set in the picture", async () => {
  const { page, complaints } = await openNotebook(browser, notebook);
  await allWorkedOut(page);
  const report = await reportOf();
  const sentence = packingSentence({ report, things: OWNED }).map(({ text }) => text);
  expect(plain(await said(page))).toBe(plain(sentence.join("")));
  const rows = (await list(page).locator("tbody tr").allTextContents()).map(plain);
  expect(rows).toHaveLength(OWNED.length + 1);
  expect(rows.at(-1)).toContain("fitted");
  expect(rows.find((row) => row.startsWith("Folding panel"))).toContain("not stated");
  // What the generator weighs is not stated: what such things usually weigh stands there.
  expect(rows.find((row) => row.startsWith("Generator"))).toContain("usual");
  const told = (await frontier(page).locator("tbody tr").allTextContents()).map(plain);
  expect(told).toHaveLength(report.frontier.length);
  for (const [k, set] of report.frontier.entries()) expect(told[k]).toContain(plain(setWords(set, OWNED)));
  const picture = page.getByRole("region", { name: "Every set over weight and minutes" });
  expect(await picture.locator(".pack-fails, .pack-reaches").count()).toBe(report.dots.length);
  expect(await picture.locator(".pack-limit").count()).toBe(2);
  expect(complaints).toEqual([]);
});

test("from the keyboard alone: another set is ticked, read out and made a scenario; a limit is set; a thing changed and added", async () => {
  const { page, complaints } = await openNotebook(browser, notebook);
  await allWorkedOut(page);
  const report = await reportOf();
  const box = list(page).getByRole("checkbox", { name: "Take Generator and can" });
  expect(await box.isChecked()).toBe(report.proposed!.take[4]! > 0);
  const before = await reading(page);
  await box.focus();
  await page.keyboard.press("Space");
  expect(await reading(page)).not.toBe(before);
  expect(await reading(page)).toContain("generator and can");
  await pack(page).getByRole("button", { name: "Make this a scenario" }).focus();
  await page.keyboard.press("Enter");
  await pack(page).getByText("is a scenario now, based on").waitFor();
  // Without any battery there is no bank, and the tick goes back.
  const battery = list(page).getByRole("checkbox", { name: "Take Block, 280 Ah" });
  await battery.focus();
  await page.keyboard.press("Space");
  await list(page).getByRole("checkbox", { name: "Take Block, 100 Ah" }).isChecked();
  const target = pack(page).getByLabel("Target");
  await target.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("200");
  await page.keyboard.press("Enter");
  expect(plain(await pack(page).locator("[role=alert]").first().textContent())).toContain(
    "must be a number from 1 to 100",
  );
  await list(page).getByRole("button", { name: "Folding panel, 120 W", exact: true }).focus();
  await page.keyboard.press("Enter");
  const minutes = pack(page).getByLabel("Minutes each");
  await minutes.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("many");
  await page.keyboard.press("Tab");
  await pack(page).getByText("“Minutes each” is “many” but must be a number from 0 to 1440 min").waitFor();
  expect(await minutes.inputValue()).toBe("12");
  await minutes.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("7");
  await page.keyboard.press("Tab");
  await list(page)
    .locator("tbody tr", { hasText: "Folding panel" })
    .locator("td", { hasText: /^7$/ })
    .first()
    .waitFor();
  await pack(page).getByLabel("Add a thing").selectOption("controller");
  await list(page).getByRole("button", { name: "Controller, 20 A", exact: true }).waitFor();
  await allWorkedOut(page);
  expect(complaints).toEqual([]);
});

test("the list goes out as CSV and comes back; a wrong file is told in sentences; every set leaves as CSV", async () => {
  const { page, complaints } = await openNotebook(browser, notebook);
  await allWorkedOut(page);
  const downloading = page.waitForEvent("download");
  await pack(page).getByRole("button", { name: "Save the list as CSV" }).click();
  const text = (await savedBytes(await downloading)).toString("utf8");
  const read = readOwnedCsv(text);
  expect(read.ok && read.things.map(({ id: _, ...thing }) => thing)).toEqual(OWNED.map(({ id: _, ...thing }) => thing));
  const give = (name: string, content: string) =>
    pack(page)
      .locator("input[type=file]")
      .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(content) });
  await give("wrong.csv", "what,name,how many\nkettle,=cmd,many\n");
  await pack(page).getByText('"what" is "kettle", but must be one of battery, panel').waitFor();
  await give("ours.csv", text.replace("Block, 100 Ah", "Block of Ilse"));
  await list(page).getByRole("button", { name: "Block of Ilse", exact: true }).waitFor();
  await allWorkedOut(page);
  const sets = page.waitForEvent("download");
  await pack(page).getByRole("button", { name: "CSV", exact: true }).click();
  expect((await savedBytes(await sets)).toString("utf8").trim().split("\n").length).toBe((await reportOf()).all + 1);
  expect(complaints).toEqual([]);
});

test("the list prints on a page of its own, each line with two boxes, and what stays at home with the reason", async () => {
  const { page, complaints } = await openNotebook(browser, notebook);
  await allWorkedOut(page);
  await page.evaluate(() => {
    Object.assign(window, { print: () => {} });
  });
  await pack(page).getByRole("button", { name: "Print the list" }).click();
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".packing-print");
  await sheet.waitFor();
  expect(await page.locator(".page").isVisible()).toBe(false);
  const lines = sheet.locator("tbody tr:has(.pack-box)");
  expect(await lines.count()).toBeGreaterThan(10);
  expect(await lines.first().locator(".pack-box").count()).toBe(2);
  expect(plain(await sheet.textContent())).toContain("Stays at home");
  expect(plain(await sheet.textContent())).toContain("not needed");
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({ media: "screen" });
  await sheet.waitFor({ state: "detached" });
  expect(await page.locator(".page").isVisible()).toBe(true);
  expect(complaints).toEqual([]);
});

test("the shelf holds the list for another notebook; a new entry begins with what the scenarios hold", async () => {
  const { page, complaints } = await openNotebook(browser, notebookWith([entry({ ...DOC, owned: undefined })]));
  await allWorkedOut(page);
  await pack(page).getByText("This is what the scenarios hold").waitFor();
  await pack(page).getByRole("button", { name: "Put the list on the shelf" }).click();
  await pack(page).getByText("The list is on the shelf").waitFor();
  await pack(page).getByRole("button", { name: "Take it from the shelf" }).click();
  await pack(page).getByText("from the shelf are the list now").waitFor();
  await allWorkedOut(page);
  expect(await list(page).getByRole("button", { name: "Battery, 280 Ah", exact: true }).count()).toBe(1);
  expect(complaints).toEqual([]);
});

test.each([
  [1440, 900],
  [1024, 768],
  [360, 740],
])("at %i px nothing sticks out, nothing is small, and no light is too faint", async (width, height) => {
  const { page, complaints } = await openNotebook(browser, notebook, { viewport: { width, height } });
  await allWorkedOut(page);
  await list(page).getByRole("button", { name: "Folding panel, 120 W", exact: true }).click();
  await pack(page).locator(".packing-form").waitFor();
  expect(await overhangPx(page)).toBe(0);
  expect(await smallTexts(page, "#pack")).toEqual([]);
  expect(await axeFaults(page, "#pack")).toEqual([]);
  expect(complaints).toEqual([]);
});
