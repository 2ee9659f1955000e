import type { SpotGrid } from "./spotGrid.ts";

/** A panel group at one spot. */
export interface SpotFigure {
  readonly eastM: number;
  readonly northM: number;
  /** Its lead there, one way, m. */
  readonly leadM: number;
  /** What it offers the bank under the sky as written: on a mean whole day of the event (over all of the event where it has none), and over the event, Wh. */
  readonly dayWh: number;
  readonly eventWh: number;
  /** Share of it that the lead takes: how much more the group would bring with no lead at all, over that. */
  readonly leadLossShare: number;
}

/** What a roof brings with its vehicle's nose towards each bearing, Wh a day. */
export interface HeadingStrip {
  /** Where the modules' length points now, degrees. */
  readonly nowDeg: number;
  /** From north all the way round to north. */
  readonly headingDeg: readonly number[];
  readonly flatWh: readonly number[];
  /** The same with the panels raised towards the nose. */
  readonly tiltDeg: number;
  readonly tiltedWh: readonly number[];
}

/** What one panel group brings at every spot of its site. */
export interface SpotsReport {
  readonly group: { readonly id: string; readonly name: string };
  /** Whole days of the event of which figures are the mean; 0 where they are sums over the event. */
  readonly days: number;
  /** The lead as stated, and how far from the middle of the site it reaches, m; null for a roof, which takes its lead along. */
  readonly lead: { readonly statedM: number; readonly reachM: number | null };
  readonly here: SpotFigure;
  /** The most that the stated lead reaches. */
  readonly best: SpotFigure;
  /** Of the spots that bring as much within 1 %, the one with the shortest way: from the middle of the site; for a roof from where it is. */
  readonly asGood: SpotFigure;
  /** The most that a longer lead would bring; null where it is not worth 1 %. */
  readonly beyond: SpotFigure | null;
  readonly grid: SpotGrid;
  /** Wh a day at each spot of the grid, and what the lead takes of it there. */
  readonly dayWh: readonly number[];
  readonly leadLossShare: readonly number[];
  /** For panels on a roof; null for others, and while it is not worked out yet. */
  readonly heading: HeadingStrip | null;
  /** Whether only every fourth spot of every fourth row has been looked at yet. */
  readonly isCoarse: boolean;
}
