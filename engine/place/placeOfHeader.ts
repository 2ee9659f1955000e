import type { ProblemList } from "../scenario/problemList.ts";
import { clipped } from "../scenario/shown.ts";

/** Where a file's station stands and how far its clock is ahead of UTC. */
export interface HeaderPlace {
  readonly latitudeDeg: number | null;
  readonly longitudeDeg: number | null;
  readonly elevationM: number | null;
  readonly utcOffsetH: number;
}

/**
 * Reads place and clock from the cells of a header line.
 * @param at which cell holds what, counted from 0
 * @param line the header's line number, for messages
 */
export function placeOfHeader(
  cells: readonly string[],
  at: Readonly<Record<"latitude" | "longitude" | "utcOffset" | "elevation", number>>,
  line: number,
  problems: ProblemList,
): HeaderPlace {
  const read = (what: keyof typeof at, low: number, high: number, unit: string): number | null => {
    const cell = (cells[at[what]] ?? "").trim();
    const value = cell === "" ? Number.NaN : Number(cell);
    if (value >= low && value <= high) return value;
    const found = cell === "" ? "is missing" : `is "${clipped(cell)}"`;
    const name = what === "utcOffset" ? "time zone" : what;
    const message = `Line ${line}: the ${name}, value ${at[what] + 1} of the line, ${found}; it must be a number from ${low} to ${high} ${unit}, so download the file again.`;
    problems.add("bad-header", ["line", line, what], message);
    return null;
  };
  return {
    latitudeDeg: read("latitude", -90, 90, "degrees"),
    longitudeDeg: read("longitude", -180, 180, "degrees"),
    elevationM: read("elevation", -450, 9000, "metres"),
    utcOffsetH: read("utcOffset", -12, 14, "hours") ?? 0,
  };
}
