import fc from "fast-check";
import type { Browser, Frame, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { acts, keptRuns, TabLog, type TextTab } from "../explorer/store/tabModel.ts";
import type { KeeperTab } from "./keeperPage/main.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { servePage } from "./servePage.ts";

let browser: Browser;
let site: Awaited<ReturnType<typeof servePage>>;
beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), servePage("keeperPage")]);
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

declare const tab: KeeperTab;
const ready = (of: Page | Frame) => of.waitForFunction(() => "tab" in globalThis);
const state = (of: Page | Frame) => of.evaluate(() => tab.state());

/** Waits until nothing has been under way in any tab for a while. */
async function quiet(page: Page, frames: () => readonly Frame[]): Promise<void> {
  for (let still = 0; still < 4; ) {
    const states = await Promise.all(frames().map((frame) => state(frame)));
    still = states.includes("saving") ? 0 : still + 1;
    await page.waitForTimeout(25);
  }
}

test("whatever two to five tabs do in a real browser, on a slow disk or a full one: nothing said to be kept is lost", async () => {
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(site.url);
  await ready(page);
  let course = 0;
  await fc.assert(
    fc.asyncProperty(acts(14), fc.constantFrom(0, 4, 15), async (all, slowMs) => {
      const name = `course-${++course}`;
      const frames: Frame[] = [];
      let isFull = false;
      const open = async (): Promise<Frame> => {
        // Frames have a store, news and a memory of their own, as tabs do, and die like them when they are taken out.
        const element = await page.evaluateHandle((address) => {
          const frame = document.createElement("iframe");
          frame.src = address;
          document.body.append(frame);
          return frame;
        }, `./?${name}`);
        const frame = (await element.asElement()!.contentFrame())!;
        await ready(frame);
        return frame;
      };
      const shelf = await open();
      await new TabLog().run(all, {
        async open(id): Promise<TextTab> {
          const frame = await open();
          await frame.evaluate(([faults, id]) => Object.assign(tab.faults, faults) && tab.open(id), [
            { slowMs, isFull },
            id,
          ] as const);
          frames.push(frame);
          return {
            text: () => frame.evaluate(() => tab.text()),
            state: () => state(frame),
            edit: (text) => frame.evaluate((text) => tab.edit(text), text),
            undo: () => frame.evaluate(() => tab.undo()),
            kill: async () => {
              frames.splice(frames.indexOf(frame), 1);
              await (await frame.frameElement()).evaluate((element) => (element as Element).remove());
            },
          };
        },
        texts: () => shelf.evaluate(() => tab.texts()),
        remove: (id) => shelf.evaluate((id) => tab.remove(id), id),
        create: (id, text) =>
          shelf.evaluate(async ([id, text]) => void (await tab.create(id, text)), [id, text] as const),
        async full(now) {
          isFull = now;
          for (const frame of frames) await frame.evaluate((isFull) => void Object.assign(tab.faults, { isFull }), now);
        },
        pause: (k) => page.waitForTimeout((k % 4) * 4),
        settle: () => quiet(page, () => frames),
      });
      await page.evaluate(() => document.body.replaceChildren());
    }),
    keptRuns(6),
  );
  expect(complaints).toEqual([]);
  await page.close();
}, 600_000);

test("nothing is written on top of what has changed meanwhile, nor over another of the same name", async () => {
  const page = await browser.newPage();
  await page.goto(`${site.url}?stale`);
  await ready(page);
  await page.evaluate(() => tab.create("plan", "before"));
  expect(await page.evaluate(() => tab.stale("plan"))).toEqual(["saved", "overtaken", "plan-2"]);
  const texts = await page.evaluate(() => tab.texts());
  expect(texts.map(({ id, text }) => `${id}: ${text}`).sort()).toEqual(["plan-2: other", "plan: first"]);
  await page.close();
});

test("what was said to be kept is there after the tab has crashed", async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(site.url);
  await ready(page);
  await page.evaluate(() => tab.open("crashed"));
  await page.evaluate(() => tab.edit("before the crash"));
  await expect.poll(() => state(page)).toBe("kept");
  const crashed = page.waitForEvent("crash");
  const devTools = await context.newCDPSession(page);
  void devTools.send("Page.crash").catch(() => {});
  await crashed;
  const next = await context.newPage();
  await next.goto(site.url);
  await ready(next);
  expect(await next.evaluate(() => tab.texts())).toEqual([{ id: "crashed", text: "before the crash" }]);
  await context.close();
});

test("a browser that is really out of room says so, and keeps again when there is some", async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  const devTools = await context.newCDPSession(page);
  const { origin } = new URL(site.url);
  await devTools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1000 });
  await page.goto(site.url);
  await ready(page);
  await page.evaluate(() => tab.open("large"));
  await expect.poll(() => state(page)).toBe("unkept");
  await devTools.send("Storage.overrideQuotaForOrigin", { origin });
  await page.evaluate(() => tab.edit("room again"));
  await expect.poll(() => state(page)).toBe("kept");
  expect(await page.evaluate(() => tab.texts())).toEqual([{ id: "large", text: "room again" }]);
  expect(complaints).toEqual([]);
  await context.close();
});
