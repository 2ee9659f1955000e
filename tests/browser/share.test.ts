import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { shareFragment } from "../../explorer/share/shareLink.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults } from "./looks.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { openExample, openNotebook } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test("a link made on one machine opens as a copy on another, and says the same", async () => {
  const { page, complaints } = await openNotebook(browser, { ...exampleNotebook("example"), members: 100 });
  await allWorkedOut(page);
  await page.getByRole("button", { name: "Share link" }).click();
  const box = page.getByRole("textbox", { name: "Link" });
  await box.waitFor();
  expect(await axeFaults(page, "dialog.share")).toEqual([]);
  const link = await box.inputValue();
  expect(link.length).toBeLessThan(9000);
  const answer = plain(await page.locator("h1").textContent());
  expect(complaints).toEqual([]);

  const other = await (await browser.newContext()).newPage();
  const asked: string[] = [];
  other.on("request", (request) => asked.push(request.url()));
  await other.goto(link);
  await other.getByRole("button", { name: "Open a copy" }).waitFor();
  expect(plain(await other.locator("h1").textContent())).toBe("Autumn weekend in the walnut grove");
  expect(await axeFaults(other)).toEqual([]);
  // Nothing is worked out before somebody wants it, and no server sees the notebook.
  expect(asked.some((url) => url.includes("deskWorker"))).toBe(false);
  expect(asked.some((url) => url.includes("share="))).toBe(false);
  await other.getByRole("button", { name: "Open a copy" }).click();
  await other.locator("svg.strata").waitFor();
  await allWorkedOut(other);
  expect(plain(await other.locator("h1").textContent())).toBe(answer);
  expect(other.url()).toMatch(/\?notebook=autumn-weekend-in-the-walnut-gro/);
  await other.context().close();
});

test("a notebook that asks for much work opens without starting on it", async () => {
  const made = await shareFragment({ ...exampleNotebook("example"), members: 10_000 });
  if (!made.ok) throw new Error(made.sentence);
  const page = await (await browser.newContext()).newPage();
  await page.goto(`${inject("explorerUrl")}${made.fragment}`);
  expect(plain(await page.locator(".wrong").first().textContent())).toContain("It asks for much work");
  await page.getByRole("button", { name: "Open a copy" }).click();
  await page.getByRole("button", { name: "Work it out" }).waitFor();
  // Nothing is asked of workers any more: what starts by itself would have been fetched by now.
  await page.waitForLoadState("networkidle");
  expect(await page.locator(".page:not(.working)").count()).toBe(1);
  expect(await page.locator("h1").textContent()).toContain("Working it out");
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.locator(".page.working").waitFor();
  await page.context().close();
});

test.each([
  ["#share=1.AAAA", /damaged or was cut/],
  [`#share=1.${"A".repeat(40_000)}`, /at most 30 kB/],
  ["#share=7.AAAA", /newer duskline/],
])("a bad link is refused in words: %s", async (fragment, why) => {
  const page = await (await browser.newContext()).newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(`${inject("explorerUrl")}${fragment}`);
  await page.getByText("This notebook is not opened.").waitFor();
  expect(plain(await page.locator("main").textContent())).toMatch(why);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a link put into the address of an open page is followed", async () => {
  const { page } = await openExample(browser, ["run"]);
  const made = await shareFragment({ ...exampleNotebook("example"), title: "From a friend" });
  if (!made.ok) throw new Error(made.sentence);
  await page.goto(`${inject("explorerUrl")}${made.fragment}`);
  await page.getByRole("heading", { name: "From a friend" }).waitFor();
});

test("what does not fit into a link says so and offers the file", async () => {
  const { page } = await openExample(browser, ["answer"]);
  const text = Array.from({ length: 9000 }, (_, i) => ((i * 2654435761) % 4294967296).toString(36)).join(" ");
  await page.locator("#answer").getByRole("button", { name: "Edit" }).click();
  await page.locator("#answer textarea").fill(text.slice(0, 49_000));
  await page.getByRole("button", { name: "Share link" }).click();
  await page.getByText("This notebook is too large for a link").waitFor();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save as a file" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.json$/);
});
