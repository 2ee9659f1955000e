import { csvText } from "../../csvText.ts";
import { stamp } from "../../ruler/stamp.ts";
import { plain } from "../column.ts";
import { versusRows } from "./rows.ts";
import type { VersusPicture } from "./versusPicture.ts";

/** Both scenarios in figures, and what one has put by more than the other at each step, Ah. */
export function versusCsv(picture: VersusPicture, names: { readonly first: string; readonly second: string }): string {
  const figures = versusRows(picture).map((row) => [row.name, plain(row.second), plain(row.first)]);
  const { time, paired } = picture;
  const steps =
    paired === null
      ? []
      : Array.from(paired.p50, (medianAh, i) => [
          stamp(time.ruler, time.startMs + i * time.stepMs),
          ...[paired.p5[i]!, medianAh, paired.p95[i]!].map((ah) => ah.toFixed(2)),
        ]);
  return csvText([
    ["", names.second, names.first],
    ...figures,
    [],
    ["local time", "put by, 1 in 20 under, Ah", "put by, median, Ah", "put by, 1 in 20 over, Ah"],
    ...steps,
  ]);
}
