import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { keptText } from "./keptText.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { openPage, plain, settled } from "./openExplorer.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

// Files are handed over on disk: through the driver a buffer takes half a second a megabyte.
const folder = mkdtempSync(join(tmpdir(), "duskline-hostile-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function give(page: Page, content: string | Buffer, name = "given.json"): Promise<void> {
  const file = join(folder, name);
  writeFileSync(file, content);
  await giveFile(page, file);
}

const giveFile = (page: Page, file: string) =>
  page.locator(".top input[type=file], .acts-row input[type=file]").first().setInputFiles(file);

/** The shelf, on which nothing lies yet. */
async function shelf(): Promise<{ page: Page; complaints: string[] }> {
  const opened = await openPage(browser);
  await opened.page.goto(`${inject("explorerUrl")}?shelf`);
  await opened.page.getByRole("heading", { name: "Notebooks on this shelf" }).waitFor();
  return opened;
}
const example = exampleNotebook("example");
const nested = (levels: number) => `${'{"a":'.repeat(levels)}1${"}".repeat(levels)}`;
const withField = (field: string) => JSON.stringify(example).replace('"seed"', `${field},"seed"`);

test("files that mean harm are refused in a sentence, one after the other, and nothing lands on the shelf", async () => {
  const { page, complaints } = await shelf();
  const before = await page.locator(".shelf li").count();
  const hostile: [string, string | Buffer, RegExp][] = [
    ["deep nesting", withField(`"deep":${nested(5000)}`), /nests deeper/],
    ["nesting beyond any parser", withField(`"deep":${"[".repeat(300_000)}`), /not JSON|nests deeper/],
    ["a prototype", withField('"__proto__":{"polluted":true}'), /__proto__/],
    ["a constructor", withField('"constructor":{"prototype":{"polluted":true}}'), /constructor/],
    ["a million values", withField(`"many":[${"1,".repeat(300_000)}1]`), /more than 200000 values/],
    ["a field of its own", withField('"onload":"alert(1)"'), /onload/],
    ["an id that is an address", JSON.stringify({ ...example, id: "../../x?y#z" }), /id is damaged/],
    ["a picture", Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a]), /is no notebook/],
  ];
  const refused = (what: string, says: RegExp) =>
    expect.poll(async () => plain(await page.locator("[role=status]").textContent()), { message: what }).toMatch(says);

  const fiftyMegabytes = join(folder, "fifty megabytes.json");
  writeFileSync(fiftyMegabytes, "x");
  truncateSync(fiftyMegabytes, 50_000_000);
  await giveFile(page, fiftyMegabytes);
  await refused("fifty megabytes", /50 MB.*at most 6 MB/);
  for (const [what, content, says] of hostile) {
    await give(page, content, `${what}.json`);
    await refused(what, says);
  }
  expect(await page.evaluate(() => Object.hasOwn(Object.prototype, "polluted"))).toBe(false);
  expect(await page.locator(".shelf li").count()).toBe(before);
  expect(complaints).toEqual([]);
});

test("a note's script, frame, form, address and style do nothing; names and titles are text", async () => {
  const { page, complaints } = await shelf();
  const nasty = [
    "<script>window.harmed = 1</script>",
    '<img src=x onerror="window.harmed = 2">',
    '<iframe srcdoc="<script>parent.harmed = 3</script>"></iframe>',
    '<form action="https://example.org"><button>Send</button></form>',
    "[a link](javascript:window.harmed=4) and [another](data:text/html,<script>1</script>)",
    "![a picture](https://example.org/track.png)",
    "<style>* { display: none !important }</style>",
    '<svg><animate onbegin="window.harmed = 5"/></svg>',
    "{holds, <img src=x onerror=alert(1)>}",
  ].join("\n\n");
  const title = '<img src=x onerror="window.harmed = 6">';
  const notebook = {
    ...example,
    members: 100,
    title,
    scenarios: example.scenarios.map((scenario) => ({ ...scenario, name: `${title} ${scenario.name}`.slice(0, 120) })),
    entries: [{ id: "nasty", kind: "note", title, doc: { text: nasty } }, ...example.entries.slice(1)],
  };
  await give(page, JSON.stringify(notebook));
  await page.waitForURL(/notebook=/);
  await settled(page);
  await page.locator("#nasty .note-text").waitFor();
  const note = page.locator("#nasty .note-text");
  expect(await note.locator("script, img, iframe, form, style, svg, object, embed").count()).toBe(0);
  for (const link of await note.locator("a").all())
    expect(await link.getAttribute("href")).toMatch(/^(https?:|#|mailto:)/);
  for (const link of await note.locator("a").all()) await link.dispatchEvent("click");
  expect(await page.evaluate(() => (window as { harmed?: number }).harmed)).toBeUndefined();
  expect(await page.getByLabel("Title of the notebook").inputValue()).toBe(title);
  expect(complaints).toEqual([]);
});

test.each([
  { what: "links", text: `${"[".repeat(5000)}x${"](y)".repeat(5000)}` },
  { what: "emphasis", text: "_a__".repeat(12_000) },
  { what: "quotes", text: ">".repeat(49_000) },
  { what: "figures", text: "{holds, roof} ".repeat(3000) },
])("a note of $what without end is shown, and the page still answers", async ({ text }) => {
  const { page, complaints } = await shelf();
  const bomb = { id: "bomb", kind: "note", title: "Bomb", doc: { text } };
  await give(page, JSON.stringify({ ...example, members: 100, entries: [bomb, example.entries[1]] }));
  await page.waitForURL(/notebook=/);
  await page.locator("#bomb .note-text").waitFor();
  await page.getByLabel("Title of the notebook").fill("Still here");
  await page.getByLabel("Title of the notebook").press("Enter");
  await page.getByText("All kept in this browser.").waitFor();
  expect(complaints).toEqual([]);
});

test("a newer notebook on the shelf is refused and left as it is, byte for byte", async () => {
  const { page } = await shelf();
  await page.getByRole("button", { name: "Put the example here" }).click();
  await page.locator(".shelf li a").first().waitFor();
  const id = await page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        const opening = indexedDB.open("duskline");
        opening.onsuccess = () => {
          const store = opening.result.transaction("notebooks", "readwrite").objectStore("notebooks");
          const all = store.getAll();
          all.onsuccess = () => {
            const first = all.result[0];
            first.notebook = { ...first.notebook, version: 99, invented: { later: true } };
            store.put(first).onsuccess = () => {
              opening.result.close();
              resolve(first.id);
            };
          };
        };
      }),
  );
  const before = await keptText(page);
  await page.goto(`${page.url().replace(/\?.*/, "")}?notebook=${id}`);
  await page.getByRole("heading", { name: "This notebook is not opened." }).waitFor();
  expect(plain(await page.locator("main").textContent())).toContain("newer duskline (version 99");
  expect(await keptText(page)).toBe(before);
});
