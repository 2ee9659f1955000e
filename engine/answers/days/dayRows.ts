import { csvText } from "../../csvText.ts";
import { clockAt, dayName } from "../../ruler/rulerClock.ts";
import { figure } from "../../words/numbers.ts";
import { type Column, csvRowsOf } from "../column.ts";
import type { DayRow, RunPicture } from "../run/runPicture.ts";

/** A day in figures, one for each of `dayHeads`. */
export interface DayLine {
  readonly day: string;
  readonly figures: readonly string[];
}

const tenth = (value: number) => String(Math.round(value * 10) / 10);

const wh = (head: string, of: (day: DayRow) => number): Column<DayRow> => ({
  head,
  cell: (day) => figure(of(day)),
  raw: (day) => tenth(of(day)),
});
const percent = (head: string, of: (day: DayRow) => number | null): Column<DayRow> => ({
  head,
  cell: (day) => figureOr("–", of(day), figure),
  raw: (day) => figureOr("", of(day), tenth),
});
const figureOr = (none: string, share: number | null, say: (value: number) => string) =>
  share === null ? none : say(100 * share);

/** All that is known of a day, column by column. */
export function dayColumns({ ruler, incoming }: Pick<RunPicture, "ruler" | "incoming">) {
  const clock = (head: string, of: (day: DayRow) => number | null): Column<DayRow> => ({
    head,
    cell: (day) => clockOr("–", of(day)),
    raw: (day) => clockOr("", of(day)),
  });
  const clockOr = (none: string, ms: number | null) => (ms === null ? none : clockAt(ruler, ms).clock.slice(0, 5));
  const day: Column<DayRow> = {
    head: "Day",
    cell: ({ date }) => dayName(date),
    raw: ({ date }) => date,
    isWords: true,
  };
  const hours: Column<DayRow> = { head: "Hours", cell: (of) => figure(of.hours, 2) };
  return {
    day,
    hours,
    rises: clock("Sun rises", ({ sunriseMs }) => sunriseMs),
    sets: clock("sets", ({ sunsetMs }) => sunsetMs),
    groups: incoming
      .filter(({ shadeLossW }) => shadeLossW !== null)
      .map(({ name }, g) => wh(`${name}, Wh`, ({ groupWh }) => groupWh[g]!)),
    shade: wh("Taken by shade, Wh", ({ shadeLossWh }) => shadeLossWh),
    spilled: wh("Spilled, Wh", ({ spilledWh }) => spilledWh),
    sources: wh("Other sources, Wh", ({ sourceWh }) => sourceWh),
    wanted: wh("Loads want, Wh", ({ demandWh }) => demandWh),
    unserved: wh("Unserved, Wh", ({ unservedWh }) => unservedWh),
    start: percent("Charge at first, %", ({ startShare }) => startShare),
    dusk: percent("Charge at dusk, %", ({ duskShare }) => duskShare),
    dawn: percent("at dawn, %", ({ dawnShare }) => dawnShare),
    lowest: percent("Lowest, %", ({ lowestShare }) => lowestShare),
    end: percent("At the end, %", ({ endShare }) => endShare),
  };
}

/** Those that a page has room for, without the day's own. @param hasSources whether sources besides panels are among them */
function pageColumns(picture: RunPicture, hasSources: boolean): Column<DayRow>[] {
  const { rises, sets, groups, shade, spilled, sources, wanted, unserved, dusk, dawn, lowest } = dayColumns(picture);
  const others = hasSources ? [sources] : [];
  return [rises, sets, ...groups, shade, spilled, ...others, wanted, unserved, dusk, dawn, lowest];
}

const hasSources = (picture: RunPicture) => picture.days.some((day) => day.sourceWh > 0);

/** What stands over the columns, without the day's own. */
export const dayHeads = (picture: RunPicture): string[] =>
  pageColumns(picture, hasSources(picture)).map(({ head }) => head);

export function dayRows(picture: RunPicture): DayLine[] {
  const columns = pageColumns(picture, hasSources(picture));
  const { day } = dayColumns(picture);
  return picture.days.map((of) => ({ day: day.cell(of), figures: columns.map(({ cell }) => cell(of)) }));
}

/** Each day, for a sheet of one's own. */
export const daysCsv = (picture: RunPicture): string =>
  csvText(csvRowsOf([dayColumns(picture).day, ...pageColumns(picture, true)], picture.days));
