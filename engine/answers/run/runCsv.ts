import { csvText } from "../../csvText.ts";
import { stamp } from "../../ruler/stamp.ts";
import type { RunPicture } from "./runPicture.ts";

const sixDecimals = (value: number) => String(Number(value.toFixed(6)));

/** One row a step with a header row: powers are means over the step, charge is that at its start. The page saves it, and `trace --csv`. */
export function stepsCsv({ ruler, startMs, stepMs, steps, columns }: RunPicture): string {
  const rows = Array.from({ length: steps }, (_, i) => {
    const atMs = startMs + i * stepMs;
    return [stamp(ruler, atMs), new Date(atMs).toISOString(), ...columns.map(({ values }) => sixDecimals(values[i]!))];
  });
  return `${csvText([["local", "utc", ...columns.map(({ title }) => title)], ...rows])}\n`;
}
