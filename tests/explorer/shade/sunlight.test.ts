import { expect, test } from "vitest";
import { shadeVerdict } from "../../../engine/answers/shade/shadeWords.ts";
import { sunDays, usualDay } from "../../../engine/answers/shade/sunHours.ts";
import { AWAY, DARK, NIGHT, OPEN, PART, sunKind } from "../../../engine/answers/shade/sunKind.ts";
import { sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { COS_INCIDENCE, MEAN_SHARE, OUT_SHARE } from "../../../engine/array/slots.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { EXAMPLE, exampleRun } from "../exampleRun.ts";

const MEADOW = EXAMPLE.variants!.find((variant) => variant.id === "meadow")!.changes as Change[];

function light(changes: readonly Change[]) {
  const changed = applyChanges(EXAMPLE, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return sunlight(read.scenario)!;
}

test("the shares are the engine's own, bit for bit, wherever the sun strikes a panel that stands there", async () => {
  const found = light(MEADOW);
  const { prepared } = await exampleRun(MEADOW);
  expect(found.groups.map((group) => group.name)).toEqual(["Van roof", "Folding panels in the meadow"]);
  const seen = new Set<number>();
  for (const [g, group] of found.groups.entries()) {
    const { perStep, stride } = prepared.groups[g]!;
    for (let i = 0; i < found.steps; i++) {
      seen.add(group.kind[i]!);
      const strikes =
        prepared.sun.elevationDeg[i]! > 0 &&
        perStep[i * stride + COS_INCIDENCE]! > 0 &&
        perStep[i * stride + OUT_SHARE]! >= 0.5;
      expect(group.share[i]).toBe(strikes ? perStep[i * stride + MEAN_SHARE] : 0);
      expect(group.kind[i]! > AWAY).toBe(strikes);
      expect(group.kind[i] === NIGHT).toBe(!(prepared.sun.elevationDeg[i]! > 0));
    }
  }
  expect([...seen].sort()).toEqual([NIGHT, AWAY, DARK, PART, OPEN]);
});

test("a day's hours add up, and daylight is that of the sunrise equation", () => {
  const found = light(MEADOW);
  // cos(half day) = (sin h0 − sin φ sin δ) ÷ (cos φ cos δ): φ 46.93°, δ −6.4° on 9 and 10 October (almanac, from memory),
  // h0 −0.484°, where the engine's sun has its centre on the horizon. A day is counted in steps of ten minutes.
  const rad = Math.PI / 180;
  const half = Math.acos(
    (Math.sin(-0.484 * rad) - Math.sin(46.93 * rad) * Math.sin(-6.4 * rad)) /
      (Math.cos(46.93 * rad) * Math.cos(-6.4 * rad)),
  );
  for (const group of found.groups) {
    const days = sunDays(found, group);
    expect(days.map((day) => day.isWhole)).toEqual([false, true, true, false]);
    for (const day of days) {
      expect(day.openH + day.partH + day.darkH + day.awayH).toBeCloseTo(day.upH, 9);
      expect(day.partWorthH).toBeLessThanOrEqual(day.partH);
    }
    const partH = [...group.share].reduce((sum, share, i) => sum + (group.kind[i] === PART ? share / 6 : 0), 0);
    expect(days.reduce((sum, day) => sum + day.partWorthH, 0)).toBeCloseTo(partH, 9);
    const usual = usualDay(days);
    expect(usual.isMean).toBe(true);
    expect(Math.abs(usual.upH - (2 * half) / rad / 15)).toBeLessThan(1 / 6);
    expect(usual.openH).toBeCloseTo((days[1]!.openH + days[2]!.openH) / 2, 12);
  }
});

test("with nothing standing about all of the day is open sun, and a skyline takes its ends", () => {
  const bare = EXAMPLE.obstacles!.map((obstacle): Change => ({ at: `obstacles.${obstacle.id}`, remove: true }));
  const free = light(bare);
  const all = usualDay(sunDays(free, free.groups[0]!));
  expect(all.openH).toBeCloseTo(all.upH, 9);
  const hills = light(bare.filter((change) => change.at !== "obstacles.hills"));
  const cut = usualDay(sunDays(hills, hills.groups[0]!));
  expect(cut.openH + cut.darkH).toBeCloseTo(cut.upH, 9);
  // The hills stand 5 to 7 degrees high where the sun rises and sets, and it climbs about 10 degrees an hour there.
  expect(cut.darkH).toBeGreaterThan(0.7);
  expect(cut.darkH).toBeLessThan(1.7);
});

test("a short event is summed up instead of averaged, and says so", () => {
  const found = light([{ at: "time.end", to: "2026-10-08T16:00" }]);
  expect(usualDay(sunDays(found, found.groups[0]!)).isMean).toBe(false);
  expect(shadeVerdict(found)).toContain("in the event's 6.0\u202fh of daylight");
});

test("groups without modules are left out, and without any there is a sentence", () => {
  const found = light([{ at: "panels.roof.count", to: 0 }]);
  expect(found.groups).toEqual([]);
  expect(shadeVerdict(found)).toContain("No panels");
});

test("the verdict names each group with its own hours", () => {
  const found = light(MEADOW);
  const said = shadeVerdict(found);
  const meadow = usualDay(sunDays(found, found.groups[1]!));
  expect(said).toMatch(/^Van roof: .* on an average day of 11\.\d\u202fh, leaves and edges let through /);
  expect(said).toContain(`; Folding panels in the meadow: ${meadow.openH.toFixed(1)}\u202fh of open sun`);
});

test("shares are named at their limits", () => {
  expect([0, 0.049, 0.05, 0.899, 0.9, 1].map(sunKind)).toEqual([DARK, DARK, PART, PART, OPEN, OPEN]);
});
