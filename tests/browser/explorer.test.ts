import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { stepsCsv } from "../../engine/answers/run/runCsv.ts";
import { runPicture } from "../../engine/answers/run/runPicture.ts";
import { localMoment } from "../../engine/run/localClock.ts";
import type { Trace } from "../../engine/run/trace.ts";
import type { Change } from "../../engine/scenario/change.ts";
import { EXAMPLE, exampleRun } from "../explorer/exampleRun.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, openExplorer, plain, savedBytes, settled } from "./openExplorer.ts";
import { openExample } from "./openNotebook.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const answer = async (page: Page) => plain(await page.locator("#run .verdict").textContent());
const alt = async (page: Page) => plain(await page.locator("svg.strata").getAttribute("aria-label"));
const box = (page: Page, name: string) => page.getByRole("textbox", { name });

/** What the engine, run in Node on the same changes, makes of the page's sentence and picture. */
async function expectVerdict(page: Page, changes: readonly Change[]): Promise<Trace> {
  const run = await exampleRun(changes);
  const { verdict } = run;
  await settled(page);
  expect(await alt(page)).toContain(plain(verdict.sentences.join(" ")));
  const said = await answer(page);
  const clock = (ms: number) => localMoment(run.prepared.grid, ms).clock;
  if (verdict.holds) {
    expect(said).toContain("holds to");
    expect(said).toContain(`${Math.round(verdict.lowestShare * 100)} %`);
  } else {
    expect(said).toContain(clock(verdict.belowReserveFromMs!));
    if (verdict.darkFromMs !== null) expect(said).toContain(clock(verdict.darkFromMs));
    else expect(said).toContain("never goes dark");
  }
  return run;
}

test("opens on the example with the engine's own verdict, without an error or a request to anybody else", async () => {
  const { page, complaints } = await openExplorer(browser);
  await expectVerdict(page, []);
  expect(await page.locator("h1").evaluate((h1) => getComputedStyle(h1).fontSize)).toBe("36px");
  expect(await page.evaluate(() => document.fonts.check('16px "Radio Canada Variable"'))).toBe(true);
  await allWorkedOut(page);
  expect(plain(await page.locator("h1").textContent())).toMatch(/the bank holds to Sun 16:00 in \d+ of 100 skies/);
  expect(complaints).toEqual([]);
});

test("a bigger bank, more panels, another sky and the variant give what the engine gives for them", async () => {
  const { page } = await openExample(browser, ["plan", "run", "days"]);
  const before = await answer(page);
  const growth = (factor: number): Change[] => [
    { at: "bank.internalResistanceOhm", to: EXAMPLE.bank.internalResistanceOhm! / factor },
    { at: "bank.chargingResistanceOhm", to: EXAMPLE.bank.chargingResistanceOhm! / factor },
    { at: "bank.maxChargeA", to: EXAMPLE.bank.maxChargeA! * factor },
    { at: "bank.maxDischargeA", to: EXAMPLE.bank.maxDischargeA! * factor },
  ];
  const changes: Change[] = [{ at: "bank.inParallel", to: 2 }, ...growth(2)];
  await box(page, "Blocks side by side").fill("2");
  await expectVerdict(page, changes);
  expect(await answer(page)).not.toBe(before);
  changes.push({ at: "panels.roof.count", to: 4 });
  await box(page, "Panels, Van roof").fill("4");
  const roof = await expectVerdict(page, changes);
  changes.push({ at: "weather", to: { kind: "words", days: Array(4).fill("overcast") as string[] } });
  await page.getByRole("combobox", { name: "Sky each day" }).selectOption("overcast");
  const dull = await expectVerdict(page, changes);
  expect(dull.days[1]!.solarWh).not.toBeCloseTo(roof.days[1]!.solarWh, 0);
  const meadow = EXAMPLE.variants!.find((variant) => variant.id === "meadow")!;
  await page.getByLabel("Scenario that is run").selectOption("meadow");
  await expectVerdict(page, [...changes, ...(meadow.changes as Change[])]);
  expect(await answer(page)).toContain("Roof and meadow: ");
  await page.getByLabel("Scenario whose days these are").selectOption("meadow");
  // The days' table shows the same run.
  const dayTotal = plain(await page.locator("#days tbody tr:nth-child(2) td:nth-child(4)").textContent());
  const expected = await exampleRun([...changes, ...(meadow.changes as Change[])]);
  expect(dayTotal).toBe(String(Math.round(expected.days[1]!.groupWh[0]!)));
});

