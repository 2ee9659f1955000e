/**
 * `npx tsx docs/fits/dailyClearness.ts`: the daily generator against long records, next to a plain normal first-order
 * autoregression with the same monthly mean, spread and lag-1 correlation. Needs the records beside the checkout.
 * Add `write` to rewrite tests/truth/data/daily-clearness.json, the statistics that may be kept in the repository.
 */
import { writeFileSync } from "node:fs";
import { nextNormal, nextUnit, openStream, seedWords } from "../../engine/chance/stream.ts";
import { climateAt } from "../../engine/place/climateAt.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import type { MonthlyClearness } from "../../engine/sky/dailyClearness.ts";
import { againstRecord } from "../../tests/truth/climate/againstRecord.ts";
import {
  type ClearnessStatistics,
  type ClearnessYear,
  clearnessStatistics,
  FIGURES,
  figuresOf,
} from "../../tests/truth/climate/clearnessStatistics.ts";
import { drawnYears, YEAR_MONTHS } from "../../tests/truth/climate/drawnYears.ts";
import { longRecords } from "../../tests/truth/climate/longRecords.ts";
import { bootstrapErrors } from "./bootstrapErrors.ts";

const tables = await loadClimateTables();
const MEMBERS = 400;
const BOOTSTRAP = 100;

/** A month without statistics (polar night) borrows figures; it is not compared. */
export function climateOf(months: readonly (ClearnessStatistics | null)[]): MonthlyClearness {
  return {
    kt: months.map((month) => month?.mean ?? 0.4),
    sd: months.map((month) => month?.sdWithin ?? 0.15),
    r1: months.map((month) => Math.max(0, month?.r[0] ?? 0.3)),
  };
}

function plainYears(months: readonly (ClearnessStatistics | null)[], members: number): ClearnessYear[] {
  const state = new Uint32Array(4);
  const words = seedWords("plain");
  return Array.from({ length: members }, (_, member) => {
    openStream(state, words, member, "sky");
    let z = nextNormal(state);
    const kt = Float64Array.from(YEAR_MONTHS, (m) => {
      const r = months[m]?.r[0] ?? 0.3;
      z = r * z + Math.sqrt(1 - r * r) * nextNormal(state);
      return Math.max(0.01, Math.min(0.9, (months[m]?.mean ?? 0.4) + (months[m]?.sd ?? 0.15) * z));
    });
    return { kt, month: YEAR_MONTHS };
  });
}

const totals: Record<string, number[][]> = { plain: [], drawn: [], table: [] };
const kept: unknown[] = [];
for (const record of longRecords()) {
  const months = clearnessStatistics(record.years);
  const state = new Uint32Array(4);
  openStream(state, seedWords("bootstrap"), 0, "sky");
  const errors = bootstrapErrors(record.years, BOOTSTRAP, () => nextUnit(state));
  const site = climateAt(tables, record.latitudeDeg, record.longitudeDeg, record.elevationM);
  if (!site.ok) throw new Error(site.problems[0]!.message);
  const ways = {
    plain: plainYears(months, MEMBERS),
    drawn: drawnYears(climateOf(months), MEMBERS, "fit"),
    table: drawnYears(site.climate, MEMBERS, "fit"),
  };
  console.log(`\n${record.id} (${record.climate}), ${record.years.length} years`);
  console.log(["".padEnd(10), ...FIGURES.map((name) => name.padStart(9))].join(" "));
  const line = (name: string, values: number[]) =>
    console.log([name.padEnd(10), ...values.map((value) => value.toFixed(3).padStart(9))].join(" "));
  const average = (rows: number[][]) =>
    FIGURES.map((_, k) => rows.reduce((sum, row) => sum + row[k]!, 0) / rows.length);
  line("record", average(months.flatMap((month) => (month ? [figuresOf(month)] : []))));
  line("its error", average(errors.flatMap((row) => (row ? [row] : []))));
  for (const [name, years] of Object.entries(ways)) {
    const { difference, inErrors } = againstRecord(years, {
      months: months.map((month) => month && figuresOf(month)),
      errors,
    });
    line(`${name} −`, difference);
    line(`${name} χ`, inErrors);
    totals[name]!.push(inErrors);
  }
  kept.push({
    id: record.id,
    name: record.name,
    latitudeDeg: record.latitudeDeg,
    longitudeDeg: record.longitudeDeg,
    elevationM: record.elevationM,
    climate: record.climate,
    source: record.source,
    licence: record.licence,
    years: record.years.length,
    months: months.map((month) => month && rounded([...figuresOf(month), month.sdWithin])),
    errors: errors.map((row) => row && rounded(row)),
  });
}
console.log("\nroot mean square of the errors over all records and months, in sampling errors of the record");
console.log(["".padEnd(10), ...FIGURES.map((name) => name.padStart(9))].join(" "));
for (const [name, rows] of Object.entries(totals)) {
  const rms = FIGURES.map((_, k) => Math.sqrt(rows.reduce((sum, row) => sum + row[k]! ** 2, 0) / rows.length));
  console.log([name.padEnd(10), ...rms.map((value) => value.toFixed(2).padStart(9))].join(" "));
}

function rounded(values: number[]): number[] {
  return values.map((value) => Math.round(value * 10_000) / 10_000);
}

if (process.argv.includes("write")) {
  const header = {
    what: "Monthly statistics of daily clearness Kt (GHI over extraterrestrial light of the day) in twelve long records, and their sampling errors",
    how: "Worked out by docs/fits/dailyClearness.ts from the records named below; errors by drawing years with replacement, 100 times. Each month is [figures…, sdWithin], January first.",
    figures: FIGURES,
    definitions:
      "q: quantiles, %; r: correlation 1 to 3 days on, three months; p: probability of 1 to 3 days under 0.35; m: 5 % quantile of 3-, 5-, 7-day means; sdBetween: of monthly means between years; sdWithin: within single months",
  };
  const text = JSON.stringify({ ...header, records: kept });
  writeFileSync(
    "tests/truth/data/daily-clearness.json",
    `${text.replaceAll('{"id"', '\n{"id"').replaceAll(',"months"', ',\n"months"').replaceAll(',"errors"', ',\n"errors"')}\n`,
  );
}
