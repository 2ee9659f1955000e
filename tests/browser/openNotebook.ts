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

/** Turns the light until it is the one that is wanted. */
export async function turnLight({ page }: OpenPage, name: "Day" | "Dusk" | "Red, dim"): Promise<void> {
  const button = page.getByRole("button", { name: /^Light: / });
  for (let i = 0; i < 3 && (await button.textContent())?.trim() !== `Light: ${name}`; i++) await button.click();
}
