import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { nextNormal, openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { record, recordSkipped } from "../record.ts";
import { againstRecord, type RecordFigures } from "./againstRecord.ts";
import { type ClearnessYear, clearnessStatistics, FIGURES, figuresOf } from "./clearnessStatistics.ts";
import { drawnYears, YEAR_MONTHS } from "./drawnYears.ts";
import { longRecords } from "./longRecords.ts";
import { positionAlone } from "./positionAlone.ts";

interface StoredFigures extends RecordFigures {
  id: string;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number | null;
}
const stored = JSON.parse(readFileSync(new URL("../data/daily-clearness.json", import.meta.url), "utf8")) as {
  figures: string[];
  records: StoredFigures[];
};
const SD_WITHIN = FIGURES.length;
const at = (name: (typeof FIGURES)[number]) => FIGURES.indexOf(name);

const MEMBERS = 200;
const SOURCE =
  "12 long records (KNMI, GeoSphere Austria, Met Éireann, INMET, Harvard Forest LTER; AZMET and other agricultural networks; NASA POWER): monthly statistics, see tests/truth/data/daily-clearness.json";

/** The generator's own inputs, read off the record: mean, spread within months, lag-1 correlation. */
function climateOf({ months }: RecordFigures) {
  return {
    kt: months.map((month) => month?.[at("mean")] ?? 0.4),
    sd: months.map((month) => month?.[SD_WITHIN] ?? 0.15),
    r1: months.map((month) => Math.max(0, month?.[at("r1")] ?? 0.3)),
  };
}

/** What is commonly done instead: a normal first-order autoregression with the same mean, spread and correlation. */
function plainYears({ months }: RecordFigures): ClearnessYear[] {
  const state = new Uint32Array(STREAM_WORDS);
  const words = seedWords("plain");
  return Array.from({ length: MEMBERS }, (_, member) => {
    openStream(state, words, member, "sky");
    let z = nextNormal(state);
    const kt = Float64Array.from(YEAR_MONTHS, (m) => {
      const r1 = months[m]?.[at("r1")] ?? 0.3;
      z = r1 * z + Math.sqrt(1 - r1 * r1) * nextNormal(state);
      return Math.max(0.01, Math.min(0.9, (months[m]?.[at("mean")] ?? 0.4) + (months[m]?.[at("sd")] ?? 0.15) * z));
    });
    return { kt, month: YEAR_MONTHS };
  });
}

function overRecords(yearsOf: (one: StoredFigures) => ClearnessYear[]): number[] {
  const rows = stored.records.map((one) => againstRecord(yearsOf(one), one).inErrors);
  return FIGURES.map((_, k) => Math.sqrt(rows.reduce((sum, row) => sum + row[k]! ** 2, 0) / rows.length));
}
const drawn = overRecords((one) => drawnYears(climateOf(one), MEMBERS, "truth"));
const plain = overRecords(plainYears);
const months = stored.records.reduce((sum, one) => sum + one.months.filter((month) => month !== null).length, 0);

// Tolerances in sampling errors of the record (years drawn with replacement); 1 is as good as the record can tell.
const groups: [what: string, names: (typeof FIGURES)[number][], tolerance: number, why: string][] = [
  ["monthly mean and spread", ["mean", "sd"], 0.95, "both are given to the generator"],
  ["monthly median", ["q50"], 1.07, "within what the record can tell"],
  ["quantiles 5, 25, 75 %", ["q05", "q25", "q75"], 1.6, "one shape of distribution serves all climates"],
  [
    "quantile 95 %",
    ["q95"],
    3.3,
    "brightest days differ by 0.02 with the air of the place (0.04 over a rain forest), and records know them to 0.005",
  ],
  ["lag-1 correlation", ["r1"], 0.7, "given to the generator"],
  [
    "lag-2 and lag-3 correlations",
    ["r2", "r3"],
    2.1,
    "one law of memory for all climates; two records remember longer",
  ],
  ["spread of monthly means between years", ["sdBetween"], 1.8, "no law by site is known; given to nobody"],
  ["days, pairs and triples under Kt 0.35", ["p1", "p2", "p3"], 1.2, "within what the record can tell"],
  ["5 % worst means of 3, 5 and 7 days", ["m3p5", "m5p5", "m7p5"], 1.4, "Kt within 0.02 at every record"],
];
test.each(groups)("drawn years have the records' %s", (what, names, tolerance, why) => {
  const worst = Math.max(...names.map((name) => drawn[at(name)]!));
  record({
    what: `drawn daily clearness, ${what}`,
    source: SOURCE,
    tolerance,
    why,
    worst,
    unit: "sampling errors",
    n: months * names.length,
  });
  expect(months).toBeGreaterThan(90);
  expect(worst).toBeLessThan(tolerance);
});

test("a plain normal autoregression misses what the generator keeps", () => {
  // Were the generator no better than this, there would be no reason for it.
  for (const name of ["q05", "q25", "q50", "q95", "p1", "p2", "m3p5"] as const) {
    expect(drawn[at(name)]!, name).toBeLessThan(0.85 * plain[at(name)]!);
  }
  expect(drawn[at("r3")]!).toBeLessThan(0.85 * plain[at("r3")]!);
});

// What a user gets: the same generator fed by the tables that ship, read off at the record's place, all within 30 km of it left out. The record's own mean is not
// known there, so the error is that of the tables (0.025 to 0.055 in a month's mean Kt, see the climate tests).
test("fed by the climate tables, the worst three-day means stay within the tables' own error", async () => {
  const tables = await loadClimateTables();
  const off = stored.records.map(
    (one) => againstRecord(drawnYears(positionAlone(tables, one), MEMBERS, "tables"), one).difference,
  );
  const worstOf = (name: (typeof FIGURES)[number]) => Math.max(...off.map((row) => Math.abs(row[at(name)]!)));
  const row = { source: SOURCE, why: "the tables know a month's mean to 0.025 to 0.055", n: stored.records.length };
  record({
    ...row,
    what: "5 % worst three-day Kt drawn from the climate tables, mean over months, worst of 12 places",
    tolerance: 0.04,
    worst: worstOf("m3p5"),
    unit: "",
  });
  record({
    ...row,
    what: "probability of three days under Kt 0.35 drawn from the climate tables, mean over months, worst of 12 places",
    tolerance: 0.05,
    worst: worstOf("p3"),
    unit: "",
  });
  expect(worstOf("m3p5")).toBeLessThan(0.04);
  expect(worstOf("p3")).toBeLessThan(0.05);
});

const records = longRecords();
if (records.length === 0) {
  const skipped = "no long records beside this checkout";
  recordSkipped({ what: "kept statistics of long records against the records", source: SOURCE, skipped });
  console.warn(`Skipped: the kept statistics are not worked out again (${skipped}).`);
}
test.skipIf(records.length === 0)("the kept statistics are those of the records", () => {
  let worst = 0;
  for (const one of records) {
    // Records that came later than the statistics have none here.
    const kept = stored.records.find(({ id }) => id === one.id);
    if (kept === undefined) continue;
    clearnessStatistics(one.years).forEach((month, m) => {
      expect(month === null).toBe(kept.months[m] === null);
      if (month === null) return;
      figuresOf(month).forEach((value, k) => {
        worst = Math.max(worst, Math.abs(value - kept.months[m]![k]!));
      });
    });
  }
  record({
    what: "kept statistics of long records against the records",
    source: SOURCE,
    tolerance: 0.00006,
    why: "kept to four decimals",
    worst,
    unit: "",
    n: records.length * 12 * FIGURES.length,
  });
  expect(stored.figures).toEqual([...FIGURES]);
  expect(worst).toBeLessThan(0.00006);
});
