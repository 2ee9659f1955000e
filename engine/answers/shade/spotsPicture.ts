import type { Obstacle } from "../../scenario/obstacle.ts";
import type { PanelGroup } from "../../scenario/panelGroup.ts";
import type { Weather } from "../../scenario/weather.ts";
import type { SpotsReport } from "../../spots/spotsReport.ts";

/** What a panel group brings at every spot, and the site that this is true of. Plain data, so that a worker can hand it over. */
export interface SpotsPicture {
  readonly report: SpotsReport;
  readonly group: PanelGroup;
  readonly obstacles: readonly Obstacle[];
  /** The other panels that stand there. */
  readonly others: readonly { readonly name: string; readonly eastM: number; readonly northM: number }[];
  readonly sky: Weather["kind"];
  /** Corners of what the map shows, m: those of all spots, also while only some have been looked at. */
  readonly window: {
    readonly westM: number;
    readonly eastM: number;
    readonly southM: number;
    readonly northM: number;
  };
}
