import type { Browser, BrowserContextOptions } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Entry } from "../../engine/notebook/notebook.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults } from "./looks.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { notebookWith, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

type Readings = Extract<Entry, { kind: "readings" }>["doc"]["readings"];
const entryOf = (readings: Readings): Entry => ({
  id: "readings",
  kind: "readings",
  title: "Where do we stand?",
  doc: { scenario: "roof", readings },
});
const READ: Readings = [
  { at: "2026-10-09T20:00", restV: 13.1, by: "Ada" },
  { at: "2026-10-10T08:00", chargeShare: 0.4, by: "Ben" },
];
const PHONE: BrowserContextOptions = { viewport: { width: 360, height: 740 }, hasTouch: true };

/** Opens the entry at a moment of the event, 08:00 on Saturday unless said otherwise. */
async function openAt(readings: Readings, options: BrowserContextOptions = {}, now = "2026-10-10T06:00:00Z") {
  const opened = await openNotebook(browser, notebookWith([entryOf(readings)]), options);
  await opened.page.clock.setFixedTime(new Date(now));
  await opened.page.getByText("All kept in this browser.").waitFor();
  await opened.page.reload();
  await opened.page.locator("#readings form").waitFor();
  return opened;
}

test("on a phone a reading takes three taps, and what it changes stands first; undo takes it back", async () => {
  const { page, complaints } = await openAt([], PHONE);
  const entry = page.locator("#readings");
  expect(plain(await entry.locator(".verdict").textContent())).toContain("Nothing has been read yet");
  await entry.getByRole("button", { name: "4", exact: true }).tap();
  await entry.getByRole("button", { name: "0", exact: true }).tap();
  await entry.getByRole("button", { name: "Save" }).tap();
  await entry.locator("svg.bands").waitFor();
  await allWorkedOut(page);
  expect(plain(await entry.locator(".verdict").textContent())).toMatch(
    /^Sat 10 08:00: 40 %\. Roof alone: from Sat 10 08:00 on the bank holds to Sun 16:00 in .* of 100 skies; before the readings the plan held in /,
  );
  expect(await entry.locator(".reading-mark").count()).toBe(1);
  expect(await entry.locator(".still-helps li").count()).toBeGreaterThan(0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  await page.getByRole("button", { name: "Undo" }).click();
  expect(plain(await entry.locator(".verdict").textContent())).toContain("Nothing has been read yet");
  expect(complaints).toEqual([]);
});

test("where several scenarios are, the entry asks at its head which of them stands", async () => {
  const { page } = await openAt([]);
  const entry = page.locator("#readings");
  const choice = entry.getByRole("combobox", { name: "Which of these is really standing?" });
  expect(await choice.locator("option").count()).toBeGreaterThan(1);
  const above = await choice.evaluate((element) => {
    const verdict = element.closest(".readings")!.querySelector(".verdict")!;
    return (element.compareDocumentPosition(verdict) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
  });
  expect(above).toBe(true);
  const other = await choice.locator("option:not(:checked)").first().textContent();
  await choice.selectOption({ label: other! });
  await expect.poll(async () => plain(await entry.locator(".reading-of").textContent())).toBe(`for ${other}`);
});

test("outside the event it says so and asks; a time outside is refused in a sentence", async () => {
  const { page } = await openAt([], {}, "2026-11-25T11:00:00Z");
  const entry = page.locator("#readings");
  expect(plain(await entry.locator(".reading-says").textContent())).toBe(
    "It is Wed 25 November 2026, 12:00 now, after the event has ended; say when it was read.".replace("12:00", "13:00"),
  );
  await entry.getByRole("textbox", { name: "Charge, %" }).fill("55");
  await entry.getByRole("button", { name: "Save" }).click();
  expect(plain(await entry.locator("[role=alert]").textContent())).toBe("Say when it was read.");
  await entry.getByLabel(/^Read at/).fill("2026-10-20T09:00");
  expect(await entry.getByLabel(/^Read at/).inputValue()).toBe("2026-10-20T09:00");
  await page.keyboard.press("Enter");
  await entry.locator("form").evaluate((form: HTMLFormElement) => form.requestSubmit());
  expect(await entry.locator(".readings-list li").count()).toBe(0);
  await entry.getByLabel(/^Read at/).fill("2026-10-10T09:00");
  await entry.getByRole("button", { name: "Save" }).click();
  await entry.locator(".readings-list li").waitFor();
  expect(plain(await entry.locator(".readings-list li").textContent())).toContain("Sat 10 09:00 55 %");
});

test("a reading is corrected and removed, and a change from now on becomes a scenario", async () => {
  const { page, complaints } = await openAt(READ);
  const entry = page.locator("#readings");
  await entry.locator(".still-helps li").first().waitFor();
  await allWorkedOut(page);
  await entry.getByRole("button", { name: "Correct the reading of Sat 10 08:00" }).click();
  const box = entry.getByRole("textbox", { name: "Charge, %" });
  expect(await box.inputValue()).toBe("40");
  await box.fill("62");
  await box.press("Enter");
  await allWorkedOut(page);
  expect(plain(await entry.locator(".verdict").textContent())).toMatch(/^Sat 10 08:00: 62 %/);
  await entry.getByRole("button", { name: "Remove the reading of Fri 9 20:00" }).click();
  expect(await entry.locator(".readings-list li").count()).toBe(1);
  await page.getByRole("button", { name: "Undo" }).click();
  expect(await entry.locator(".readings-list li").count()).toBe(2);
  await allWorkedOut(page);
  await entry
    .getByRole("button", { name: /^Make it a scenario/ })
    .first()
    .click();
  await page.locator("#scenario").waitFor();
  expect(await page.locator("#scenario .title-box").inputValue()).toMatch(/^Roof alone, /);
  expect(complaints).toEqual([]);
});

test("a reading that nobody foretold is said to contradict the plan, and which way", async () => {
  const { page } = await openAt([{ at: "2026-10-10T08:00", chargeShare: 0.97, errorShare: 0.01 }]);
  const entry = page.locator("#readings");
  await entry.locator(".wrong").first().waitFor();
  expect(plain(await entry.locator(".wrong").first().textContent())).toMatch(
    /No member of the plan explains the reading of .*The plan is wrong: less is drawn, or more comes in, than it says/,
  );
});

test("readings made for other dates are named one by one, beside themselves", async () => {
  const { page } = await openAt([{ at: "2026-08-01T08:00", chargeShare: 0.5 }]);
  const beside = page.locator(".readings-list .wrong");
  await beside.waitFor();
  expect(plain(await beside.textContent())).toContain("before the event starts");
});

test("all three lights pass, and the keyboard reaches everything", async () => {
  const { page } = await openAt(READ, { viewport: { width: 1024, height: 768 } });
  const entry = page.locator("#readings");
  await entry.locator(".still-helps li").first().waitFor();
  await allWorkedOut(page);
  await entry.locator("summary").first().click();
  expect(await axeFaults(page, "#readings")).toEqual([]);
  await entry.locator(".reader").focus();
  await page.keyboard.press("End");
  expect(plain(await entry.locator(".reader").getAttribute("aria-valuetext"))).toContain("after the readings");
});
