import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { inject } from "vitest";
import type { Entry, Notebook } from "../../engine/notebook/notebook.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { type OpenPage, openPage, settled } from "./openExplorer.ts";

/** Skies of a notebook in which no figure is looked at. */
const FEW_MEMBERS = 100;

/** All entries of the example. */
export const EXAMPLE_IDS: readonly string[] = exampleNotebook("probe").entries.map(({ id }) => id);

/** The example's scenarios with other entries and few skies. */
export function notebookWith(entries: readonly Entry[]): Notebook {
  return { ...exampleNotebook("probe"), title: "Probe", members: FEW_MEMBERS, entries: [...entries] };
}

/** The example with few skies and only those of its entries that a test looks at, in the example's order. */
export function exampleWith(...ids: readonly string[]): Notebook {
  const { entries } = exampleNotebook("probe");
  const absent = ids.filter((id) => !entries.some((entry) => entry.id === id));
  if (absent.length > 0) throw new Error(`the example has no entry ${absent.join(", ")}`);
  return notebookWith(entries.filter(({ id }) => ids.includes(id)));
}

/** Opens a notebook from a file, by way of the shelf, and waits until its first entry is there. */
export async function openNotebook(
  browser: Browser,
  notebook: Notebook,
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const opened = await openPage(browser, options);
  await takeNotebook(opened.page, notebook);
  return opened;
}

/** Opens the shelf, gives it a notebook's file, and waits until its first entry is there. */
export async function takeNotebook(page: Page, notebook: Notebook): Promise<void> {
  await page.goto(`${inject("explorerUrl")}?shelf`);
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "probe.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(notebook)) });
  await page.waitForURL(/notebook=/);
  const [first] = notebook.entries;
  await page.locator(first === undefined ? "h1" : `#${first.id}`).waitFor();
}

/** Opens the example with few skies and only these of its entries, and waits until the picture of its run is there, if it has one. */
export async function openExample(
  browser: Browser,
  ids: readonly string[],
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const opened = await openNotebook(browser, exampleWith(...ids), options);
  if (ids.includes("run")) await settled(opened.page);
  return opened;
}
