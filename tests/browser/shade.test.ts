import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { sunDays } from "../../engine/answers/shade/sunHours.ts";
import { sunlight } from "../../engine/answers/shade/sunlight.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import type { Change } from "../../engine/scenario/change.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { EXAMPLE } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, smallTexts } from "./looks.ts";
import { overhangPx, plain } from "./openExplorer.ts";
import { type ServedPage, servePage } from "./servePage.ts";

let browser: Browser;
let site: ServedPage;
beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), servePage("shadePage")]);
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

interface Told {
  readonly changes: Change[];
  readonly label: string;
}

async function open({ width = 1440, height = 900, query = "" } = {}) {
  const page = await (await browser.newContext({ viewport: { width, height } })).newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  await page.goto(site.url + query);
  await page.locator(".sky-drawing").waitFor();
  await settled(page);
  await page.evaluate(() => document.fonts.ready);
  return { page, complaints };
}

/** Stops the page's clock, so that how fast keys follow one another is not a matter of how fast this machine is. */
async function stopClock(page: Page): Promise<void> {
  await page.clock.install();
  await page.clock.pauseAt(Date.now() + 1000);
}
/** Lets go by what a run of keys is given to come to rest, and much more. */
const rest = (page: Page) => page.clock.runFor(60_000);
const settled = (page: Page) => page.locator(".shade:not(.shade-stale)").waitFor();
const told = (page: Page) => page.evaluate(() => (window as unknown as { told: Told[] }).told);
const thing = (page: Page, key: string) => page.locator(`[data-key="${key}"]`);
const status = async (page: Page) => plain(await page.getByRole("status").textContent());

