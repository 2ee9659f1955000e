/** `npm run pictures`: builds the explorer, takes the README's pictures of it into docs/pictures, and draws the icons from their one drawing. */
import { mkdirSync, readFileSync, statSync } from "node:fs";
import { chromium, type Page } from "playwright-core";
import { build, preview } from "vite";
import { findBrowser } from "./findBrowser.ts";
import { isRoot } from "./findProgram.ts";

const FOLDER = "docs/pictures";
/** A picture in a README is looked at before the text is read; it must not be waited for. */
const MOST_BYTES = 300_000;

interface Picture {
  readonly name: string;
  readonly light: "day" | "dusk" | "red";
  readonly width: number;
  readonly height: number;
  readonly pose: (page: Page) => Promise<void>;
}

const PICTURES: readonly Picture[] = [
  {
    name: "day",
    light: "day",
    width: 1440,
    height: 900,
    pose: async (page) => {
      await page.locator("#forecast").scrollIntoViewIfNeeded();
      await page.locator("#forecast .reader").hover({ position: { x: 9 * 38, y: 60 } });
    },
  },
  {
    name: "sizing",
    light: "dusk",
    width: 1440,
    height: 900,
    pose: async (page) => {
      await page.locator("#sizing").evaluate((entry) => entry.scrollIntoView());
      await page.locator("#sizing svg").first().waitFor();
    },
  },
  { name: "red", light: "red", width: 1440, height: 900, pose: async () => {} },
  { name: "phone", light: "day", width: 360, height: 740, pose: async () => {} },
];

const ICONS = "explorer/offline/public";
/** Whole icons fill their square, for devices that cut their own shape out of it. */
const ICON_SIZES = [
  { name: "icon-192", px: 192, isWhole: false },
  { name: "icon-512", px: 512, isWhole: false },
  { name: "icon-maskable-512", px: 512, isWhole: true },
  { name: "icon-apple-180", px: 180, isWhole: true },
] as const;

/** The icon's drawing, with its round corners filled where it is to be whole. */
function iconDrawing(isWhole: boolean): string {
  const drawing = readFileSync(`${ICONS}/icon.svg`, "utf8");
  return isWhole
    ? drawing.replace(' rx="72"', "").replace(/<path d="M0 312H512V440[^"]*"/, '<path d="M0 312H512V512H0Z"')
    : drawing;
}

await build({ logLevel: "warn" });
mkdirSync(FOLDER, { recursive: true });
const server = await preview({ logLevel: "warn" });
const browser = await chromium.launch({ executablePath: findBrowser(), chromiumSandbox: !isRoot() });
try {
  for (const { name, px, isWhole } of ICON_SIZES) {
    const page = await browser.newPage({ viewport: { width: px, height: px } });
    await page.setContent(
      `<style>body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${iconDrawing(isWhole)}`,
    );
    await page.screenshot({ path: `${ICONS}/${name}.png`, omitBackground: true });
    await page.close();
  }
  for (const { name, light, width, height, pose } of PICTURES) {
    const context = await browser.newContext({ viewport: { width, height }, reducedMotion: "reduce" });
    // Put by for days without a network, the page would ask for files while the picture is taken.
    await context.addInitScript(() => Object.defineProperty(navigator, "serviceWorker", { value: undefined }));
    await context.addInitScript((choice) => localStorage.setItem("duskline.light", choice), light);
    const page = await context.newPage();
    await page.goto(server.resolvedUrls!.local[0]!);
    await page.locator("svg.strata").waitFor();
    await page.locator(".page:not(.working)").waitFor();
    await page.evaluate(() => document.fonts.ready);
    await pose(page);
    await page.waitForTimeout(300);
    const path = `${FOLDER}/${name}.png`;
    await page.screenshot({ path });
    await context.close();
    const { size } = statSync(path);
    console.log(`${path}: ${width} × ${height}, ${Math.round(size / 1000)} kB`);
    if (size > MOST_BYTES) throw new Error(`${path} has ${size} bytes; a README's picture has at most ${MOST_BYTES}.`);
  }
} finally {
  await browser.close();
  await server.close();
}
