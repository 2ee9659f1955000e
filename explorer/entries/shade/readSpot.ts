import type { SpotsPicture } from "../../../engine/answers/shade/spotsPicture.ts";
import { spotRows } from "../../../engine/answers/shade/spotsRows.ts";
import { leadWords, lossWords, spanWords, wayWords, whWords } from "../../../engine/answers/shade/spotsWords.ts";
import { leadRule } from "../../../engine/spots/leadRule.ts";
import { type Spot, type SpotGrid, spotAt } from "../../../engine/spots/spotGrid.ts";
import { takenSpots } from "../../../engine/spots/takenSpots.ts";

/** A spot of the map that is read. */
export interface ReadSpot extends Spot {
  /** Its number on the grid. */
  readonly k: number;
  readonly leadM: number;
  readonly dayWh: number;
  /** Whether the map says its figure already. */
  readonly isNamed: boolean;
  /** Whether something stands there, so that the panels cannot. */
  readonly isTaken: boolean;
  readonly words: string;
}

/** The spot of a grid that is nearest to a place. */
export function spotNearest({ westM, southM, stepM, columns, rows }: SpotGrid, { eastM, northM }: Spot): number {
  const held = (place: number, of: number) => Math.min(of - 1, Math.max(0, Math.round(place)));
  return held((northM - southM) / stepM, rows) * columns + held((eastM - westM) / stepM, columns);
}

/** The spot so many columns east and rows north of another; at the map's edge it stays. */
export function spotBeside({ columns, rows }: SpotGrid, k: number, east: number, north: number): number {
  const column = Math.min(columns - 1, Math.max(0, (k % columns) + east));
  const row = Math.min(rows - 1, Math.max(0, Math.floor(k / columns) + north));
  return row * columns + column;
}

/** What the map says of one of its spots; of those that are named, what the table says. */
export function readSpot({ report, group, obstacles }: SpotsPicture, k: number): ReadSpot {
  const at = spotAt(report.grid, k);
  const isThere = (spot: Spot) => Math.hypot(spot.eastM - at.eastM, spot.northM - at.northM) < 0.01;
  const named = spotRows(report).find(isThere);
  const millimetre = (metres: number) => Math.round(metres * 1000) / 1000;
  const spot = named ?? {
    eastM: millimetre(at.eastM),
    northM: millimetre(at.northM),
    leadM: leadRule(group).at(at),
    dayWh: report.dayWh[k]!,
    leadLossShare: report.leadLossShare[k]!,
  };
  const way = wayWords(report.here, spot);
  const where = way === "here" ? "Where they are" : `${way} of where they are`;
  const lead =
    report.lead.reachM === null
      ? ""
      : `, on ${leadWords(spot.leadM)} of lead, which loses ${lossWords(spot.leadLossShare)}${spot.leadM > report.lead.statedM + 0.05 ? ": longer than the lead there is" : ""}`;
  const isTaken = way !== "here" && takenSpots(group, obstacles)(spot);
  const taken = isTaken ? ". Something stands there, or too near" : "";
  const { eastM, northM, leadM, dayWh } = spot;
  return {
    k,
    eastM,
    northM,
    leadM,
    dayWh,
    isNamed: named !== undefined,
    isTaken,
    words: `${where}: ${whWords(dayWh)} ${spanWords(report)}${lead}${taken}.`,
  };
}
