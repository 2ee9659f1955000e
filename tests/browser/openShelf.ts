import type { Browser, BrowserContextOptions } from "playwright-core";
import { inject } from "vitest";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import type { OpenPage } from "./openExplorer.ts";

const example = exampleNotebook("small");
/** The example's plan with the three entries that tests of keeping look at, and few skies: quick to work out. */
export const smallNotebook: Notebook = {
  ...example,
  title: "Small",
  members: 20,
  entries: [
    { id: "note", kind: "note", title: "Note", doc: { text: "Nothing to see." } },
    { id: "plan", kind: "scenario", title: "The plan", doc: { scenario: "roof" } },
    { id: "run", kind: "run", title: "One run", doc: { scenario: "roof" } },
  ],
};

/** The shelf in a context of its own, on which nothing lies yet, and what the page complained of. */
export async function openShelf(browser: Browser, options: BrowserContextOptions = {}): Promise<OpenPage> {
  await Promise.all(browser.contexts().map((earlier) => earlier.close()));
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  await context.addInitScript(() => Object.defineProperty(navigator, "serviceWorker", { value: undefined }));
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  await page.goto(`${inject("explorerUrl")}?shelf`);
  await page.getByRole("heading", { name: "Notebooks on this shelf" }).waitFor();
  return { page, complaints };
}
