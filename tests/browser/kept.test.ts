import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { withEntry } from "../../engine/notebook/notebookEdits.ts";
import { putIntoStore } from "./keptStore.ts";
import { keptText } from "./keptText.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { plain, savedBytes, settled } from "./openExplorer.ts";
import { openShelf, smallNotebook } from "./openShelf.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const example = smallNotebook;
/** Puts a notebook onto the shelf, past every check, and opens it. */
async function opened(page: Page, notebook: { id: string; title: string }): Promise<void> {
  await putIntoStore(page, notebook.id, notebook.title, notebook);
  await page.goto(`${inject("explorerUrl")}?notebook=${notebook.id}`);
  await settled(page);
}
const keptNow = (page: Page) => page.getByText("All kept in this browser.").waitFor();
async function savedBy(page: Page, name: string | RegExp): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name }).first().click(),
  ]);
  return (await savedBytes(download)).toString("utf8");
}

test("a note that is too long is said beside it, stays in its box, and is kept once it is shorter", async () => {
  const { page, complaints } = await openShelf(browser);
  await opened(page, example);
  const note = page.locator("#note");
  await note.getByRole("button", { name: "Edit" }).click();
  const box = note.locator("textarea");
  const before = await box.inputValue();
  await box.fill("x".repeat(50_001));
  await note.getByRole("alert").waitFor();
  expect(plain(await note.getByRole("alert").textContent())).toBe(
    "A note holds 50 000 characters at most, and this one has 50 001: shorten it, or go on in a second note. Until then it is kept as it was.",
  );
  expect(await box.getAttribute("aria-invalid")).toBe("true");
  await note.getByRole("button", { name: "Done" }).click();
  await note.getByRole("button", { name: "Edit" }).click();
  expect((await box.inputValue()).length).toBe(50_001);
  await keptNow(page);
  expect(await keptText(page)).toContain(JSON.stringify(before).slice(1, 60));
  await box.fill("x".repeat(50_000));
  await note.getByRole("alert").waitFor({ state: "detached" });
  await expect.poll(() => keptText(page)).toContain("x".repeat(50_000));
  await page.reload();
  await settled(page);
  expect(await page.locator("#note .note-text").textContent()).toContain("x".repeat(50_000));
  expect(complaints).toEqual([]);
});

test("an edit beyond a limit is said at the foot of the window, and nothing else happens", async () => {
  const { page } = await openShelf(browser);
  const scenarios = Array.from({ length: 37 }, (_, k) => ({
    id: `v${k}`,
    name: `V ${k}`,
    basedOn: "roof",
    changes: [],
  }));
  await opened(page, { ...example, scenarios: [...example.scenarios, ...scenarios] } as typeof example);
  const count = await page.locator("main section.entry").count();
  await page.locator("#plan").getByRole("button", { name: "Base another on it" }).click();
  const said = page.locator(".not-made p");
  await said.waitFor();
  expect(plain(await said.textContent())).toMatch(/A notebook holds 40 scenarios at most; delete one first/);
  expect(await page.locator("main section.entry").count()).toBe(count);
  await page.keyboard.press("Tab");
  await said.getByRole("button", { name: "Close" }).click();
  expect(await said.count()).toBe(0);
});

test("a notebook that cannot be read whole opens with the rest, says what is missing, and is never overwritten", async () => {
  const { page, complaints } = await openShelf(browser);
  const long = { id: "long", kind: "note" as const, title: "Long", doc: { text: "y".repeat(60_000) } };
  const damaged = withEntry({ ...example, id: "old", title: "Old" }, long, 0);
  const gauge = { ...damaged, entries: [...damaged.entries, { id: "g", kind: "gauge", title: "Gauge", doc: {} }] };
  await opened(page, gauge);
  const before = await keptText(page);
  const told = page.locator("main > [role=alert]", { hasText: "Not all of this notebook can be read" });
  expect(plain(await told.textContent())).toMatch(
    /It stays on the shelf as it is.*“Long” is too long for one entry and stands here as 2.*“Gauge” is missing: kind/,
  );
  expect((await page.locator("#long .note-text").allTextContents()).length).toBeGreaterThan(0);
  expect(JSON.parse(await savedBy(page, "Save the notebook as it lies there"))).toEqual(gauge);
  expect(await keptText(page)).toBe(before);
  await page.getByLabel("Title of the notebook").fill("Saved from the old one");
  await page.getByLabel("Title of the notebook").press("Enter");
  await page.waitForURL(/notebook=old-read/);
  await keptNow(page);
  const [original, copy, ...others] = JSON.parse(await keptText(page));
  expect([original]).toEqual(JSON.parse(before));
  expect(copy).toMatchObject({ id: "old-read", title: "Saved from the old one" });
  expect(others).toEqual([]);
  await page.reload();
  await settled(page);
  expect(await page.getByLabel("Title of the notebook").inputValue()).toBe("Saved from the old one");
  expect(await told.count()).toBe(0);
  expect(complaints).toEqual([]);
});

