import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { readScenario, readVariant } from "../../engine/scenario/readScenario.ts";
import { type Contender, versus } from "../../engine/versus/versus.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { EXAMPLE } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults } from "./looks.ts";
import { allWorkedOut, openExplorer, plain, savedBytes, settled } from "./openExplorer.ts";
import { openExample } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const text = async (page: Page, selector: string) => plain(await page.locator(selector).first().textContent());
const order = (page: Page) => page.locator("main section.entry").evaluateAll((entries) => entries.map(({ id }) => id));

test("the odds on the page, in its notes and in its comparison are the engine's own", async () => {
  const { page } = await openExplorer(browser);
  await allWorkedOut(page);
  const climate = await loadClimateTables();
  const contenders = [readScenario(EXAMPLE), readVariant(EXAMPLE, "meadow")].map((read, k): Contender => {
    if (!read.ok) throw new Error("reads");
    const ready = prepareEnsemble(read.scenario, { climate }, "4127");
    if (!ready.ok) throw new Error("prepares");
    return { name: String(k), ensemble: ready.ensemble, part: runMembers(ready.ensemble, 0, 1000) };
  });
  const report = versus(contenders);
  const inHundred = (share: number) => String(Math.round(100 * share));
  const [roof, meadow] = [report.first.report, report.others[0]!.report];
  const head = await text(page, "h1");
  expect(head).toContain(`Roof alone: the bank holds to Sun 16:00 in ${inHundred(roof.holds.share)} of 100 skies. `);
  expect(head).toMatch(
    / It fails first on Sat 1\d:00–2\d:00, by 1\d.points or more in half the skies: the trees take \w+ tenths of the sun\. /,
  );
  expect(head).toContain(`Roof and meadow: ${inHundred(meadow.holds.share)}.`);
  expect(await text(page, "#forecast .verdict")).toBe(
    `Roof and meadow: the bank holds to Sun 16:00 in ${inHundred(meadow.holds.share)} of 100 skies; Roof alone, in ${inHundred(roof.holds.share)}.`,
  );
  expect(await text(page, "#answer .note-text")).toContain(
    `holds to Sunday in ${inHundred(roof.holds.share)} of 100 skies`,
  );
  const saved = inHundred(report.others[0]!.tally.onlyThis / 1000);
  expect(await text(page, "#versus .verdict")).toContain(
    `in ${saved} of 100 skies it turns a bank that fails into one that holds`,
  );
  expect(await text(page, "#panels .note-text")).toContain(`change the outcome in ${saved} of 100 skies`);
  expect(plain(await page.locator("#versus .decision thead").textContent())).toContain("2 folding panels added");
  expect(await page.locator("#versus .tally .tally-strokes > *").count()).toBe(300);
});

test("editing the base moves the words, the bands and what is based on it; undo brings them back", async () => {
  const { page } = await openExample(browser, ["answer", "forecast", "plan", "run"]);
  await allWorkedOut(page);
  const before = await text(page, "h1");
  const note = await text(page, "#answer .note-text");
  await page.getByRole("textbox", { name: "Ampere-hours of one block" }).fill("120");
  await settled(page);
  await allWorkedOut(page);
  expect(await text(page, "h1")).not.toBe(before);
  expect(await text(page, "#answer .note-text")).not.toBe(note);
  await page.keyboard.press("Control+z");
  await allWorkedOut(page);
  expect(await text(page, "h1")).toBe(before);
});

test("entries are added between two, moved by keyboard and by dragging, folded, copied, removed and brought back", async () => {
  const { page, complaints } = await openExample(browser, ["answer", "forecast", "plan", "days"]);
  const first = await order(page);
  await page.getByLabel("Add an entry between A and B").click();
  await page.locator(".add-entry[open]").getByRole("button", { name: /^Note/ }).click();
  expect((await order(page)).slice(0, 3)).toEqual(["answer", "note", "forecast"]);
  await page.locator("#note textarea").fill("We draw **{wanted, roof}** <img src=x onerror=alert(1)> {holds, nobody}");
  await page.locator("#note .live-fresh").first().waitFor();
  expect(await text(page, "#note .note-text")).toMatch(/We draw 4\.\d\d kWh/);
  expect(await page.locator("#note .note-text img").count()).toBe(0);
  expect(await text(page, "#note .wrong")).toContain("{holds, nobody}");
  await page.locator("#letter-note").focus();
  await page.keyboard.press("Alt+ArrowUp");
  expect((await order(page)).slice(0, 2)).toEqual(["note", "answer"]);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe("letter-note");
  await page.locator("#letter-note").dragTo(page.locator("#letter-answer"));
  expect((await order(page)).slice(0, 2)).toEqual(["answer", "note"]);
  await page.locator("#note").getByRole("button", { name: "Copy" }).click();
  expect(await order(page)).toContain("note-2");
  await page.locator("#days").getByRole("button", { name: "Fold" }).click();
  expect(await page.locator("#days table").count()).toBe(0);
  await page.locator("#forecast").getByRole("button", { name: "Remove" }).click();
  expect(await order(page)).not.toContain("forecast");
  await page.getByRole("button", { name: "Undo" }).click();
  expect(await order(page)).toContain("forecast");
  for (let i = 0; i < 20 && !(await page.getByRole("button", { name: "Undo" }).isDisabled()); i++) {
    await page.getByRole("button", { name: "Undo" }).click();
  }
  expect(await order(page)).toEqual(first);
  expect(complaints).toEqual([]);
});

