import { expect, test } from "vitest";
import { daysCsv } from "../../engine/answers/days/dayRows.ts";
import { hourHeads, hourRows } from "../../engine/answers/run/hourRows.ts";
import { incomingParts, loadParts } from "../../engine/answers/run/parts.ts";
import { readingAt } from "../../engine/answers/run/readingAt.ts";
import { stepsCsv } from "../../engine/answers/run/runCsv.ts";
import { runPicture } from "../../engine/answers/run/runPicture.ts";
import { strataLayout } from "../../engine/answers/run/strataLayout.ts";
import { nextNight, snapReading } from "../../engine/ruler/readingTime.ts";
import { changesOf, planOf } from "../../explorer/parts/plan.ts";
import { EXAMPLE, exampleRun, variantChanges } from "./exampleRun.ts";

const base = await exampleRun();
const picture = runPicture(base);
const wide = runPicture(
  await exampleRun([
    ...variantChanges("meadow"),
    ...changesOf(EXAMPLE, { ...planOf(EXAMPLE), inParallel: 1, sky: "fair" }),
  ]),
);

// The engine rounds what the loads want to a grid of 2^-20 W (1e-6 W) before it steps; the parts are summed unrounded.
const GRID_W = 1e-6;

test("the parts of the load add up to what the engine served, step by step", () => {
  for (let i = 0; i < picture.steps; i++) {
    const sumW = picture.alwaysW[i]! + picture.usedW[i]! + picture.sendingW[i]!;
    expect(Math.abs(sumW - base.record.servedW[i]!)).toBeLessThan(GRID_W);
  }
  const wh = loadParts(picture).reduce((sum, part) => sum + part.wh, 0);
  const wantedWh = base.days.reduce((sum, day) => sum + day.demandWh, 0);
  expect(Math.abs(wh - wantedWh)).toBeLessThan(GRID_W * 78);
});

test("sun and loads are drawn on one scale, so that equal areas are equal energy", () => {
  for (const run of [picture, wide]) {
    const { incoming, load } = strataLayout(run, 200);
    const pxPerW = (stratum: typeof load) => stratum.y(0) - stratum.y(1);
    expect(pxPerW(incoming)).toBeCloseTo(pxPerW(load), 9);
    expect(load.top).toBeGreaterThan(incoming.bottom);
  }
});

test("what comes in is what the panels gave; shade and spill are the engine's", () => {
  const { stack, spilled, shade } = incomingParts(wide);
  expect(stack.map((part) => part.name)).toEqual(["Van roof", "meadow"]);
  const sum = (of: (day: (typeof wide.days)[number]) => number) => wide.days.reduce((total, day) => total + of(day), 0);
  expect(stack[0]!.wh + stack[1]!.wh).toBeCloseTo(
    sum((day) => day.solarWh),
    6,
  );
  expect(spilled.wh).toBeCloseTo(
    sum((day) => day.spilledWh),
    6,
  );
  expect(shade.wh).toBeCloseTo(
    sum((day) => day.shadeLossWh),
    6,
  );
});

test("night is known for the whole ruler and not only for the event", () => {
  const { ruler, nights } = picture;
  expect(nights[0]!.startMs).toBe(ruler.startMs);
  expect(nights.at(-1)!.endMs).toBe(ruler.endMs);
  const inside = base.prepared.nights[0]!;
  expect(Math.abs(nights[1]!.startMs - inside.startMs)).toBeLessThan(1000);
});

test("a reading is the engine's number at that instant, and says so in one sentence", () => {
  const ms = base.verdict.lowestMs;
  const reading = readingAt(picture, ms);
  expect(reading.chargeShare).toBeCloseTo(base.verdict.lowestShare, 9);
  expect(reading.words).toContain(`charge ${Math.round(base.verdict.lowestShare * 100)}`);
  const middle = readingAt(picture, picture.startMs + 2.5 * picture.stepMs);
  expect(middle.chargeShare).toBeCloseTo((base.chargeShare[2]! + base.chargeShare[3]!) / 2, 12);
  expect(Math.abs(middle.servedW - base.record.servedW[2]!)).toBeLessThan(GRID_W);
});

test("readings stay inside the event, on quarters of an hour, and N finds the next dusk", () => {
  const endMs = picture.startMs + picture.steps * picture.stepMs;
  expect(snapReading(picture, 0)).toBe(picture.startMs);
  expect(snapReading(picture, endMs + 1e9)).toBe(endMs);
  expect(snapReading(picture, picture.startMs + 8 * 60_000)).toBe(picture.startMs + 15 * 60_000);
  const dusk = nextNight(picture, picture.startMs);
  expect(Math.abs(dusk - base.prepared.nights[0]!.startMs)).toBeLessThanOrEqual(7.5 * 60_000);
  expect(nextNight(picture, endMs)).toBe(endMs);
});

test("the tables carry every step and every day", () => {
  const lines = stepsCsv(picture).trimEnd().split("\n");
  expect(lines).toHaveLength(picture.steps + 1);
  expect(lines[1]).toMatch(/^2026-10-08T10:00\+02:00,2026-10-08T08:00:00.000Z,1,268\.8,/); // full: 0.96 of 280 Ah
  expect(daysCsv(picture).split("\n")).toHaveLength(picture.days.length + 1);
  const rows = hourRows(picture);
  const column = (head: string) => hourHeads(picture).indexOf(head);
  expect(rows).toHaveLength(78);
  expect(rows[0]!.figures).toHaveLength(hourHeads(picture).length);
  const wh = rows.reduce((sum, row) => sum + Number(row.figures[column("Van roof, W")]), 0);
  const solarWh = base.days.reduce((sum, day) => sum + day.solarWh, 0);
  expect(Math.abs(wh - solarWh)).toBeLessThan(0.5 * rows.length); // each hour is set as a whole number of watts
});

test("a station that drops out has its volts drawn, apart from the rest, and 0 while nobody is at it", async () => {
  expect(picture.radios).toEqual([]);
  const thin = await exampleRun([
    { at: "stations.hf-run.feed.cable", to: { awg: "16", oneWayM: 6 } },
    { at: "stations.hf-run.transmitW", to: 100 },
  ]);
  const { radios, ...rest } = runPicture(thin);
  expect(radios.map((radio) => radio.name)).toEqual(["HF run position"]);
  expect(Math.min(...radios[0]!.volts.filter((volts) => volts > 0))).toBeCloseTo(thin.verdict.radios[0]!.lowestV!, 9);
  expect(strataLayout({ ...rest, radios }, 200).volts).not.toBeNull();
  const night = Math.floor((Date.UTC(2026, 9, 9, 1) - picture.startMs) / picture.stepMs);
  expect(radios[0]!.volts[night]).toBe(0);
});

test("a charger counts as coming in but neither as sun nor in shade", async () => {
  const mains = {
    id: "mains",
    name: "Mains",
    kind: "mains",
    chargerA: 20,
    available: [{ from: "08:00", to: "10:00" }],
  };
  const charged = runPicture(await exampleRun([{ at: "sources", to: [mains] }]));
  const { stack, shade } = incomingParts(charged);
  expect(stack.map((part) => part.look)).toEqual(["sun-solid", "source"]);
  expect(stack[1]!.wh).toBeCloseTo(
    charged.days.reduce((sum, day) => sum + day.sourceWh, 0),
    6,
  );
  const step = charged.incoming[1]!.powerW.findIndex((watts) => watts > 0);
  expect(shade.lowW(step)).toBe(charged.incoming[0]!.powerW[step]);
});
