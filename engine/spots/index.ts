/**
 * spots: where to put panels. A plan (spotsPlan: the group, its lead, the spots of its site) is looked at spot by spot (placeFigures, handed out as
 * spotsTask) and told as a report (runSpots). Reads run, array, shade and task.
 */
export { isPortable, leadRule } from "./leadRule.ts";
export { runSpots, SpotsRefused } from "./runSpots.ts";
export { type SiteSun, type SunSpot, siteSun } from "./siteSun.ts";
export { spotChanges } from "./spotChanges.ts";
export { type Spot, type SpotGrid, spotAt } from "./spotGrid.ts";
export { spotsPlan } from "./spotsPlan.ts";
export type { SpotFigure, SpotsReport } from "./spotsReport.ts";
export { spotsTask } from "./spotsTask.ts";
export { takenSpots } from "./takenSpots.ts";
