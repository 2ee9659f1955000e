import { type Browser, chromium } from "playwright-core";
import { inject } from "vitest";
import { isRoot } from "./findBrowser.ts";

/**
 * Starts the browser that the run found; close it when done. It asks nothing of the network by itself: behind a
 * firewall, updates and sync would only add noise to the log.
 */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: inject("browserPath"),
    chromiumSandbox: !isRoot(),
    args: [
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}
