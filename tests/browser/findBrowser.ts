import { join } from "node:path";
import { chromium } from "playwright-core";
import { installPackages, isDebianLike, isExecutable, onPath } from "./findProgram.ts";

/** The engine alone comes first: a window and a profile for each page that nobody sees take as long again as the page. */
const NAMES = [
  "chromium-headless-shell",
  "chrome-headless-shell",
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "chrome",
  "microsoft-edge",
  "microsoft-edge-stable",
  "msedge",
];

/** Where Chrome and Edge install themselves without telling PATH. */
const USUAL_PLACES: Partial<Record<NodeJS.Platform, string[]>> = {
  linux: ["/usr/bin/chromium", "/opt/google/chrome/chrome", "/opt/microsoft/msedge/msedge"],
  darwin: [
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
  ],
  win32: ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].flatMap((name) => {
    const root = process.env[name];
    return root
      ? [join(root, "Google/Chrome/Application/chrome.exe"), join(root, "Microsoft/Edge/Application/msedge.exe")]
      : [];
  }),
};

/**
 * Finds a Chromium to test with: what DUSKLINE_BROWSER names, one on PATH, Chrome or Edge where they usually are, one
 * that the driver fetched earlier; as root on Debian or Ubuntu it installs the distribution's package.
 * @returns the path of an executable
 * @throws Error saying in one sentence what to run; browser tests are never skipped for want of a browser
 */
export function findBrowser(): string {
  const asked = process.env.DUSKLINE_BROWSER;
  if (asked) {
    if (isExecutable(asked)) return asked;
    throw new Error(`DUSKLINE_BROWSER names ${asked}, which is not a program that can be run; correct it or unset it.`);
  }
  return onPath(NAMES) ?? inUsualPlaces() ?? inDriverCache() ?? installed() ?? giveUp();
}

function inUsualPlaces(): string | undefined {
  return USUAL_PLACES[process.platform]?.find(isExecutable);
}

function inDriverCache(): string | undefined {
  const cached = chromium.executablePath();
  return cached && isExecutable(cached) ? cached : undefined;
}

function installed(): string | undefined {
  const isThere = installPackages("Chromium", ["chromium-headless-shell"]) || installPackages("Chromium", ["chromium"]);
  return isThere ? (onPath(NAMES) ?? inUsualPlaces()) : undefined;
}

function giveUp(): never {
  const command = isDebianLike()
    ? "sudo apt-get update && sudo apt-get install -y chromium"
    : "npx playwright-core install chromium";
  throw new Error(
    `Browser tests need Chromium, Chrome or Edge and none was found: run \`${command}\`, or set DUSKLINE_BROWSER to one.`,
  );
}
