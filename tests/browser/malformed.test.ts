import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import type { Entry, Notebook } from "../../engine/notebook/notebook.ts";
import { shareFragment } from "../../explorer/share/shareLink.ts";
import { MISSHAPEN, SENSELESS, spoiled } from "../explorer/notebook/malformed.ts";
import { putIntoStore } from "./keptStore.ts";
import { keptText } from "./keptText.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { plain, settled } from "./openExplorer.ts";
import { openShelf, smallNotebook } from "./openShelf.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const { document } = smallNotebook.scenarios[0] as { document: unknown };
const opened = async (page: Page, notebook: Notebook) => {
  await putIntoStore(page, notebook.id, notebook.title, notebook);
  await page.goto(`${inject("explorerUrl")}?notebook=${notebook.id}`);
  await settled(page);
};

/** A notebook with a scenario for each thing that is spoiled, and the entries that read documents while they are drawn. */
function spoiledNotebook(): Notebook {
  const senseless = SENSELESS.map((each, k) => ({ id: `s${k}`, name: `S ${k}`, document: spoiled(document, each) }));
  const changed = MISSHAPEN.flatMap((each, k) => {
    const top = each[0].split(".")[0]!;
    const to = spoiled(document, each)[top];
    return k % 12 === 0 && to !== undefined
      ? [{ id: `m${k}`, name: `M ${k}`, basedOn: "roof", changes: [{ at: top, to }] }]
      : [];
  });
  const shown = [...senseless, ...changed];
  const entries = shown.flatMap(({ id }, k): Entry[] => [
    { id: `plan-${id}`, kind: "scenario", title: id, doc: { scenario: id } },
    k % 3 === 0
      ? { id: `shade-${id}`, kind: "shade", title: id, doc: { scenario: id } }
      : k % 3 === 1
        ? { id: `sizes-${id}`, kind: "sizing", title: id, doc: { scenario: id, targetIn100: 95, autonomyDays: 2 } }
        : { id: `versus-${id}`, kind: "versus", title: id, doc: { scenarios: ["roof", id] } },
  ]);
  const others: Entry[] = (["drivers", "limits", "days", "ledger", "run"] as const).map((kind) => ({
    id: kind === "run" ? "run-wrong" : kind,
    kind,
    title: kind,
    doc: { scenario: "s0" },
  }));
  return {
    ...smallNotebook,
    scenarios: [...smallNotebook.scenarios.slice(0, 1), ...shown] as Notebook["scenarios"],
    entries: [...smallNotebook.entries, ...entries, ...others],
  };
}

test("whatever is senseless in a document, every entry stands and says what is wrong; an edit puts none of them out", async () => {
  const { page, complaints } = await openShelf(browser);
  const notebook = spoiledNotebook();
  await opened(page, notebook);
  await page.locator(".page:not(.working)").waitFor();
  expect(await page.locator("main section.entry").count()).toBe(notebook.entries.length);
  expect(await page.locator("section.entry", { hasText: "cannot be shown" }).allTextContents()).toEqual([]);
  expect(await page.locator("#plan-s0 h2").count()).toBe(1);
  await page.getByLabel("Title of the notebook").fill("Still here");
  await page.getByLabel("Title of the notebook").press("Enter");
  await page.getByText("All kept in this browser.").waitFor();
  expect(complaints).toEqual([]);
}, 120_000);

test("a link with a document that is none says so before anything is kept, and opens with the rest", async () => {
  const { page, complaints } = await openShelf(browser);
  const scenarios = [
    ...smallNotebook.scenarios,
    { id: "broken", name: "Broken", document: spoiled(document, ["gear", null]) },
    { id: "odd", name: "Odd", document: spoiled(document, ["bank.blockAh", -5]) },
  ] as Notebook["scenarios"];
  const made = await shareFragment({ ...smallNotebook, scenarios });
  if (!made.ok) throw new Error(made.sentence);
  await page.goto(`${inject("explorerUrl")}${made.fragment}`);
  await page.getByRole("button", { name: "Open a copy" }).waitFor();
  const said = plain(await page.locator("main").textContent());
  expect(said).toMatch(/Not all of it can be read.*“Broken” is missing: gear should be a list and is nothing/);
  expect(said).toMatch(/Not all of it can be worked out as it stands.*Odd: .*-5/);
  expect(await keptText(page)).toBe("[]");
  await page.getByRole("button", { name: "Open a copy" }).click();
  await settled(page);
  expect(complaints).toEqual([]);
});

test("a file like that is not opened, and the shelf offers what can be read of it", async () => {
  const { page, complaints } = await openShelf(browser);
  const scenarios = [
    ...smallNotebook.scenarios,
    { id: "broken", name: "Broken", document: spoiled(document, ["time", []]) },
  ];
  await page.locator("input[type=file]").setInputFiles({
    name: "half.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify({ ...smallNotebook, scenarios })),
  });
  await page.getByText("“Broken” is missing: time should be a thing with fields and is a list").waitFor();
  expect(await keptText(page)).toBe("[]");
  await page.getByRole("button", { name: "Open what can be read" }).click();
  await settled(page);
  expect(complaints).toEqual([]);
});

test("an entry that fails stands there with a way on, and the rest of the sheet goes on", async () => {
  const { page } = await openShelf(browser);
  let isThere = false;
  await page.route("**/renderNote-*.js", (route) => (isThere ? route.continue() : route.abort()));
  await opened(page, smallNotebook);
  const failed = page.locator("#note").getByRole("alert");
  await failed.waitFor();
  expect(plain(await failed.textContent())).toMatch(/This entry cannot be shown \(.*\)\. Nothing of it is lost/);
  expect(await page.locator("#plan .scenario-line").count()).toBe(1);
  isThere = true;
  await page.reload();
  await page.locator("#note .note-text").waitFor();
});

test("a sheet that fails says so, saves its notebook and leads to the shelf", async () => {
  const { page } = await openShelf(browser);
  await page.addInitScript(() => {
    // Something that only the sheet itself does.
    Object.defineProperty(Document.prototype, "title", {
      set: () => {
        throw new Error("a fault that a test put there");
      },
    });
  });
  await putIntoStore(page, smallNotebook.id, smallNotebook.title, smallNotebook);
  await page.goto(`${inject("explorerUrl")}?notebook=${smallNotebook.id}`);
  await page.getByRole("heading", { name: "This page cannot be shown." }).waitFor();
  expect(plain(await page.locator("main").textContent())).toContain("a fault that a test put there");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save the notebook as a file" }).click(),
  ]);
  expect(download.suggestedFilename()).toBe("small.json");
  await page.getByRole("link", { name: "To the shelf" }).click();
  await page.getByRole("heading", { name: "Notebooks on this shelf" }).waitFor();
});
