import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { axeFaults, smallTexts } from "./looks.ts";
import { overhangPx, plain } from "./openExplorer.ts";
import { type ServedPage, servePage } from "./servePage.ts";

let browser: Browser;
let served: ServedPage;
beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), servePage("scenarioPage")]);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

async function open(query: string, width = 1110): Promise<{ page: Page; complaints: string[] }> {
  const page = await (await browser.newContext({ viewport: { width, height: 900 }, locale: "en-GB" })).newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  await page.goto(`${served.url}${query}`);
  await page.locator(".scenario-form, .start").first().waitFor();
  return { page, complaints };
}

const held = (page: Page) => page.evaluate(() => (window as unknown as { scenario: ScenarioInput }).scenario);
const group = (page: Page, name: string) => page.getByRole("button", { name: new RegExp(`^${name}`) }).click();
const box = (page: Page, name: string | RegExp) => page.getByRole("textbox", { name });
const openThing = (page: Page, name: RegExp) => page.getByRole("button", { name, expanded: false }).click();

test("a figure goes into the document when Enter is pressed, and not while it is typed", async () => {
  const { page, complaints } = await open("?alone");
  await group(page, "Bank");
  await box(page, /^One block/).fill("30");
  expect((await held(page)).bank.blockAh).toBe(280);
  await page.keyboard.type("0");
  expect(await box(page, /^One block/).inputValue()).toBe("300");
  await page.keyboard.press("Enter");
  expect((await held(page)).bank.blockAh).toBe(300);
  await page.keyboard.press("ArrowUp");
  expect((await held(page)).bank.blockAh).toBe(310);
  await page.keyboard.press("Shift+ArrowDown");
  expect((await held(page)).bank.blockAh).toBe(200);
  await box(page, /^One block/).fill("99");
  await page.keyboard.press("Escape");
  expect(await box(page, /^One block/).inputValue()).toBe("200");
  expect(complaints).toEqual([]);
});

test("a wrong figure is said beside its field, with the one that was meant at hand", async () => {
  const { page } = await open("");
  await group(page, "Gear and operators");
  await openThing(page, /HF run position/);
  const share = box(page, /^Sending, share of staffed time/);
  await share.fill("152");
  await page.keyboard.press("Enter");
  expect(await share.getAttribute("aria-invalid")).toBe("true");
  const ids = ((await share.getAttribute("aria-describedby")) ?? "").split(" ");
  const said = plain((await Promise.all(ids.map((id) => page.locator(`[id="${id}"]`).textContent()))).join(" "));
  expect(said).toContain(
    "A share here stops at 100 %. Did you mean 15.2 %? Until it is put right, the results keep 15 %.",
  );
  await page.getByRole("button", { name: "Use 15.2" }).click();
  expect((await held(page)).stations![0]!.sendingShare).toBe(0.152);
  expect(await share.getAttribute("aria-invalid")).toBeNull();
});

test("what is left out shows what is usual, can be set, and can be left out again", async () => {
  const { page } = await open("?alone");
  await group(page, "Bank");
  await page.getByRole("button", { name: "Show every field" }).click();
  const cut = box(page, /^Cuts off at/);
  expect(await cut.inputValue()).toBe("");
  const usual = await cut.getAttribute("placeholder");
  expect(Number(usual)).toBeGreaterThan(9);
  await cut.fill("11.5");
  await page.keyboard.press("Enter");
  expect((await held(page)).bank.disconnectV).toBe(11.5);
  await page.getByRole("button", { name: "As usual: Cuts off at" }).click();
  expect((await held(page)).bank.disconnectV).toBeUndefined();
  expect(await cut.getAttribute("placeholder")).toBe(usual);
});

test("things are added, copied and removed, and the document stays right", async () => {
  const { page, complaints } = await open("?alone");
  await group(page, "Gear and operators");
  await page.getByRole("button", { name: "Add: Stations" }).click();
  await page.getByRole("button", { name: "Duplicate: Compressor fridge", exact: true }).click();
  await page.getByRole("button", { name: "Remove: Roof vent" }).click();
  await openThing(page, /^Logging computer/);
  await page.getByRole("combobox", { name: "Works", exact: true }).selectOption({ label: "by the clock" });
  await group(page, "Shade");
  await page.getByRole("button", { name: "Add: tree" }).click();
  await page.getByRole("combobox", { name: "Kind" }).selectOption({ label: "box" });
  await group(page, "Panels and charging");
  await page.getByRole("button", { name: "Add: generator" }).click();
  await openThing(page, /Van roof/);
  await page.getByRole("combobox", { name: "Stands" }).selectOption({ label: "re-aimed by hand" });
  await page.getByRole("button", { name: "Add: Aimed" }).click();
  const document = await held(page);
  const read = readScenario(document);
  expect(read.ok ? [] : read.problems).toEqual([]);
  expect(document.stations).toHaveLength(4);
  expect(document.gear!.map((gear) => gear.id)).toContain("fridge-2");
  expect(document.gear!.map((gear) => gear.id)).not.toContain("fan");
  expect(document.obstacles!.at(-1)).toMatchObject({ kind: "box", eastM: 8, northM: -8 });
  expect(document.panels![0]!.mount).toMatchObject({ kind: "aimed", aims: [{}, {}, {}, {}] });
  expect(complaints).toEqual([]);
});

