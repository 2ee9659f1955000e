import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, LIGHTS } from "./looks.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { EXAMPLE_IDS, openExample } from "./openNotebook.ts";

const COUNT = EXAMPLE_IDS.length + 1;
let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function present(options: BrowserContextOptions = { viewport: { width: 1024, height: 768 } }) {
  const opened = await openExample(browser, EXAMPLE_IDS, options);
  await allWorkedOut(opened.page);
  const more = opened.page.getByRole("button", { name: "More", exact: true });
  if (await more.isVisible()) await more.click();
  await opened.page.getByRole("button", { name: "Present" }).click();
  await opened.page.locator("dialog.present[open]").waitFor();
  return opened;
}
const foot = async (page: Page) => plain(await page.locator(".slide-turn span").textContent());

/** Whether a slide is larger than the window, and its smallest text as it is seen, px. */
function measured(page: Page) {
  return page.locator("dialog.present").evaluate((dialog) => {
    const shown = [...dialog.querySelectorAll<Element>("*")].filter(
      (each) =>
        each.getClientRects().length > 0 &&
        !each.closest(".unseen, style, defs") &&
        [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== ""),
    );
    const seenPx = (each: Element) => {
      const matrix = each instanceof SVGGraphicsElement ? each.getScreenCTM() : null;
      return (
        Number.parseFloat(getComputedStyle(each).fontSize) * (matrix === null ? 1 : Math.hypot(matrix.a, matrix.b))
      );
    };
    return {
      isWide: dialog.scrollWidth > dialog.clientWidth,
      isHigh: dialog.scrollHeight > dialog.clientHeight,
      leastPx: Math.min(...shown.map(seenPx)),
    };
  });
}

test("keys turn the slides, the line points, and Escape gives back the page and its focus", async () => {
  const { page, complaints } = await present();
  expect(await foot(page)).toBe(`1 of ${COUNT}`);
  expect(await page.locator(".slide-words").textContent()).toMatch(/of 100 skies/);
  await page.keyboard.press("ArrowLeft");
  expect(await foot(page)).toBe(`1 of ${COUNT}`);
  for (const key of ["ArrowRight", " ", "PageDown"]) await page.keyboard.press(key);
  expect(await foot(page)).toBe(`4 of ${COUNT}`);
  await page.keyboard.press("PageUp");
  expect(plain(await page.locator(".slide-foot p").first().textContent())).toMatch(/^B /);
  expect(await page.locator(".slide-chart svg").first().getAttribute("aria-label")).toMatch(/^Charge over time/);
  expect(await page.locator(".pointer-line").count()).toBe(0);
  await page.keyboard.press("ArrowUp");
  const first = plain(await page.locator(".pointer-when").textContent());
  for (let i = 0; i < 20; i++) await page.keyboard.press("Shift+ArrowRight");
  expect(plain(await page.locator(".pointer-when").textContent())).not.toBe(first);
  expect(await page.locator(".pointer-mark text").allTextContents()).toHaveLength(2);
  await page.keyboard.press("End");
  expect(await foot(page)).toBe(`${COUNT} of ${COUNT}`);
  await page.keyboard.press("Home");
  expect(await foot(page)).toBe(`1 of ${COUNT}`);
  await page.keyboard.press("Escape");
  await page.locator("dialog.present").waitFor({ state: "detached" });
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Present");
  expect(complaints).toEqual([]);
});

test("the mouse points at an instant, and the marks at the foot turn", async () => {
  const { page } = await present();
  await page.getByRole("button", { name: "Next slide" }).click();
  await page.getByRole("button", { name: "Next slide" }).click();
  const box = (await page.locator(".slide-pointer").boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  expect(plain(await page.locator(".pointer-when").textContent())).toMatch(/^(Thu|Fri|Sat|Sun) \d\d:\d\d$/);
  await page.mouse.move(5, 5);
  expect(await page.locator(".pointer-when").count()).toBe(0);
  await page.getByRole("button", { name: "Close" }).click();
  await page.locator("dialog.present").waitFor({ state: "detached" });
});

test("every slide is whole at 1024 × 768, in type for the back of the room, and axe finds nothing in any light", async () => {
  const { page, complaints } = await present({ viewport: { width: 1024, height: 768 }, reducedMotion: "reduce" });
  for (let at = 0; at < COUNT; at++) {
    expect(await foot(page)).toBe(`${at + 1} of ${COUNT}`);
    const { isWide, isHigh, leastPx } = await measured(page);
    expect(isWide || isHigh, `slide ${at + 1}`).toBe(false);
    expect(leastPx, `slide ${at + 1}`).toBeGreaterThanOrEqual(19.9);
    // What is drawn is tried in all lights where it stands on the sheet; slides take turns.
    const light = LIGHTS[at % LIGHTS.length]!;
    expect(await axeFaults(page, "dialog.present", [light]), `slide ${at + 1}`).toEqual([]);
    await page.keyboard.press("ArrowRight");
  }
  expect(complaints).toEqual([]);
});

test("a thumb swipes through the slides on a phone, and nothing is wider than it", async () => {
  const { page } = await present({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true });
  const swipe = (from: number, to: number) =>
    page.locator("dialog.present").evaluate(
      (dialog, [x0, x1]) => {
        const at = (kind: string, clientX: number) =>
          dialog.dispatchEvent(new PointerEvent(kind, { pointerType: "touch", clientX, clientY: 300, bubbles: true }));
        at("pointerdown", x0!);
        at("pointerup", x1!);
      },
      [from, to],
    );
  await swipe(300, 60);
  expect(await foot(page)).toBe(`2 of ${COUNT}`);
  await swipe(60, 300);
  expect(await foot(page)).toBe(`1 of ${COUNT}`);
  await swipe(200, 180);
  expect(await foot(page)).toBe(`1 of ${COUNT}`);
  for (let at = 0; at < COUNT; at++) {
    expect(await page.locator("dialog.present").evaluate((dialog) => dialog.scrollWidth)).toBeLessThanOrEqual(360);
    expect((await measured(page)).leastPx, `slide ${at + 1}`).toBeGreaterThanOrEqual(15.9);
    await swipe(300, 60);
  }
});

// On a phone the acts that open them are folded away.
test.each([1024, 360])("an address that asks for slides opens on them at %i px", async (width) => {
  const { page, complaints } = await openExample(browser, EXAMPLE_IDS, { viewport: { width, height: 740 } });
  await page.goto(`${page.url()}&present`);
  await page.locator("dialog.present[open]").waitFor();
  await page.keyboard.press("Escape");
  await page.locator("dialog.present").waitFor({ state: "detached" });
  expect(await page.getByRole("button", { name: "Report", exact: true }).isVisible()).toBe(width > 700);
  expect(complaints).toEqual([]);
});