async function middle(spot: Locator): Promise<{ x: number; y: number }> {
  const box = (await spot.boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Hours of open sun of the van roof on each day, as the engine has them. */
function openHours(changes: readonly Change[]): string[] {
  const changed = applyChanges(EXAMPLE, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const light = sunlight(read.scenario)!;
  return sunDays(light, light.groups[0]!).map((day) => day.partWorthH.toFixed(1));
}

async function tableHours(page: Page): Promise<string[]> {
  return (await page.locator("tbody tr td:nth-child(6)").allTextContents()).map(plain);
}

test("a dragged tree is one change with a name, and the strip's table follows", async () => {
  const { page, complaints } = await open();
  await page.getByRole("button", { name: "Table" }).click();
  expect(await tableHours(page)).toEqual(openHours([]));
  const walnut = thing(page, "obstacles.old-walnut");
  const from = await middle(walnut);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let px = 5; px <= 80; px += 5) await page.mouse.move(from.x + px, from.y);
  expect(await told(page)).toEqual([]);
  await page.mouse.up();
  const [only, ...more] = await told(page);
  expect(more).toEqual([]);
  expect(only!.changes.map((change) => change.at)).toEqual(["obstacles.old-walnut.eastM"]);
  const eastM = only!.changes[0]!.to as number;
  expect(only!.label).toBe(`old walnut ${String(Math.round((eastM - 2) * 10) / 10)} m east`);
  const to = await middle(walnut);
  expect(to.x - from.x).toBeGreaterThan(76);
  expect(to.x - from.x).toBeLessThan(84);
  await settled(page);
  expect(await tableHours(page)).toEqual(openHours(only!.changes));
  expect(await tableHours(page)).not.toEqual(openHours([]));
  expect(complaints).toEqual([]);
});

test("keys move what has the focus and say so; a run of keys is one change", async () => {
  const { page } = await open();
  await stopClock(page);
  const walnut = thing(page, "obstacles.old-walnut");
  await walnut.focus();
  expect(plain(await walnut.getAttribute("aria-label"))).toBe(
    "old walnut, tree 13 m high, 2 m east and 6.5 m south of the middle",
  );
  await page.keyboard.press("ArrowRight");
  expect(await status(page)).toBe("old walnut: 0.5 m east, now 2.5 m east and 6.5 m south of the middle");
  await page.keyboard.press("Shift+ArrowDown");
  expect(await status(page)).toBe("old walnut: 5 m south, now 2.5 m east and 11.5 m south of the middle");
  await page.keyboard.press("ArrowRight");
  await rest(page);
  expect(await told(page)).toEqual([
    {
      changes: [
        { at: "obstacles.old-walnut.eastM", to: 3 },
        { at: "obstacles.old-walnut.northM", to: -11.5 },
      ],
      label: "old walnut 1 m east and 5 m south",
    },
  ]);
  // The document has come back with the change, and the focus is where it was.
  expect(await walnut.evaluate((g) => g === document.activeElement)).toBe(true);
  await page.keyboard.press("ArrowLeft");
  expect(await status(page)).toBe("old walnut: 0.5 m west, now 2.5 m east and 11.5 m south of the middle");
});

test("boxes and panels move too, by keys and by buttons; leaving one for another settles it", async () => {
  const { page } = await open({ query: "?meadow" });
  await stopClock(page);
  await thing(page, "obstacles.barn").focus();
  await page.keyboard.press("ArrowUp");
  await thing(page, "panels.meadow.at").focus();
  await page.keyboard.press("ArrowUp");
  await page.getByRole("button", { name: "Move Folding panels in the meadow half a metre west" }).click();
  await rest(page);
  expect(await told(page)).toEqual([
    { changes: [{ at: "obstacles.barn.northM", to: 4.5 }], label: "hay barn 0.5 m north" },
    {
      changes: [
        { at: "panels.meadow.at.eastM", to: 3.5 },
        { at: "panels.meadow.at.northM", to: -26.5 },
      ],
      label: "Folding panels in the meadow 0.5 m west and 0.5 m north",
    },
  ]);
});

test("Escape takes back what has not been told yet", async () => {
  const { page } = await open();
  await stopClock(page);
  const walnut = thing(page, "obstacles.old-walnut");
  const before = await walnut.getAttribute("aria-label");
  await walnut.focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Escape");
  expect(await walnut.getAttribute("aria-label")).toBe(before);
  await rest(page);
  expect(await told(page)).toEqual([]);
});

test("the hour moves by a quarter and with Shift by six hours, and the shadows go with it", async () => {
  const { page } = await open();
  const slider = page.getByRole("slider", { name: "Hour of the shadows" });
  const says = async () => plain(await slider.getAttribute("aria-valuetext"));
  const shadows = () => page.locator(".ground-shadow").first().getAttribute("points");
  expect(await says()).toMatch(/^Sat 10 12:45, sun 36° up in the S$/);
  const noon = await shadows();
  await slider.press("ArrowRight");
  expect(await says()).toContain("Sat 10 13:00");
  expect(await shadows()).not.toBe(noon);
  await slider.press("Shift+ArrowRight");
  expect(await says()).toBe("Sat 10 19:00, the sun is down");
  expect(await page.locator(".ground-shadow").count()).toBe(0);
  const strip = (await page.locator(".sun-strip-drawing").boundingBox())!;
  await page.mouse.click(strip.x + 9 * 36, strip.y + 20);
  expect(await says()).toContain("Fri 9 12:00");
});

test("on a phone the strip is scrolled to the hour and follows it", async () => {
  const { page } = await open({ width: 360 });
  const inView = () =>
    page.locator(".strip-hour line").evaluate((line) => {
      const { left } = line.getBoundingClientRect();
      return left > 0 && left < 360;
    });
  expect(await inView()).toBe(true);
  const slider = page.getByRole("slider", { name: "Hour of the shadows" });
  for (let i = 0; i < 7; i++) await slider.press("Shift+ArrowLeft");
  expect(await inView()).toBe(true);
});

test("the sky is that of the group one looks from", async () => {
  const { page } = await open({ query: "?meadow" });
  const sky = page.locator(".sky-drawing");
  expect(await sky.getAttribute("aria-label")).toMatch(/^The sky as Van roof sees it, Sat 10: .*old walnut/);
  expect(await sky.locator(".path-leaves").count()).toBeGreaterThan(1);
  await page.getByRole("button", { name: "Folding panels in the meadow", exact: true }).last().click();
  expect(await sky.getAttribute("aria-label")).toMatch(/^The sky as Folding panels in the meadow sees it/);
  expect(await sky.locator(".path-open").count()).toBe(1);
  expect(await sky.locator(".path-leaves").count()).toBe(0);
});

test("buttons zoom, and a thing out of view is brought into it by the focus", async () => {
  const { page } = await open({ query: "?meadow" });
  const width = async () => (await thing(page, "obstacles.old-walnut").boundingBox())!.width;
  const before = await width();
  const zoom = page.getByRole("button", { name: "Zoom in" });
  for (let i = 0; i < 3; i++) await zoom.click();
  expect((await width()) / before).toBeCloseTo(1.5 ** 3, 1);
  const plan = (await page.locator(".plan-drawing").boundingBox())!;
  await thing(page, "panels.meadow.at").focus();
  const at = await middle(thing(page, "panels.meadow.at"));
  expect(at.x > plan.x && at.x < plan.x + plan.width && at.y > plan.y && at.y < plan.y + plan.height).toBe(true);
  await page.getByRole("button", { name: "Whole site" }).click();
  expect(await width()).toBeCloseTo(before, 1);
});

test.each([1440, 360])(
  "at %i px: nothing for axe in any light, no small text, no names over one another, no sideways page",
  async (width) => {
    const { page, complaints } = await open({ width, query: "?meadow" });
    await page.getByRole("button", { name: "Table" }).click();
    expect(await axeFaults(page, ".shade")).toEqual([]);
    expect(await smallTexts(page, ".shade")).toEqual([]);
    const names = await page.evaluate(() =>
      [".plan-drawing", ".sky-drawing"].map((drawing) =>
        [...document.querySelectorAll(`${drawing} .plan-names text`)].map((text) => {
          const { left, right, top, bottom } = text.getBoundingClientRect();
          return { text: text.textContent, left, right, top: top + 3, bottom: bottom - 3 };
        }),
      ),
    );
    for (const drawing of names) {
      expect(drawing.length).toBeGreaterThan(3);
      drawing.forEach((a, i) => {
        for (const b of drawing.slice(0, i)) {
          const covers = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
          expect(covers ? [a.text, b.text] : []).toEqual([]);
        }
      });
    }
    expect(await overhangPx(page)).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
  },
);

test.each(["peat-moor", "polar-hut"])(
  "the example %s opens with a verdict and without a complaint",
  async (example) => {
    const { page, complaints } = await open({ query: `?example=${example}` });
    expect(plain(await page.locator(".shade-verdict").textContent())).toMatch(/h of open sun on an average day of/);
    expect(await page.locator(".path-open").count()).toBeGreaterThan(0);
    expect(complaints).toEqual([]);
  },
);
