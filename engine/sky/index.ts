/**
 * sky: the light that would arrive if nothing stood in its way.
 * when and where ─► sunTrack ─► clearSky ─► dayClearIndex (how bright the day) ─► splitDiffuse (beam and sky light).
 * An ensemble draws its own days: dailyClearness ─► climateError ─► knownDays ─► hourlyCloud ─► airAnomaly, or blockDays from a file;
 * `skyEnsemble` binds them, and chance comes in nowhere else. Reads chance, place; read by shade, array, run.
 */
export { drawAir } from "./airAnomaly.ts";
export { airTemperature } from "./airTemperature.ts";
export { blockAir, drawBlockDays, type PreparedBlocks } from "./blockDays.ts";
export { clearnessOfGhi } from "./clearnessOfGhi.ts";
export { airMass, type ClearSky, clearSky } from "./clearSky.ts";
export { clearnessOfNormals, drawDailyNormals, type MonthlyClearness } from "./dailyClearness.ts";
export { type DayLight, dayClearIndex, dayLight, MAX_DAY_CLEAR_INDEX, MOST_DAY_INDEX } from "./dayClearIndex.ts";
export { CLOUD_FIT, drawHourlyCloud, holdDayTotal } from "./hourlyCloud.ts";
export { bringToKnown, type KnownDay, type PreparedKnown, prepareKnownDays } from "./knownDays.ts";
export { type NightSpan, nightSpans } from "./nightSpans.ts";
export { drawSky, type PreparedSkies, prepareBlockSkies, prepareSkyEnsemble, type SkyClimate } from "./skyEnsemble.ts";
export { SKY_WORDS } from "./skyWords.ts";
export { solarHour } from "./solarDay.ts";
export { makeSkyLight, prepareSplit, type SkyLight, splitDiffuse, splitPrepared } from "./splitDiffuse.ts";
export { type SunTrack, sunTrack } from "./sunTrack.ts";
export { typicalLight } from "./typicalLight.ts";
export { usualClearness } from "./usualClearness.ts";
export { usualTurbidity } from "./usualTurbidity.ts";
export { weatherOnGrid } from "./weatherOnGrid.ts";
