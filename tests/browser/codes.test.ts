import jsQR from "jsqr";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { answerElsewhere, ELSEWHERE } from "./elsewhere.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, LIGHTS, turnLight } from "./looks.ts";
import { plain } from "./openExplorer.ts";
import { openExample } from "./openNotebook.ts";

const EXAMPLE = "Autumn weekend in the walnut grove";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function elsewhere(): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: "reduce" });
  await answerElsewhere(context);
  return context;
}

/** What jsQR reads off a picture of the screen: as a phone before it would, and by nothing that drew it. */
async function readOff(page: Page, reader: Page): Promise<string | undefined> {
  const picture = await page.locator("svg.qr-code").screenshot();
  const { width, height, dots } = await reader.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes]));
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d")!;
    canvas.drawImage(bitmap, 0, 0);
    const { data } = canvas.getImageData(0, 0, bitmap.width, bitmap.height);
    let text = "";
    for (const byte of data) text += String.fromCharCode(byte);
    return { width: bitmap.width, height: bitmap.height, dots: btoa(text) };
  }, picture.toString("base64"));
  const seen = new Uint8ClampedArray(Buffer.from(dots, "base64"));
  return jsQR(seen, width, height, { inversionAttempts: "dontInvert" })?.data;
}

async function codesOf(context: BrowserContext): Promise<string[]> {
  const [page, reader] = [await context.newPage(), await context.newPage()];
  await page.goto(ELSEWHERE);
  await page.getByRole("button", { name: "Share link" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: "As QR codes" }).click();
  const said = dialog.getByText(/^Code \d of \d$/);
  await said.waitFor();
  expect(await axeFaults(page, "dialog.share")).toEqual([]);
  const count = Number((await said.textContent())!.at(-1));
  const codes: string[] = [];
  for (let k = 1; k <= count; k++) {
    await expect.poll(() => said.textContent()).toBe(`Code ${k} of ${count}`);
    // Light ground and dark modules in every light: cameras want it so.
    const seen: (string | undefined)[] = [];
    for (const light of k === 1 ? LIGHTS : (["day"] as const)) {
      await turnLight(page, light);
      seen.push(await readOff(page, reader));
    }
    expect(seen).not.toContain(undefined);
    expect(new Set(seen).size).toBe(1);
    codes.push(seen[0]!);
    if (k < count)
      await (k === 1 ? page.keyboard.press("ArrowRight") : dialog.getByRole("button", { name: "Next" }).click());
  }
  await dialog.getByRole("button", { name: "Previous" }).click();
  await expect.poll(() => said.textContent()).toBe(`Code ${count - 1} of ${count}`);
  await page.close();
  await reader.close();
  return codes;
}

test("a notebook goes to a phone by codes, read off the screen in any order, each of which opens a tab of its own", async () => {
  const context = await elsewhere();
  const codes = await codesOf(context);
  expect(codes.length).toBeGreaterThan(2);
  for (const code of codes) expect(code).toContain(`${ELSEWHERE}#part=1.`);
  await context.close();

  const phone = await elsewhere();
  const [last, ...others] = codes.toReversed();
  const tabs: Page[] = [];
  for (const [k, code] of others.entries()) {
    const tab = await phone.newPage();
    await tab.goto(code);
    await tab.getByRole("heading", { name: `A notebook in ${codes.length} codes` }).waitFor();
    expect(plain(await tab.getByRole("status").textContent())).toContain(`${k + 1} of ${codes.length}`);
    expect(await tab.locator(".part-here").count()).toBe(k + 1);
    tabs.push(tab);
  }
  expect(plain(await tabs.at(-1)!.getByRole("status").textContent())).toContain(`Scan code ${codes.length} now`);
  expect(await axeFaults(tabs[0]!)).toEqual([]);
  // A code that comes twice changes nothing.
  await tabs[0]!.reload();
  await expect.poll(() => tabs[0]!.locator(".part-here").count()).toBe(others.length);

  const tab = await phone.newPage();
  await tab.goto(last!);
  const open = tab.getByRole("button", { name: "Open a copy" });
  await open.waitFor();
  expect(plain(await tab.locator("h1").textContent())).toBe(EXAMPLE);
  await tabs[1]!.getByText("All of them are here.").waitFor();
  expect(await tab.evaluate(() => localStorage.getItem("duskline.parts"))).toBe("[]");
  await tab.reload();
  await open.waitFor();
  await open.click();
  await tab.waitForURL(/\?notebook=/);
  await tab.getByLabel("Title of the notebook").waitFor();
  expect(await tab.getByLabel("Title of the notebook").inputValue()).toBe(EXAMPLE);
  await tabs[1]!.getByRole("button", { name: "Go on here" }).click();
  await tabs[1]!.getByRole("button", { name: "Open a copy" }).waitFor();
  await phone.close();
});

test("parts that do not belong together, or are none, are refused in words", async () => {
  const context = await elsewhere();
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  const refused = async (hash: string, why: RegExp) => {
    await page.goto("about:blank");
    await page.goto(`${ELSEWHERE}${hash}`);
    await page.getByText("This notebook is not opened.").waitFor();
    expect(plain(await page.locator("main").textContent())).toMatch(why);
  };
  await refused("#part=1.abc.9.2.x", /no part of a notebook/);
  await refused(`#part=1.abc.1.2.${"x".repeat(3000)}`, /too long/);
  await page.goto("about:blank");
  await page.goto(`${ELSEWHERE}#part=1.abc.1.2.xxx`);
  await page.getByRole("heading", { name: "A notebook in 2 codes" }).waitFor();
  await refused("#part=1.abc.2.2.yyy", /do not belong together/);
  expect(await page.evaluate(() => localStorage.getItem("duskline.parts"))).toBe("[]");
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  await refused("#part=1.abc.1.2.xxx", /keeps nothing here.*Ask for the file/);
  expect(complaints).toEqual([]);
  await context.close();
});

test("from an address of this machine alone there are no codes, and it says why", async () => {
  const { page } = await openExample(browser, ["answer"]);
  await page.getByRole("button", { name: "Share link" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByText("Its address is this machine's own, so it opens nothing on a phone or elsewhere").waitFor();
  expect(await dialog.getByRole("textbox", { name: "Link" }).count()).toBe(1);
  expect(await dialog.getByRole("button", { name: "As QR codes" }).count()).toBe(0);
});

test("installing is offered where the browser offers it, in its place, and nowhere else", async () => {
  const { page } = await openExample(browser, ["answer"]);
  const act = page.getByRole("button", { name: "Install on this device" });
  expect(await act.count()).toBe(0);
  const offered = () =>
    page.evaluate(() => {
      const asked = Object.assign(window, { asked: 0 });
      const event = Object.assign(new Event("beforeinstallprompt", { cancelable: true }), {
        prompt: async () => void asked.asked++,
      });
      return !dispatchEvent(event);
    });
  expect(await offered()).toBe(true); // the browser's own banner is held back
  await act.click();
  expect(await page.evaluate(() => (window as unknown as { asked: number }).asked)).toBe(1);
  expect(await act.count()).toBe(0); // an offer counts once
  await offered();
  await act.waitFor();
  await page.evaluate(() => dispatchEvent(new Event("appinstalled")));
  await act.waitFor({ state: "detached" });
});
