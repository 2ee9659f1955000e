import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { oddsReport, runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { EXAMPLE } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { exampleWith, openExample, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const box = (page: Page) => page.getByRole("textbox", { name: "Ampere-hours of one block" });
const headline = async (page: Page) => plain(await page.locator("h1").textContent());

async function held(blockAh: number): Promise<string> {
  const read = readScenario({ ...EXAMPLE, bank: { ...EXAMPLE.bank, blockAh } });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return String(
    Math.round(100 * oddsReport(ready.ensemble, runMembers(ready.ensemble, 0, exampleWith().members)).holds.share),
  );
}

test("typing goes on while the workers work, and of many edits the last one is what the page ends with", async () => {
  const { page, complaints } = await openExample(browser, ["forecast", "plan"]);
  for (let ah = 300; ah < 330; ah += 3) await box(page).fill(String(ah));
  await box(page).fill("");
  await page.keyboard.type("425", { delay: 20 }); // as somebody types, so that work starts between two digits
  expect(await box(page).inputValue()).toBe("425");
  await allWorkedOut(page);
  expect(await headline(page)).toContain(`Roof alone: the bank holds to Sun 16:00 in ${await held(425)} of 100`);
  expect(complaints).toEqual([]);
});

test("four scenarios lie over one another, told apart by their lines and names", async () => {
  const notebook = exampleWith("forecast");
  const small = {
    id: "small",
    name: "Roof, half the bank",
    basedOn: "roof",
    changes: [{ at: "bank.blockAh", to: 140 }],
  };
  const { page } = await openNotebook(browser, { ...notebook, scenarios: [...notebook.scenarios, small] });
  const forecast = page.locator("#forecast");
  await forecast.getByLabel("Third scenario").selectOption({ label: "Roof, two blocks" });
  await forecast.getByLabel("Fourth scenario").selectOption({ label: "Roof, half the bank" });
  await allWorkedOut(page);
  const looks = await forecast.locator("path.median").evaluateAll((paths) =>
    paths.map((path) => {
      const { stroke, strokeDasharray } = getComputedStyle(path);
      return `${stroke} ${strokeDasharray}`;
    }),
  );
  expect(new Set(looks).size).toBe(4);
  // Bands are for the first two: those of four would hide one another.
  expect(await forecast.locator("path.band-close").count()).toBe(2);
  expect(plain(await forecast.locator(".verdict").textContent())).toMatch(
    /^Roof and meadow: .* skies; Roof alone, in .*; Roof, two blocks, in .*; Roof, half the bank, in \d+\.$/,
  );
  await forecast.getByLabel("Fourth scenario").selectOption("");
  await forecast.getByLabel("Third scenario").selectOption("");
  await allWorkedOut(page);
  expect(await forecast.locator("path.median").count()).toBe(2);
  expect(await forecast.locator("path.band-close").count()).toBe(2);
});

test("work is stopped and taken up again; what is known so far stays", async () => {
  const { page } = await openExample(browser, ["forecast"]);
  await allWorkedOut(page);
  const before = await headline(page);
  await page.getByLabel("Skies drawn").selectOption("3000");
  await page.getByRole("button", { name: "Stop" }).click();
  await page.getByRole("button", { name: "Work it out" }).waitFor();
  expect(await page.locator("h1").textContent()).toBeTruthy();
  await page.getByRole("button", { name: "Work it out" }).click();
  await allWorkedOut(page);
  expect(plain(await page.locator(".answer-block .more").textContent())).toContain("3000 skies");
  expect(before).toContain("of 100 skies");
});