test("what cannot be read at all goes out as a file, off the shelf, and back, as it was", async () => {
  const { page, complaints } = await openShelf(browser);
  const newer = { ...example, id: "newer", title: "Newer", version: 99, invented: { later: [true] } };
  await putIntoStore(page, "newer", "Newer", newer);
  await page.reload();
  await page.getByRole("link", { name: "Newer" }).waitFor();
  const before = await keptText(page);
  expect(JSON.parse(await savedBy(page, "Save Newer as a file"))).toEqual(newer);
  await page.getByRole("button", { name: "Duplicate Newer" }).click();
  await page.getByText("newer duskline (version 99").waitFor();
  await page.getByRole("button", { name: "Delete Newer" }).click();
  await page.getByText("is off the shelf").waitFor();
  expect(await keptText(page)).not.toContain('"version":99');
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: "Newer" }).waitFor();
  expect(await keptText(page)).toBe(before);
  await page.getByRole("link", { name: "Newer" }).click();
  await page.getByRole("heading", { name: "This notebook is not opened." }).waitFor();
  expect(JSON.parse(await savedBy(page, "Save it as a file"))).toEqual(newer);
  expect(complaints).toEqual([]);
});

test("taken off the shelf in another tab: the sheet says that it is kept nowhere, and its next change keeps it again", async () => {
  const { page, complaints } = await openShelf(browser);
  await opened(page, example);
  const shelf = await page.context().newPage();
  await shelf.goto(`${inject("explorerUrl")}?shelf`);
  await shelf.getByRole("button", { name: "Delete Small" }).click();
  await page.getByText("taken off the shelf in another tab, and is kept nowhere now").waitFor();
  expect(await page.getByText("All kept in this browser.").count()).toBe(0);
  await shelf.getByRole("button", { name: "Put it back" }).click();
  await keptNow(page);
  await shelf.getByRole("button", { name: "Delete Small" }).click();
  await page.getByText("taken off the shelf in another tab").waitFor();
  await page.getByLabel("Title of the notebook").fill("Still mine");
  await page.getByLabel("Title of the notebook").press("Enter");
  await keptNow(page);
  await shelf.getByRole("link", { name: "Still mine" }).waitFor();
  expect(complaints).toEqual([]);
});

/** From here on the browser has no room for what would be written, or has it again. */
const setFull = (page: Page, isFull: boolean) =>
  page.evaluate((full) => {
    const shelf = IDBObjectStore.prototype as IDBObjectStore & { putInRoom?: IDBObjectStore["put"] };
    shelf.putInRoom ??= shelf.put;
    shelf.put = full
      ? () => {
          throw new DOMException("full", "QuotaExceededError");
        }
      : shelf.putInRoom;
  }, isFull);

test("on a full disk the shelf says that nothing was duplicated, added or put back, and what was taken off stays at hand", async () => {
  const { page, complaints } = await openShelf(browser);
  await putIntoStore(page, example.id, example.title, example);
  await page.reload();
  await page.getByRole("link", { name: "Small" }).waitFor();
  const before = await keptText(page);
  const said = page.getByText("There is no room left for it in this browser");
  await setFull(page, true);
  for (const name of ["Duplicate Small", "Put the example here"]) {
    await page.getByRole("button", { name }).click();
    await said.waitFor();
    expect(await page.locator(".shelf li").count()).toBe(1);
    await page.getByRole("button", { name: "Save Small as a file" }).click();
    await said.waitFor({ state: "detached" });
  }
  await page.getByRole("button", { name: "Delete Small" }).click();
  await page.getByText("“Small” is off the shelf.").waitFor();
  await page.getByRole("button", { name: "Put it back" }).click();
  await said.waitFor();
  expect(JSON.parse(await savedBy(page, "Save it as a file"))).toEqual(example);
  await setFull(page, false);
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: "Small" }).waitFor();
  expect(await said.count()).toBe(0);
  expect(await keptText(page)).toBe(before);
  expect(complaints).toEqual([]);
});

test("the browser asks before a page is left whose last change is not kept, and at no other time", async () => {
  const { page } = await openShelf(browser);
  await opened(page, example);
  await keptNow(page);
  const asked: string[] = [];
  page.on("dialog", (dialog) => {
    asked.push(dialog.type());
    void dialog.dismiss();
  });
  const title = page.getByLabel("Title of the notebook");
  const rename = async (to: string) => {
    await title.fill(to);
    await title.press("Enter");
  };
  const isAsked = () =>
    page.evaluate(() => {
      const leaving = new Event("beforeunload", { cancelable: true });
      return !dispatchEvent(leaving);
    });
  await rename("Kept");
  await keptNow(page);
  expect(await isAsked()).toBe(false);
  // While a save is under way: its transaction is kept open.
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    const slow = Object.assign(window, { isHeld: true });
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      const goOn = () => {
        if (slow.isHeld) this.count().onsuccess = goOn;
      };
      goOn();
      return put.apply(this, given);
    };
  });
  await rename("On its way");
  await expect.poll(isAsked).toBe(true);
  expect(await page.getByText("All kept in this browser.").count()).toBe(0);
  await page.evaluate(() => Object.assign(window, { isHeld: false }));
  await keptNow(page);
  expect(await isAsked()).toBe(false);
  await setFull(page, true);
  await rename("Not kept");
  await page.getByText("There is no room left for it").waitFor();
  expect(await isAsked()).toBe(true);
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => asked).toEqual(["beforeunload"]);
  expect(await title.inputValue()).toBe("Not kept");
  // A file is as good as the shelf.
  expect(JSON.parse(await savedBy(page, "Save file")).title).toBe("Not kept");
  expect(await isAsked()).toBe(false);
  await rename("Changed since");
  expect(await isAsked()).toBe(true);
  await setFull(page, false);
  await rename("Kept again");
  await keptNow(page);
  expect(await isAsked()).toBe(false);
});