test("the curve before an edit stays, dotted; undo and redo go back and forth by keyboard and by button", async () => {
  const { page } = await openExample(browser, ["plan", "run"]);
  const first = await answer(page);
  expect(await page.locator("#run path.before").count()).toBe(0);
  await box(page, "Ampere-hours of one block").fill("560");
  await settled(page);
  const second = await answer(page);
  expect(second).not.toBe(first);
  expect(await page.locator("#run path.before").count()).toBe(1);
  expect(plain(await page.locator("#run svg.strata-labels").textContent())).toContain("before, dotted");
  await page.keyboard.press("Control+z");
  await settled(page);
  expect(await answer(page)).toBe(first);
  expect(await box(page, "Ampere-hours of one block").inputValue()).toBe("280");
  await page.keyboard.press("Control+Shift+Z");
  await settled(page);
  expect(await answer(page)).toBe(second);
  await page.getByRole("button", { name: "Undo" }).click();
  await settled(page);
  expect(await answer(page)).toBe(first);
  expect(await page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
});

test("a wrong value is said beside its field, the last good picture stays and stands back", async () => {
  const { page } = await openExample(browser, ["plan", "run"]);
  const good = await answer(page);
  const ah = box(page, "Ampere-hours of one block");
  await ah.fill("90000");
  const sentence = page.locator("#plan p.wrong");
  await sentence.waitFor();
  expect(await sentence.count()).toBe(1);
  expect(await sentence.textContent()).toMatch(/A block is 90000 but must be a number from 1 to \d+ Ah/);
  expect(await ah.getAttribute("aria-invalid")).toBe("true");
  expect(await ah.getAttribute("aria-describedby")).toBe(await sentence.getAttribute("id"));
  expect(await answer(page)).toBe(good);
  const charge = page.locator(".strata path.charge");
  const opacity = () => charge.evaluate((path) => Number(getComputedStyle(path.parentElement!).opacity));
  await expect.poll(opacity).toBeCloseTo(0.4, 2);
  await ah.fill("28x");
  await page.locator("#plan").getByText('A block is "28x"').waitFor();
  await ah.fill("280");
  await settled(page);
  expect(await sentence.count()).toBe(0);
});

test("an instant is read by keyboard alone: quarters, six hours, the next night, both ends", async () => {
  const { page } = await openExample(browser, ["run"]);
  const run = await exampleRun();
  const { grid, nights } = run.prepared;
  const reader = page.getByRole("slider", { name: /Read an instant/ });
  const isThere = () => reader.evaluate((element) => element === document.activeElement);
  for (let tabs = 0; tabs < 400 && !(await isThere()); tabs++) await page.keyboard.press("Tab");
  expect(await isThere()).toBe(true);
  const outline = await reader.evaluate((element) => getComputedStyle(element).outlineWidth);
  expect(outline).toBe("3px");
  const words = async () => plain(await reader.getAttribute("aria-valuetext"));
  const clock = (minutes: number) => localMoment(grid, grid.startMs + minutes * 60_000).clock;
  await page.keyboard.press("Home");
  expect(await words()).toMatch(new RegExp(`^Thu 8 ${clock(0)}: charge ${Math.round(run.chargeShare[0]! * 100)} %`));
  await page.keyboard.press("ArrowRight");
  expect(await words()).toContain(`Thu 8 ${clock(15)}:`);
  expect(plain(await page.locator(".tag").textContent())).toBe(`Thu 8 ${clock(15)}`);
  await page.keyboard.press("Shift+ArrowRight");
  expect(await words()).toContain(`Thu 8 ${clock(375)}:`);
  await page.keyboard.press("n");
  const dusk = Math.round((nights[0]!.startMs - grid.startMs) / 900_000) * 15;
  expect(await words()).toContain(`Thu 8 ${clock(dusk)}:`);
  await page.keyboard.press("n");
  expect(await words()).toContain("Fri 9 ");
  await page.keyboard.press("End");
  expect(await words()).toContain(`charge ${Math.round(run.verdict.endShare * 100)} %`);
  expect(await page.locator("#run .reading line").count()).toBe(1);
});

test("hovering reads the instant under the pointer and leaving puts it away", async () => {
  const { page } = await openExample(browser, ["run"]);
  await page.locator("#run .reader").hover({ position: { x: 9 * 36, y: 60 } });
  expect(plain(await page.locator(".tag").textContent())).toBe("Fri 9 12:00");
  await page.mouse.move(5, 5);
  expect(await page.locator(".tag").count()).toBe(0);
});

test("the reserve moves by keys and by dragging, and the verdict follows", async () => {
  const { page } = await openExample(browser, ["plan", "run"]);
  const grip = page.getByRole("slider", { name: "Reserve" });
  await grip.focus();
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("PageUp");
  expect(await grip.getAttribute("aria-valuenow")).toBe("26");
  await expectVerdict(page, [{ at: "bank.reserveShare", to: 0.26 }]);
  const from = (await page.locator(".grips").boundingBox())!;
  await page.mouse.move(from.x + 7, from.y + 14);
  await page.mouse.down();
  await page.mouse.move(from.x + 7, from.y + 14 - 40, { steps: 8 });
  await page.mouse.up();
  const dragged = Number(await grip.getAttribute("aria-valuenow"));
  expect(dragged).toBeGreaterThan(40);
  await expectVerdict(page, [{ at: "bank.reserveShare", to: dragged / 100 }]);
  expect(await box(page, "Reserve, per cent of the bank").inputValue()).toBe(String(dragged));
});

test("three lights: the system's wish first, then the last choice", async () => {
  const { page } = await openExample(browser, ["run"], { colorScheme: "dark" });
  const light = () => page.evaluate(() => document.documentElement.dataset.light);
  expect(await light()).toBe("dusk");
  await page.getByRole("button", { name: "Light: Dusk" }).click();
  expect(await light()).toBe("red");
  const ink = await page.locator("h1").evaluate((h1) => getComputedStyle(h1).color);
  expect(ink).toBe("rgb(255, 58, 46)");
  await page.reload();
  await page.getByRole("button", { name: "Light: Red, dim" }).click();
  expect(await light()).toBe("day");
});

test("a phone keeps 9 px to the hour, scrolls in time, reads by scrubber and dragging, and changes by thumb", async () => {
  const { page } = await openExample(browser, ["forecast", "plan", "run"], {
    viewport: { width: 360, height: 740 },
    hasTouch: true,
  });
  expect(await page.locator("svg.strata").getAttribute("width")).toBe(String(96 * 9));
  const time = page.getByRole("slider", { name: "Time" });
  const scrollLeft = () => page.locator("#run .section-scroll").evaluate((element) => element.scrollLeft);
  await time.focus();
  await page.keyboard.press("Home");
  await page.keyboard.press("End");
  await expect.poll(scrollLeft).toBeGreaterThan(300);
  const tagOffset = await page
    .locator(".ruler-moving")
    .evaluate((element) => new DOMMatrix(getComputedStyle(element).transform).e);
  expect(-tagOffset).toBeCloseTo(await scrollLeft(), 0);
  const readout = async () => plain(await page.locator(".readout strong").textContent());
  const before = await readout();
  await page.getByRole("button", { name: "Earlier" }).click();
  expect(await readout()).not.toBe(before);
  const plot = (await page.locator("#run .section-scroll").boundingBox())!;
  await page.mouse.move(plot.x + 200, plot.y + 60);
  await page.mouse.down();
  await page.mouse.move(plot.x + 150, plot.y + 60, { steps: 5 });
  const dragged = await readout();
  await page.mouse.up();
  expect(dragged).not.toBe(before);
  const heading = async () => plain(await page.locator("h1").textContent());
  await allWorkedOut(page);
  const said = await heading();
  await page.getByRole("button", { name: "Change" }).click();
  await page.getByRole("button", { name: "More: Blocks side by side" }).click();
  await allWorkedOut(page);
  expect(await heading()).not.toBe(said);
});

test("typing is never held up, and the last of many edits is the one that is shown", async () => {
  const { page } = await openExample(browser, ["plan", "run"]);
  const ah = box(page, "Ampere-hours of one block");
  await ah.focus();
  for (let i = 0; i < 25; i++) await page.keyboard.press("ArrowUp");
  expect(await ah.inputValue()).toBe("530");
  const factor = 530 / 280;
  const grown = (value: number) => Number(value.toPrecision(6));
  await expectVerdict(page, [
    { at: "bank.blockAh", to: 530 },
    { at: "bank.internalResistanceOhm", to: grown(EXAMPLE.bank.internalResistanceOhm! / factor) },
    { at: "bank.chargingResistanceOhm", to: grown(EXAMPLE.bank.chargingResistanceOhm! / factor) },
    { at: "bank.maxChargeA", to: grown(EXAMPLE.bank.maxChargeA! * factor) },
    { at: "bank.maxDischargeA", to: grown(EXAMPLE.bank.maxDischargeA! * factor) },
  ]);
});

test("tables and files carry the same numbers as the picture", async () => {
  const { page } = await openExample(browser, ["run", "days"]);
  const run = await exampleRun();
  const save = async (entry: string, name: string) => {
    const downloading = page.waitForEvent("download");
    await page.locator(entry).getByRole("button", { name }).click();
    return (await savedBytes(await downloading)).toString("utf8");
  };
  expect(await save("#run", "CSV")).toBe(stepsCsv(runPicture(run)));
  expect((await save("#days", "CSV")).split("\n")).toHaveLength(run.days.length + 1);
  const svg = await save("#run", "SVG");
  expect(svg).toMatch(/^<svg [^>]*><title>[^<]*<\/title><style>[^<]*svg\{--/);
  const drawn = await page.context().newPage();
  await drawn.setContent(svg);
  expect(await drawn.locator("path.charge").evaluate((path) => getComputedStyle(path).stroke)).toBe("rgb(162, 54, 17)");
  await page.locator("#run").getByRole("button", { name: "Table" }).click();
  const first = page.locator("#run tbody tr").first();
  expect(plain(await first.textContent())).toContain(`Thu 8 10:00${(run.chargeShare[0]! * 100).toFixed(0)}`);
});
