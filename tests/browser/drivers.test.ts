import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { driversSentence } from "../../engine/answers/drivers/driversWords.ts";
import { drivers } from "../../engine/drivers/drivers.ts";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { EXAMPLE } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, plain, savedBytes } from "./openExplorer.ts";
import { exampleWith, openExample } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test("drivers says what the engine says: what decides most, each share, and what to switch off first", async () => {
  const { page, complaints } = await openExample(browser, ["drivers"]);
  await allWorkedOut(page);
  const read = readScenario(EXAMPLE);
  if (!read.ok) throw new Error("reads");
  const ready = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, "4127");
  if (!ready.ok) throw new Error("prepares");
  const report = drivers(ready.ensemble, exampleWith().members)!;
  const entry = page.locator("#drivers");
  expect(plain(await entry.locator(".verdict").textContent())).toBe(plain(driversSentence(report)));
  const [shares, ends, shedding] = [0, 1, 2].map((k) => entry.locator("table").nth(k).locator("tbody"));
  expect(await shares!.locator("tr").count()).toBe(report.factors.length);
  for (const { name, margin } of report.factors) {
    const row = plain(await shares!.locator("tr", { hasText: name }).textContent());
    const total = Math.round(100 * margin!.total.value);
    expect(row).toContain(total > 0 ? `${total} % ±` : "about 0");
  }
  for (const { name, low, high } of report.factors) {
    const row = plain(await ends!.locator("tr", { hasText: name }).textContent());
    expect(row).toMatch(/(of plan|of full|Wh|kWh\/m²)/);
    expect(low!.holds.of).toBe(high!.holds.of);
  }
  const rows = await shedding!.locator("tr th").allTextContents();
  expect(rows).toEqual(report.shedding.map(({ name }) => name));
  expect(complaints).toEqual([]);
});

test("another scenario is looked into, and the figures leave as CSV", async () => {
  const { page } = await openExample(browser, ["drivers"]);
  await allWorkedOut(page);
  const entry = page.locator("#drivers");
  const before = await entry.locator(".verdict").textContent();
  await entry.getByLabel("Scenario that is looked into").selectOption("meadow");
  await allWorkedOut(page);
  expect(await entry.locator(".verdict").textContent()).not.toBe(before);
  const downloading = page.waitForEvent("download");
  await entry.getByRole("button", { name: "CSV" }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe("roof-and-meadow-drivers.csv");
  const text = (await savedBytes(download)).toString("utf8");
  expect(text).toContain("The weather,");
  expect(text).toMatch(/^HF run position,/m);
});
