import { csvText } from "../../csvText.ts";
import { leadRule } from "../../spots/leadRule.ts";
import { spotAt } from "../../spots/spotGrid.ts";
import type { SpotFigure, SpotsReport } from "../../spots/spotsReport.ts";
import { type Column, csvRowsOf } from "../column.ts";
import type { SpotsPicture } from "./spotsPicture.ts";
import { leadWords, lossWords, wayWords, whWords } from "./spotsWords.ts";

/** A spot with what it is called, and its way from where the panels are. */
export interface SpotRow extends SpotFigure {
  readonly name: string;
  readonly way: string;
}

/** The spots that a report names, each once. */
export function spotRows({ here, best, asGood, beyond, lead }: SpotsReport): SpotRow[] {
  const isAt = (a: SpotFigure, b: SpotFigure) => a.eastM === b.eastM && a.northM === b.northM;
  const row = (name: string, spot: SpotFigure): SpotRow => ({ ...spot, name, way: wayWords(here, spot) });
  const isBest = isAt(asGood, best);
  const bestIs = lead.reachM === null ? "best" : "best within the lead";
  // For a vehicle the very best is any open place, often the farthest: the nearest as good is what is of use.
  const isTold = lead.reachM !== null && !isAt(best, here) && !isBest;
  return [
    row("here now", here),
    ...(isAt(asGood, here) ? [] : [row(isBest ? bestIs : "nearest as good", asGood)]),
    ...(isTold ? [row(bestIs, best)] : []),
    ...(beyond === null ? [] : [row("on a longer lead", beyond)]),
  ];
}

const six = (value: number) => String(Number(value.toPrecision(6)));

/** What a table of spots shows. */
export const SPOT = {
  name: { head: "Spot", cell: ({ name }) => name, isWords: true },
  way: { head: "From here", cell: ({ way }) => way, isWords: true },
  day: { head: "Wh a day", cell: ({ dayWh }) => whWords(dayWh).slice(0, -3), raw: ({ dayWh }) => six(dayWh) },
  lead: { head: "Lead", cell: ({ leadM }) => leadWords(leadM), raw: ({ leadM }) => six(leadM) },
  loses: {
    head: "Lead loses",
    cell: ({ leadLossShare }) => lossWords(leadLossShare),
    raw: ({ leadLossShare }) => leadLossShare.toFixed(4),
  },
} satisfies Record<string, Column<SpotRow>>;

/** Named spots, headings, and every spot of the map: metres, watt-hours, shares. */
export function spotsCsv({ report, group }: SpotsPicture): string {
  const { grid, dayWh, leadLossShare, heading } = report;
  const lead = leadRule(group);
  const place: Column<SpotRow>[] = [
    { head: "east m", cell: ({ eastM }) => six(eastM) },
    { head: "north m", cell: ({ northM }) => six(northM) },
  ];
  const spots = dayWh.map((wh, k) => {
    const spot = spotAt(grid, k);
    return [six(spot.eastM), six(spot.northM), six(lead.at(spot)), six(wh), leadLossShare[k]!.toFixed(4)];
  });
  return csvText([
    ...csvRowsOf([SPOT.name, ...place, SPOT.day, SPOT.lead, SPOT.loses], spotRows(report)),
    ...(heading === null
      ? []
      : [
          [],
          ["heading °", "flat, Wh a day", `raised ${heading.tiltDeg}° that way, Wh a day`],
          ...heading.headingDeg.map((deg, k) => [String(deg), six(heading.flatWh[k]!), six(heading.tiltedWh[k]!)]),
        ]),
    [],
    ["east m", "north m", "lead m", "Wh a day", "Lead loses"],
    ...spots,
  ]);
}