test("a scenario is based on another, changed in all its fields, and said in words", async () => {
  const { page } = await openExample(browser, ["plan", "run"]);
  await page.locator("#plan").getByRole("button", { name: "Base another on it" }).click();
  const made = page.locator("#scenario");
  await made.getByLabel("Name").fill("Roof with more panels");
  await made.getByLabel("Name").press("Enter");
  await made.getByRole("textbox", { name: "Panels, Van roof" }).fill("4");
  await made.getByText("was 2", { exact: true }).waitFor();
  expect(plain(await made.locator(".based-on").textContent())).toMatch(
    /Based on Roof alone, with these changes:.*4 panels, was 2/,
  );
  await made.getByRole("button", { name: "All fields" }).click();
  await page.getByLabel("Scenario that is run").selectOption({ label: "Roof with more panels" });
  await settled(page);
  expect(await text(page, "#run .verdict")).toContain("Roof with more panels: ");
});

test("what was changed is there again after a reload, on the shelf, and can be copied, deleted and put back", async () => {
  const { page, complaints } = await openExample(browser, ["run"]);
  await page.getByLabel("Title of the notebook").fill("Our autumn weekend");
  await page.getByLabel("Title of the notebook").press("Enter");
  await page.getByText("All kept in this browser.").waitFor();
  await page.reload();
  await settled(page);
  expect(await page.getByLabel("Title of the notebook").inputValue()).toBe("Our autumn weekend");
  await page.getByRole("link", { name: "Shelf" }).click();
  await page.getByRole("link", { name: "Our autumn weekend" }).waitFor();
  await page.getByRole("button", { name: "Duplicate Our autumn weekend" }).click();
  await page.getByRole("link", { name: "Our autumn weekend, copy" }).waitFor();
  await page.getByRole("button", { name: "Delete Our autumn weekend, copy" }).click();
  await page.getByText("is off the shelf").waitFor();
  expect(await page.locator(".shelf li").count()).toBe(1);
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: "Our autumn weekend, copy" }).waitFor();
  expect(await axeFaults(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

test("two tabs on one notebook notice one another", async () => {
  const { page } = await openExample(browser, ["run"]);
  const other = await page.context().newPage();
  await other.goto(page.url());
  await settled(other);
  await page.getByLabel("Title of the notebook").fill("Told to the other tab");
  await page.getByLabel("Title of the notebook").press("Enter");
  await other.getByText("Another tab has changed this notebook").waitFor();
  expect(await other.getByLabel("Title of the notebook").inputValue()).toBe("Told to the other tab");
});

test("files: a notebook goes out and comes in; hostile, newer and oversized ones are refused and said", async () => {
  const { page } = await openExplorer(browser);
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save file" }).first().click();
  const saved = (await savedBytes(await downloading)).toString("utf8");
  expect(JSON.parse(saved)).toEqual(JSON.parse(JSON.stringify(exampleNotebook("example"))));
  await page.getByRole("link", { name: "Shelf" }).click();
  const give = (content: string) =>
    page
      .locator("input[type=file]")
      .setInputFiles({ name: "given.json", mimeType: "application/json", buffer: Buffer.from(content) });
  const refused = async (content: string, says: RegExp) => {
    await give(content);
    await expect.poll(async () => plain(await page.locator("[role=status]").textContent())).toMatch(says);
  };
  await refused(saved.replace('"version": 1', '"version": 7'), /newer duskline/);
  await refused(saved.replace('"seed"', '"__proto__": {"a": 1}, "seed"'), /__proto__/);
  await refused("x".repeat(7_000_000), /at most 6 MB/);
  await refused("nonsense", /is no notebook and no scenario/);
  await refused("{ nonsense", /not JSON/);
  await give(saved.replace("Autumn weekend in the walnut grove", "From a file"));
  await page.waitForURL(/notebook=from-a-file/);
  await settled(page);
  expect(await page.getByLabel("Title of the notebook").inputValue()).toBe("From a file");
});

test("a browser that keeps nothing still works, says so and offers a file", async () => {
  const context = await browser.newContext();
  await context.addInitScript(() => {
    Object.defineProperty(window, "indexedDB", {
      value: {
        open: () => {
          throw new Error("forbidden");
        },
      },
    });
  });
  const page = await context.newPage();
  await page.goto(inject("explorerUrl"));
  await settled(page);
  expect(await text(page, ".sheet-state")).toMatch(/keeps nothing here.*save the notebook as a file/);
});

test("on paper there are no controls and the ink is black", async () => {
  const { page } = await openExample(browser, ["forecast", "run"]);
  await page.emulateMedia({ media: "print" });
  expect(await page.getByRole("button", { name: "Undo" }).isVisible()).toBe(false);
  expect(await page.locator("#forecast .acts").isVisible()).toBe(false);
  expect(await page.locator("h1").evaluate((h1) => getComputedStyle(h1).color)).toBe("rgb(0, 0, 0)");
  expect(await page.locator("#forecast .title-print").isVisible()).toBe(true);
});

test("what is being typed stays while results come in", async () => {
  const { page } = await openExample(browser, ["answer", "forecast", "plan"]);
  const boxes = [
    page.getByLabel("Title of entry B"),
    page.locator("#plan").getByLabel("Name"),
    page.getByLabel("Title of the notebook"),
  ];
  for (const [i, box] of boxes.entries()) {
    await page
      .getByRole("textbox", { name: "Ampere-hours of one block" })
      .first()
      .fill(String(150 + i));
    await box.fill("Half a na");
    await allWorkedOut(page);
    expect(await box.inputValue()).toBe("Half a na");
  }
});
