/** Set-up of the browser tests: finds and starts the browser, serves dist/explorer, and tells the tests where both are. */
import { existsSync } from "node:fs";
import { chromium } from "playwright-core";
import { preview } from "vite";
import type { TestProject } from "vitest/node";
import { findBrowser } from "./findBrowser.ts";
import { isRoot } from "./findProgram.ts";
import { WAIT_MS } from "./waits.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Where the run's one browser answers. */
    browserEndpoint: string;
    /** Address of the built explorer, ending in a slash. */
    explorerUrl: string;
  }
}

export default async function serveExplorer(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync("dist/explorer/index.html"))
    throw new Error("Browser tests need the built page: run `npm run build`.");
  // It asks nothing of the network by itself: behind a firewall, updates and sync would only add noise to the log.
  const browser = await chromium.launchServer({
    host: "127.0.0.1",
    executablePath: findBrowser(),
    chromiumSandbox: !isRoot(),
    timeout: WAIT_MS,
    args: [
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  project.provide("browserEndpoint", browser.wsEndpoint());
  const server = await preview({ logLevel: "warn" });
  project.provide("explorerUrl", server.resolvedUrls!.local[0]!);
  return async () => {
    await browser.close();
    await server.close();
  };
}
