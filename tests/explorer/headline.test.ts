import { expect, test } from "vitest";
import type { Series } from "../../engine/answers/forecast/forecastLayout.ts";
import { forecastHeadline, mainReason, type PlanFacts } from "../../engine/answers/forecast/headline.ts";
import type { OddsPicture } from "../../engine/answers/forecast/oddsPicture.ts";
import { wilson } from "../../engine/odds/wilson.ts";
import { rulerOf } from "../../engine/ruler/rulerOf.ts";

const RULER = rulerOf(["2026-10-08", "2026-10-09", "2026-10-10", "2026-10-11"], "Europe/Vienna");
const MOMENT = { date: "2026-10-10", clock: "18:00", words: "Sat 10 Oct 18:00" };
const FAILS = { from: MOMENT, to: { ...MOMENT, clock: "21:00" }, shareOfFailures: 0.6, by: "reserve" as const };

/** A picture with these odds of 1000 and median of the lowest charge, over a reserve of 20 %. */
function picture(holds: number, lowest: number, fails: object | null = FAILS): OddsPicture {
  const report = {
    holds: wilson(holds, 1000),
    goesWithout: wilson(0, 1000),
    failsMostly: fails,
    lowestShare: { p50: lowest },
    reserveShare: 0.2,
    solarWh: { p50: 1160 },
    demandWh: { p50: 4610 },
  };
  const startMs = Date.UTC(2026, 9, 8, 8);
  const steps = 468;
  return { ruler: RULER, startMs, stepMs: 600_000, steps, report } as unknown as OddsPicture;
}

const series = (id: string, look: Series["look"], of: OddsPicture): Series => ({ id, name: id, look, picture: of });
const said = (words: readonly { readonly text: string }[]) => words.map(({ text }) => text).join("");

/** What shade takes of 2,000 Wh, and what stands about. */
const facts = (shadeLossWh: number, obstacles: readonly object[] = []): PlanFacts =>
  ({
    ledger: { harvest: [{ unshadedWh: 2000, shadeLossWh }], wantedWh: 4610 },
    document: { obstacles },
  }) as unknown as PlanFacts;
const TREES = [{ kind: "tree" }, { kind: "tree" }, { kind: "horizon" }];

test("a plan that misses says outcome, when first and by how much, why, and what does better, in that order", () => {
  const words = forecastHeadline(
    [series("Meadow", "first", picture(890, 0.57, null)), series("Roof", "second", picture(120, 0.06))],
    "Roof",
    facts(1250, TREES),
  );
  expect(said(words)).toBe(
    "Roof: the bank holds to Sun 16:00 in 12 of 100 skies. It fails first on Sat 18:00–21:00, by 14\u202fpoints or more in half the skies: the trees take six tenths of the sun. Meadow: 89.",
  );
  // Each name in the stroke of its own line.
  expect(words.filter(({ as }) => as === "first" || as === "second").map(({ text, as }) => [text, as])).toEqual([
    ["Roof", "second"],
    ["Meadow", "first"],
  ]);
});

test("a plan that is safe has nothing to explain", () => {
  const words = forecastHeadline([series("Plan", "first", picture(960, 0.4))], "Plan", facts(1250, TREES));
  expect(said(words)).toBe("Plan: the bank holds to Sun 16:00 in 96 of 100 skies.");
});

test("more than half hold: no half of the skies misses by anything", () => {
  const words = forecastHeadline([series("Plan", "first", picture(700, 0.3))], "Plan", null);
  expect(said(words)).toBe("Plan: the bank holds to Sun 16:00 in 70 of 100 skies. It fails first on Sat 18:00–21:00.");
});

test.each([
  [
    "little shade",
    picture(120, 0.06),
    facts(500, TREES),
    "the sun brings 1.16\u202fkWh of the 4.61\u202fkWh that the loads want",
  ],
  ["one tree", picture(120, 0.06), facts(1000, [{ kind: "tree" }]), "the tree takes half of the sun"],
  ["a shed", picture(120, 0.06), facts(800, [{ kind: "box" }]), "what stands about takes four tenths of the sun"],
  ["hills", picture(120, 0.06), facts(1900, [{ kind: "horizon" }]), "the skyline takes all of the sun"],
  [
    "loads cut off",
    picture(120, 0.6, { ...FAILS, by: "dark" }),
    facts(1900, TREES),
    "the bank is short of current or volts, or too cold, and not of charge",
  ],
])("the main reason: %s", (_, of, known, reason) => {
  expect(mainReason(of, known)).toBe(reason);
});
