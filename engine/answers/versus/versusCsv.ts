import { csvText } from "../../csvText.ts";
import { stamp } from "../../ruler/stamp.ts";
import { plain } from "../column.ts";
import type { PlanColumn } from "./planColumns.ts";
import { decisionTable } from "./rows.ts";

/** A decision table, and what each scenario has put by more than the first at each step, Ah. */
export function versusCsv(columns: readonly PlanColumn[]): string {
  const { rows, same } = decisionTable(columns);
  const figures = rows.map(({ name, cells }) => [name, ...cells.map(({ text }) => plain(text))]);
  const apart = columns.flatMap(({ name, pair }) =>
    pair === null || pair.paired === null ? [] : [{ name, time: pair.time, paired: pair.paired }],
  );
  const [one] = apart;
  const steps =
    one === undefined
      ? []
      : Array.from(one.paired.p50, (_, i) => [
          stamp(one.time.ruler, one.time.startMs + i * one.time.stepMs),
          ...apart.flatMap(({ paired: { p5, p50, p95 } }) => [p5, p50, p95].map((row) => row[i]!.toFixed(2))),
        ]);
  const heads = apart.flatMap(({ name }) =>
    ["1 in 20 under", "median", "1 in 20 over"].map((which) => `${name}: put by, ${which}, Ah`),
  );
  return csvText([
    ["", ...columns.map(({ name }) => name)],
    ...figures,
    ["The same in all", plain(same)],
    [],
    ...(one === undefined ? [] : [["local time", ...heads]]),
    ...steps,
  ]);
}
