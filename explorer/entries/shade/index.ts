/**
 * shade: the site on the page: plan and sky of each panel, moved by hand or by keys, with the sun worked out in a worker.
 */

export { boxOutline } from "./boxOutline.ts";
export { crownOutline, type SkySpan } from "./crownOutline.ts";
export { shadeEntry } from "./entry.ts";
export { boxShadow, crownShadow, shadowOf } from "./groundShadow.ts";
export { makeSunlight, type SunWorkshop } from "./makeSunlight.ts";
export { moduleFootprints } from "./moduleFootprints.ts";
export { gridLines, planView, reachOf, wholeSite, zoomed } from "./planView.ts";
export { ShadeView } from "./ShadeView.tsx";
export { compassMarks, compassPoint, nearBearing, skyView, spanPath } from "./skyView.ts";
export type { SunlightOrder } from "./sunlightWorker.ts";
export { pathStretches, sunPath } from "./sunPath.ts";
export { changesOfMove, moveWords, onSite, placeWords, thingsOf, withMove } from "./thing.ts";
export { trunkOutline } from "./trunkOutline.ts";
