/** `npm run pictures`: builds the explorer and takes the README's pictures of it into docs/pictures. */
import { mkdirSync, statSync } from "node:fs";
import { chromium, type Page } from "playwright-core";
import { build, preview } from "vite";
import { findBrowser, isRoot } from "./findBrowser.ts";

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
  { name: "red", light: "red", width: 1440, height: 900, pose: async () => {} },
  { name: "phone", light: "day", width: 360, height: 740, pose: async () => {} },
];

await build({ logLevel: "warn" });
mkdirSync(FOLDER, { recursive: true });
const server = await preview({ logLevel: "warn" });
const browser = await chromium.launch({ executablePath: findBrowser(), chromiumSandbox: !isRoot() });
try {
  for (const { name, light, width, height, pose } of PICTURES) {
    const context = await browser.newContext({ viewport: { width, height }, reducedMotion: "reduce" });
    await context.addInitScript((choice) => localStorage.setItem("duskline.light", choice), light);
    const page = await context.newPage();
    await page.goto(server.resolvedUrls!.local[0]!);
    await page.locator("svg.strata").waitFor();
    await page.locator(".page:not(.working)").waitFor();
    await page.evaluate(() => document.fonts.ready);
    await pose(page);
    await page.locator(".skies [role=status]:not(:empty)").waitFor(); // the odds, a thousand members later
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
