import { describe, expect, test } from "vitest";
import { poolOr } from "../../../engine/library/poolOr.ts";
import { ledger } from "../../../engine/run/ledger.ts";
import { trace } from "../../../engine/run/trace.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import { runSpots } from "../../../engine/spots/runSpots.ts";
import { spotChanges } from "../../../engine/spots/spotChanges.ts";
import { spotAt } from "../../../engine/spots/spotGrid.ts";
import { spotsPlan } from "../../../engine/spots/spotsPlan.ts";
import type { SpotFigure, SpotsReport } from "../../../engine/spots/spotsReport.ts";
import { read, SITE } from "./spotsSite.ts";

const scenario = read(SITE);

async function looked(id: string) {
  const ready = spotsPlan(scenario, id);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const early: SpotsReport[] = [];
  const works = { pool: poolOr(undefined), surroundings: {}, early: (known: SpotsReport) => early.push(known) };
  return { plan: ready.plan, early: early, report: await runSpots(ready.plan, works) };
}

/** What a run of the scenario made of a spot offers, Wh over the event. */
function runThere(id: string, spot: SpotFigure): number {
  const g = scenario.panels.findIndex((group) => group.id === id);
  const changed = applyChanges(SITE, spotChanges(scenario.panels[g]!, spot, SITE));
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const run = trace(read(changed.document));
  if (!run.ok) throw new Error(run.problems[0]!.message);
  return ledger(run.trace).harvest[g]!.offeredWh;
}

describe("panels that are carried", async () => {
  const { plan, early, report } = await looked("carried");
  const { grid, dayWh, here, best, asGood, lead } = report;
  const spots = dayWh.map((wh, k) => ({ ...spotAt(grid, k), wh, leadM: plan.lead.at(spotAt(grid, k)) }));
  const within = spots.filter((spot) => spot.leadM <= lead.statedM && !plan.isTaken(spot));

  test("the spots that are named give what runs of the scenarios made of them give", () => {
    for (const spot of [here, best, asGood]) expect(spot.eventWh).toBeCloseTo(runThere("carried", spot), 6);
    expect(here).toMatchObject({ eastM: 0, northM: 6, leadM: 7 });
  });

  test("the best is the most of all that the lead reaches and nothing stands on; as good is the nearest within 1 %", () => {
    const most = Math.max(...within.map(({ wh }) => wh));
    expect(best.dayWh).toBeGreaterThan(1.5 * here.dayWh);
    expect(Math.abs(best.dayWh / most - 1)).toBeLessThan(0.004);
    const awayM = (spot: { eastM: number; northM: number }) => Math.hypot(spot.eastM, spot.northM);
    const nearest = Math.min(...within.filter(({ wh }) => wh >= 0.99 * most).map(awayM));
    expect(awayM(asGood)).toBeCloseTo(nearest, 9);
    expect(asGood.leadM).toBeLessThan(best.leadM + 1e-9);
  });

  test("a first look is at every fourth spot of every fourth row, and has the same figures", () => {
    const [first] = early;
    expect(first!.isCoarse).toBe(true);
    expect(first!.grid.stepM).toBe(4 * grid.stepM);
    for (const [k, wh] of first!.dayWh.entries()) {
      const at = spotAt(first!.grid, k);
      expect(wh).toBe(spots.find((spot) => Math.hypot(spot.eastM - at.eastM, spot.northM - at.northM) < 1e-6)!.wh);
    }
    expect(first!.here.dayWh).toBe(here.dayWh);
  });

  test("no more than 60 × 40 spots, 1 to 2 m apart, and where the panels stand is one of them", () => {
    expect(spots.length).toBeLessThanOrEqual(2400);
    expect(grid.stepM).toBeGreaterThanOrEqual(1);
    expect(grid.stepM).toBeLessThanOrEqual(2);
    expect(spots.some(({ eastM, northM }) => Math.hypot(eastM, northM - 6) < 1e-9)).toBe(true);
  });
});

test("a roof takes its lead along, and is looked at over its heading, north to north", async () => {
  const { report } = await looked("roof");
  const { heading, here, lead } = report;
  expect(lead.reachM).toBeNull();
  expect(report.beyond).toBeNull();
  expect(heading!.headingDeg[0]).toBe(0);
  expect(heading!.headingDeg.at(-1)).toBe(360);
  expect(heading!.flatWh.at(-1)).toBe(heading!.flatWh[0]);
  expect(heading!.flatWh[heading!.headingDeg.indexOf(heading!.nowDeg)]).toBe(here.dayWh);
  // Raised towards the sun a roof brings more than flat, and away from it less.
  const at = (deg: number) => heading!.tiltedWh[heading!.headingDeg.indexOf(deg)]!;
  expect(at(180)).toBeGreaterThan(at(0));
  const turned = read({
    ...SITE,
    panels: SITE.panels!.map((group) =>
      group.id === "roof" ? { ...group, mount: { kind: "fixed", tiltDeg: 15, azimuthDeg: 90 } } : group,
    ),
  });
  const run = trace(turned);
  if (!run.ok) throw new Error(run.problems[0]!.message);
  expect(at(90)).toBeCloseTo(run.trace.days[0]!.groupWh[1]!, 6);
});

test("a group that is not there is refused with those that are", () => {
  const none = spotsPlan(scenario, "kettle");
  expect(none).toMatchObject({ ok: false });
  expect(!none.ok && none.problems[0]!.message).toBe(
    'There is no panel group "kettle" with panels in this scenario; its groups are carried, roof.',
  );
  const bare = spotsPlan({ ...scenario, panels: [] }, "roof");
  expect(!bare.ok && bare.problems[0]!.message).toContain("has no panels that could be put anywhere");
});
