import { readFileSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { keptText } from "./keptText.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, openPage, plain, savedBytes, settled } from "./openExplorer.ts";
import { openExample } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const url = () => inject("explorerUrl");

test("six questions, answered by keyboard, end in a verdict; it prints without its controls", async () => {
  const { page, complaints } = await openPage(browser);
  await page.goto(`${url()}?new`);
  const map = page.getByRole("application", { name: /^Map/ });
  await map.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press("ArrowUp");
  await page.keyboard.press("+");
  await page.keyboard.press("ArrowLeft");
  await page.getByText(/^53° N, 15° E/).waitFor();
  await page.getByRole("button", { name: /^Work it out/ }).focus();
  await page.keyboard.press("Enter");
  await page.waitForURL(/notebook=/);
  await settled(page);
  await allWorkedOut(page);
  expect(plain(await page.locator("h1").textContent())).toMatch(
    /the bank holds to \w{3} 14:00 in ((more|fewer) than )?\d+ of 100 skies/, // a weekend near today: in December hardly ever
  );
  await page.emulateMedia({ media: "print" });
  expect(await page.locator(".top .acts").isVisible()).toBe(false);
  expect(await page.locator("h1").isVisible()).toBe(true);
  expect(complaints).toEqual([]);
});

test("where nothing can be kept, the six questions still end in a verdict, and the file is offered", async () => {
  const context = await browser.newContext();
  await context.addInitScript(() => {
    const open = () => {
      throw new Error("forbidden");
    };
    Object.defineProperty(window, "indexedDB", { value: { open } });
  });
  const page = await context.newPage();
  await page.goto(`${url()}?new`);
  await page.getByRole("button", { name: /^Work it out/ }).click();
  await settled(page);
  expect(await page.getByLabel("Title of the notebook").inputValue()).toBe("Our place");
  expect(plain(await page.locator(".sheet-state").textContent())).toMatch(/keeps nothing here.*as a file/);
  await context.close();
});

test("a tab that is killed in the middle of typing has lost nothing that stood on the page", async () => {
  const { page } = await openExample(browser, ["plan", "run"]);
  await page.getByRole("textbox", { name: "Ampere-hours of one block" }).first().fill("135");
  await expect.poll(() => keptText(page)).toContain('"blockAh":135'); // milliseconds later
  // No farewell: the process that shows the page is gone at once, and never answers the one who asked for it.
  const devtools = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  void devtools.send("Page.crash").catch(() => {});
  await crashed;
  const again = await page.context().newPage();
  await again.goto(page.url());
  await settled(again);
  expect(await again.getByRole("textbox", { name: "Ampere-hours of one block" }).first().inputValue()).toBe("135");
});

test("lengths are shown and typed in feet where somebody prefers them, and stay metres in the file", async () => {
  const { page } = await openExample(browser, ["plan", "run"]);
  await page.getByLabel("Shown in").selectOption("imperial");
  await page.locator("#plan").getByRole("button", { name: "All fields" }).click();
  await page
    .locator("#plan")
    .getByRole("button", { name: /^Shade/ })
    .click();
  await page
    .locator("#plan .scenario-form")
    .getByText(/ft high/)
    .first()
    .waitFor();
  await page.reload();
  expect(await page.getByLabel("Shown in").inputValue()).toBe("imperial");
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save file" }).first().click();
  const saved = JSON.parse((await savedBytes(await downloading)).toString("utf8")) as {
    scenarios: { document: unknown }[];
  };
  const written = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8")) as { obstacles: unknown };
  expect(saved.scenarios[0]!.document).toMatchObject({ obstacles: written.obstacles });
});

test("a scenario that is used stays and says why; one that nothing needs is deleted, and undo brings it back", async () => {
  const { page } = await openExample(browser, ["forecast", "plan", "run"]);
  await page.locator("#plan").getByRole("button", { name: "Delete scenario" }).click();
  await page.locator("#plan").getByText("It stays: roof and meadow is based on it.", { exact: false }).waitFor();
  await page.locator("#plan").getByRole("button", { name: "Base another on it" }).click();
  await page.locator("#scenario").getByRole("button", { name: "Delete scenario" }).click();
  await page.locator("#scenario").waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Undo" }).click();
  await page.locator("#scenario").waitFor();
});

test("a weather file dropped on the sheet becomes the weather of the plan, and goes with the notebook", async () => {
  const { page, complaints } = await openExample(browser, ["forecast", "plan", "run"]);
  const lines = ["# latitude: 47", "# longitude: 15.5", "# utcOffset: 1", "time,ghi,temp_c"];
  for (let hour = 0; hour < 90 * 24; hour++) {
    const clock = new Date(Date.UTC(2026, 8, 1) + hour * 3_600_000).toISOString().slice(0, 16);
    lines.push(`${clock},${Math.max(0, Math.round(400 * Math.sin(((hour % 24) - 6) * (Math.PI / 12))))},12`);
  }
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "our meadow.csv", { type: "text/csv" }));
    return transfer;
  }, lines.join("\n"));
  await page.dispatchEvent("body", "dragover", { dataTransfer: data });
  await page.getByText("Let go to take in").waitFor();
  await page.dispatchEvent("body", "drop", { dataTransfer: data });
  await page.getByText(/our meadow\.csv is kept with the notebook: hour by hour from 2026-09-01/).waitFor();
  await page.getByText(/Roof and meadow has its weather from it now/).waitFor();
  await settled(page);
  await page.getByText("All kept in this browser.").waitFor();
  await page.reload();
  await settled(page);
  expect(await page.locator(".entry .wrong").count()).toBe(0);
  expect(complaints).toEqual([]);
});
