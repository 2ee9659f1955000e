import { csvText } from "../../csvText.ts";
import type { DriversReport, EndEffect } from "../../drivers/driversReport.ts";
import type { Sampled } from "../../drivers/driversShares.ts";

const three = (value: number) => value.toFixed(4);
const sampled = (of: Sampled | undefined) => (of === undefined ? ["", ""] : [three(of.value), three(of.plusMinus)]);
const end = (of: EndEffect | null) =>
  of === null ? ["", "", "", ""] : [three(of.value), three(of.holds.share), ...sampled(of.marginGain)];

/** Shares of the variance, what both ends do, and the shedding list; shares run 0 to 1. */
export function driversCsv(report: DriversReport): string {
  const head = [
    "factor",
    "margin alone",
    "±",
    "margin with others",
    "±",
    "holding alone",
    "±",
    "holding with others",
    "±",
  ];
  head.push(
    "unit of the ends",
    "low end",
    "holds there",
    "margin gained",
    "±",
    "high end",
    "holds there",
    "margin gained",
    "±",
  );
  const factors = report.factors.map((line) => [
    line.name,
    ...[line.margin?.first, line.margin?.total, line.holds?.first, line.holds?.total].flatMap(sampled),
    line.unit,
    ...end(line.low),
    ...end(line.high),
  ]);
  const shedding = report.shedding.map((line) => [
    line.name,
    three(line.holds.share),
    ...sampled(line.holdsGain),
    ...sampled(line.marginGain),
    line.medianHolds ? "holds" : line.gainedH === null ? "" : String(line.gainedH),
  ]);
  return csvText([
    head,
    ...factors,
    [],
    ["switched off", "holds", "holding gained", "±", "margin gained", "±", "hours until the reserve gained"],
    ...shedding,
  ]);
}