test("what is changed against the base is marked, and says what it was", async () => {
  const { page } = await open("?variant=two-blocks");
  await group(page, "Bank");
  const row = page.locator(".row", { hasText: "Blocks side by side" });
  expect(await row.locator(".changed").count()).toBe(1);
  expect(plain(await row.locator(".row-was").textContent())).toBe("was 1");
  expect(plain(await page.locator(".row", { hasText: "Reserve kept back" }).locator(".row-was").textContent())).toBe(
    "as base",
  );
});

test("every field of the format has its place at full depth", async () => {
  for (const plan of ["", "?plan=hut"]) {
    const { page, complaints } = await open(plan);
    await page.getByRole("button", { name: "Show every field" }).click();
    const names: string[] = [];
    for (const name of [
      "Place and time",
      "Gear and operators",
      "Panels and charging",
      "Shade",
      "Bank",
      "How sure are you",
      "Variants",
    ]) {
      await group(page, name);
      const folded = page.locator(".thing-open[aria-expanded=false]");
      while ((await folded.count()) > 0) await folded.first().click();
      names.push(...(await page.locator(".row-name").allTextContents()));
    }
    const wanted = [
      "Time zone",
      "Haze (Linke turbidity)",
      "SSB current figured by",
      "Fuses and plugs",
      "Air behind the panel",
      "Keenness, hour to hour",
    ];
    for (const each of [
      ...wanted,
      "Own open-circuit curve",
      "Converter to 12 V",
      "Ground throws back",
      "Bypassed sections",
    ]) {
      expect(names.map((name) => name.replace(", changed", ""))).toContain(each);
    }
    expect(complaints).toEqual([]);
  }
});

test("six questions end in a scenario that reads, with the place from the map", async () => {
  const { page, complaints } = await open("?start");
  const map = page.getByRole("application");
  await map.waitFor();
  await page.getByText("Climate from a world grid").waitFor();
  await map.focus();
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("+");
  await page.keyboard.press("+");
  await page.waitForFunction(() => document.querySelector("[aria-pressed=true]")?.textContent === "nearby");
  await page.keyboard.press("ArrowRight");
  expect(plain(await page.locator(".map-readout strong").textContent())).toBe("49° N, 15.6° E");
  const drawn = (await map.locator("svg").boundingBox())!;
  await page.mouse.click(drawn.x + drawn.width * 0.25, drawn.y + drawn.height / 2);
  expect(await box(page, /^Longitude/).inputValue()).not.toBe("15.6");
  await page.getByRole("checkbox", { name: "Compressor fridge" }).check();
  await page.getByRole("combobox", { name: "Like this" }).selectOption({ label: "running a contest (sends 50 %)" });
  await page.getByRole("combobox", { name: "Besides" }).selectOption({ label: "a small generator by day" });
  expect(plain(await page.locator(".start-care").textContent())).toContain("carbon monoxide");
  await page.getByRole("radio", { name: "under trees" }).check();
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.locator(".scenario-form").waitFor();
  const made = await held(page);
  expect(readScenario(made).ok).toBe(true);
  expect(made.obstacles).toHaveLength(5);
  expect(made.stations![0]!.sendingShare).toBe(0.5);
  expect(made.place.latitudeDeg).toBeCloseTo(49, 0);
  expect(complaints).toEqual([]);
});

test.each([1110, 360])("at %i px axe finds nothing in any light, nothing is under 16 px or too wide", async (width) => {
  for (const query of ["?variant=meadow", "?start"]) {
    const { page } = await open(query, width);
    if (query === "?start") await page.getByText("Climate from a world grid").waitFor();
    else {
      await page.getByRole("button", { name: "Show every field" }).click();
      await group(page, "Gear and operators");
      await openThing(page, /HF run position/);
      await box(page, /^Transmit power/).fill("150");
      await page.keyboard.press("Enter");
    }
    expect(await smallTexts(page)).toEqual([]);
    expect(await overhangPx(page)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page)).toEqual([]);
    await page.context().close();
  }
});
