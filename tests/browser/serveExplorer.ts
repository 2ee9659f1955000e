/** Set-up of the browser tests: finds the browser, serves dist/explorer, and tells the tests where both are. */
import { existsSync } from "node:fs";
import { preview } from "vite";
import type { TestProject } from "vitest/node";
import { findBrowser } from "./findBrowser.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Path of the browser's executable. */
    browserPath: string;
    /** Address of the built explorer, ending in a slash. */
    explorerUrl: string;
  }
}

export default async function serveExplorer(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync("dist/explorer/index.html"))
    throw new Error("Browser tests need the built page: run `npm run build`.");
  project.provide("browserPath", findBrowser());
  const server = await preview({ logLevel: "warn" });
  project.provide("explorerUrl", server.resolvedUrls!.local[0]!);
  return () => server.close();
}
