import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { record, recordSkipped } from "../record.ts";
import { type HeldPlan, holdsReliability } from "./holdsReliability.ts";
import { longRecords } from "./longRecords.ts";
import { ownClimate, positionAlone } from "./positionAlone.ts";
import {
  CLASSES,
  cameUnder,
  type Fed,
  heldByOdds,
  type KeptReliability,
  overRecords,
  RELIABILITY_MEMBERS,
} from "./reliabilityTable.ts";
import { STATED, windowReliability } from "./windowReliability.ts";

const kept = JSON.parse(readFileSync(new URL("../data/reliability.json", import.meta.url), "utf8")) as KeptReliability;
const SOURCE =
  "12 long records of daily clearness on four continents (KNMI, GeoSphere Austria, Met Éireann, INMET, Harvard Forest LTER, AZMET, NASA POWER and others), 1967 to 2024";
/** Fewer plans than this in a bin say too little. */
const FEWEST_PLANS = 10;
const inHundred = (share: number) => 100 * share;

/** How far the shares that came are from those stated, over all records and seasons, the worst of five. */
function off(fed: Fed): number {
  const came = cameUnder(overRecords(kept, fed));
  return Math.max(...STATED.map((stated, k) => Math.abs(inHundred(came[k]! - stated))));
}

test.each([
  ["own", "by the site's own monthly figures", 2.5, "one shape and one memory for all climates"],
  ["position", "by the position alone", 4, "the climate's own error is drawn somewhat wide"],
] as const)(
  "of four days running, fed %s, as many are duller than stated as are stated",
  (fed, how, tolerance, why) => {
    const windows = overRecords(kept, fed).reduce((sum, one) => sum + one.windows, 0);
    record({
      what: `four-day windows under the stated 10, 25, 50, 75, 90 % of members, fed ${how}, worst of five`,
      source: SOURCE,
      tolerance,
      why,
      worst: off(fed),
      unit: "of 100",
      n: windows,
    });
    expect(windows).toBeGreaterThan(80_000);
    expect(off(fed)).toBeLessThan(tolerance);
  },
);

test("the members' lowest tenth holds a tenth, in each season of each class of record", () => {
  const lowest = (fed: Fed) =>
    CLASSES.flatMap(({ ids }) =>
      overRecords(kept, fed, ids).map(({ windows, under }) => inHundred(under[0]! / windows)),
    );
  const within = (fed: Fed) => {
    const shares = lowest(fed);
    return Math.max(...shares.map((share) => Math.abs(share - 10)));
  };
  const row = { source: SOURCE, unit: "of 100", n: CLASSES.length * 4 };
  record({
    ...row,
    what: "four-day windows under the lowest tenth, each season of four classes, fed by the site's own figures, farthest from 10",
    tolerance: 3,
    why: "7 to 13 was asked for",
    worst: within("own"),
  });
  record({
    ...row,
    what: "the same fed by the position alone",
    tolerance: 6,
    why: "7 to 13 was asked for; where the grid is too dull (snow in Saskatchewan, dry summers) fewer windows fall under it",
    worst: within("position"),
  });
  expect(within("own")).toBeLessThan(3);
  expect(within("position")).toBeLessThan(6);
  // Nowhere does the cautious tenth come much more often than it says: that is the side that strands people.
  expect(Math.max(...lowest("position"))).toBeLessThan(13);
});

test("plans hold as often as their odds say, run through the years of the records", () => {
  for (const [fed, how, tolerance] of [
    ["plansByOwn", "the site's own figures", 8],
    ["plansByPosition", "the position alone", 9],
  ] as const) {
    const bins = heldByOdds(kept.records.flatMap((one) => one[fed])).filter(({ plans }) => plans >= FEWEST_PLANS);
    const worst = Math.max(...bins.map(({ stated, held }) => Math.abs(inHundred(stated - held))));
    record({
      what: `plans with odds of 5 to 95, odds from ${how}, against the years in which they held, worst of the bins that hold ten plans`,
      source: SOURCE,
      tolerance,
      why: "a bin holds some ten plans of ten to fifty years each, which know a share to 3 to 5 of 100",
      worst,
      unit: "of 100",
      n: bins.reduce((sum, bin) => sum + bin.years, 0),
    });
    expect(bins.length).toBeGreaterThan(3);
    expect(worst).toBeLessThan(tolerance);
  }
});

const records = longRecords();
if (records.length === 0) {
  const skipped = "no long records beside this checkout";
  recordSkipped({ what: "kept counts of four-day windows against the records", source: SOURCE, skipped });
  console.warn(`Skipped: the kept counts of windows are not worked out again (${skipped}).`);
}
test.skipIf(records.length === 0)(
  "the kept counts are what the engine and the records give",
  async () => {
    const tables = await loadClimateTables();
    let differ = 0;
    let windows = 0;
    for (const one of records.filter(({ id }) => ["br-manaus", "us-ma-harvard-forest"].includes(id))) {
      const found = kept.records.find(({ id }) => id === one.id)!;
      const alone = positionAlone(tables, one);
      const { ktRms } = alone.provenance;
      const again = {
        position: windowReliability(alone, one, one.years, RELIABILITY_MEMBERS, ktRms),
        own: windowReliability(ownClimate(one), one, one.years, RELIABILITY_MEMBERS, 0),
      };
      for (const fed of ["position", "own"] as const)
        again[fed].forEach(({ windows: count, under }, season) => {
          windows += count;
          expect(count).toBe(found[fed][season]!.windows);
          under.forEach((number, k) => {
            differ += Math.abs(number - found[fed][season]!.under[k]!);
          });
        });
      // Plans of one record, which are many runs.
      if (one.id === "br-manaus") {
        const mean = (plans: readonly HeldPlan[]) =>
          plans.reduce((sum, { held }) => sum + held, 0) / plans.reduce((sum, { years }) => sum + years, 0);
        const again = await holdsReliability(one, ownClimate(one), 0);
        expect(Math.abs(mean(again) - mean(found.plansByOwn))).toBeLessThan(0.02);
      }
    }
    record({
      what: "kept counts of four-day windows against the records, two of them worked out again",
      source: SOURCE,
      tolerance: 0.5,
      why: "the same code; run docs/fits/climate.ts write after a change of the generator",
      worst: (100 * differ) / windows,
      unit: "of 100",
      n: windows,
    });
    expect((100 * differ) / windows).toBeLessThan(0.5);
  },
  120_000,
);
