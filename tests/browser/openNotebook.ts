import type { Browser, BrowserContextOptions } from "playwright-core";
import { inject } from "vitest";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import type { Entry, Notebook } from "../../explorer/notebook/notebook.ts";
import { type OpenPage, openExplorer } from "./openExplorer.ts";

/** The example's scenarios with other entries, and fewer skies so that tests are quick. */
export function notebookWith(entries: readonly Entry[]): Notebook {
  return { ...exampleNotebook("probe"), title: "Probe", members: 200, entries: [...entries] };
}

/** Opens a notebook from a file, by way of the shelf, and waits until its first entry is there. */
export async function openNotebook(
  browser: Browser,
  notebook: Notebook,
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const opened = await openExplorer(browser, options);
  const { page } = opened;
  await page.goto(`${inject("explorerUrl")}?shelf`);
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "probe.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(notebook)) });
  await page.waitForURL(/notebook=probe/);
  await page.locator(`#${notebook.entries[0]!.id}`).waitFor();
  return opened;
}

/** Shows the page in a light; the button for it is tested elsewhere and stands in other places on a phone. */
export async function turnLight({ page }: OpenPage, light: "day" | "dusk" | "red"): Promise<void> {
  await page.evaluate((name) => {
    document.documentElement.dataset.light = name;
  }, light);
}
