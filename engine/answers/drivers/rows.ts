import { csvText } from "../../csvText.ts";
import type { DriverLine, DriversReport, EndEffect, SheddingLine } from "../../drivers/driversReport.ts";
import type { Sampled } from "../../drivers/driversShares.ts";
import { inHundred } from "../../words/oddsWords.ts";
import { type Column, csvRowsOf } from "../column.ts";
import { endWords, gainedWords, inHundredths, plusMinus, signed } from "./driversWords.ts";

const four = (value: number) => value.toFixed(4);
const rawSampled = (of: Sampled | undefined) =>
  of === undefined ? (["", ""] as const) : ([four(of.value), four(of.plusMinus)] as const);

/** A share of what differs, with its ±. */
function share(head: string, of: (line: DriverLine) => Sampled | undefined) {
  return {
    head,
    cell: (line: DriverLine) => {
      const found = of(line);
      return found === undefined ? "–" : `${inHundredths(found.value)} ${plusMinus(found.plusMinus)}`;
    },
    raw: (line: DriverLine) => rawSampled(of(line)),
    hasPlusMinus: true,
  };
}

/** A gain of so many of 100 members, or of percent of a full bank, with its ±. */
function gain<Row>(head: string, of: (row: Row) => Sampled | undefined) {
  return {
    head,
    cell: (row: Row) => {
      const found = of(row);
      return found === undefined ? "–" : `${signed(100 * found.value)} ±${(100 * found.plusMinus).toFixed(1)}`;
    },
    raw: (row: Row) => rawSampled(of(row)),
    hasPlusMinus: true,
  };
}

/** What the lowest charge, and holding or not, depend on: of what they differ by from member to member. */
export const SHARES = {
  name: { head: "What is drawn", cell: ({ name }) => name, isWords: true },
  alone: share("Alone", ({ margin }) => margin?.first),
  together: share("With others", ({ margin }) => margin?.total),
  holdsAlone: share("Of holding, alone", ({ holds }) => holds?.first),
  holdsTogether: share("Of holding or not", ({ holds }) => holds?.total),
} satisfies Record<string, Column<DriverLine>>;

const endOf = (name: "low" | "high") => (line: DriverLine) => line[name];
const end = (head: string, of: (line: DriverLine) => EndEffect | null) => ({
  value: {
    head,
    cell: (line: DriverLine) => {
      const found = of(line);
      return found === null ? "–" : endWords(line, found.value);
    },
    raw: (line: DriverLine) => {
      const found = of(line);
      return found === null ? "" : four(found.value);
    },
  },
  holds: {
    head: "holds",
    cell: (line: DriverLine) => {
      const found = of(line);
      return found === null ? "–" : inHundred(found.holds);
    },
    raw: (line: DriverLine) => {
      const found = of(line);
      return found === null ? "" : four(found.holds.share);
    },
  },
  gained: gain("Gained, of 100", (line: DriverLine) => of(line)?.holdsGain),
  margin: gain("Lowest, points", (line: DriverLine) => of(line)?.marginGain),
});

/** What one factor would do at its low and at its high end. */
export const LOW_END = end("Low end", endOf("low"));
export const HIGH_END = end("High end", endOf("high"));

/** What switching one load off for the whole event gains. */
export const SHEDDING = {
  name: { head: "Off", cell: ({ name }) => name, isWords: true },
  holds: { head: "Of 100 hold", cell: ({ holds }) => inHundred(holds), raw: ({ holds }) => four(holds.share) },
  gained: gain("Gained, of 100", ({ holdsGain }) => holdsGain),
  margin: gain("Lowest, points", ({ marginGain }) => marginGain),
  later: {
    head: "Until the reserve",
    cell: gainedWords,
    raw: ({ gainedH, medianHolds }) => (medianHolds ? "holds" : gainedH === null ? "" : String(gainedH)),
  },
} satisfies Record<string, Column<SheddingLine>>;

const UNIT: Column<DriverLine> = { head: "unit of the ends", cell: ({ unit }) => unit };

/** Shares of the variance, what both ends do, and what switching off gains, for a sheet of one's own; shares run 0 to 1. */
export function driversCsv({ factors, shedding }: DriversReport): string {
  const columns = [
    ...Object.values<Column<DriverLine>>(SHARES),
    UNIT,
    ...Object.values(LOW_END),
    ...Object.values(HIGH_END),
  ];
  return csvText([
    ...csvRowsOf(columns, factors),
    [],
    ...csvRowsOf(Object.values<Column<SheddingLine>>(SHEDDING), shedding),
  ]);
}
