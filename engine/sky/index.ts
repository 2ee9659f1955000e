/**
 * sky: the light that would arrive if nothing stood in its way.
 * when and where ─► sunTrack ─► clearSky ─► dayClearIndex (how bright the day) ─► splitDiffuse (beam and sky light).
 * An ensemble draws its own days: dailyClearness ─► climateError ─► knownDays ─► hourlyCloud ─► airAnomaly, or blockDays from a file;
 * `skyEnsemble` binds them, and chance comes in nowhere else. Reads chance, place; read by shade, array, run.
 */
export { AIR_FIT, drawAir, type PreparedAir, prepareAir } from "./airAnomaly.ts";
export { airTemperature, WARMEST_SOLAR_HOUR } from "./airTemperature.ts";
export { blockAir, drawBlockDays, type PreparedBlocks, prepareBlocks } from "./blockDays.ts";
export { airMass, type ClearSky, clearSky, pressureShare } from "./clearSky.ts";
export {
  clearnessOfNormals,
  DAILY_FIT,
  drawDailyNormals,
  type MonthlyClearness,
  type PreparedClearness,
  prepareDailyClearness,
} from "./dailyClearness.ts";
export { dailyExtraterrestrialWhM2 } from "./dailyExtraterrestrialWhM2.ts";
export { type ClearSkySite, type DayLight, dayClearIndex, dayLight, MAX_DAY_CLEAR_INDEX } from "./dayClearIndex.ts";
export { distanceFactor, extraterrestrialWm2, SOLAR_CONSTANT_WM2 } from "./extraterrestrialWm2.ts";
export { CLOUD_FIT, drawHourlyCloud, hourlySpread, type PreparedCloud, prepareHourlyCloud } from "./hourlyCloud.ts";
export { DARK_BELOW_DEG, isDark } from "./isDark.ts";
export { type KnownDay, type PreparedKnown, prepareKnownDays, surenessOfLead } from "./knownDays.ts";
export { monthlyDiffuseShare } from "./monthlyDiffuseShare.ts";
export { type NightSpan, nightSpans } from "./nightSpans.ts";
export {
  type BlockSkiesInput,
  drawSky,
  type PreparedSkies,
  prepareBlockSkies,
  prepareSkyEnsemble,
  type SkyClimate,
  type SkyEnsembleInput,
  type SkyEvent,
} from "./skyEnsemble.ts";
export { clearIndexShareOfOkta, SKY_WORDS, type SkyWord } from "./skyWords.ts";
export { dayOfYear, SOLAR_MS_PER_DEG, solarHour, solarMidnightMs } from "./solarDay.ts";
export { makeSkyLight, type SkyLight, splitDiffuse } from "./splitDiffuse.ts"; // for the member loop
export { type SunTrack, sunTrack } from "./sunTrack.ts";
export { typicalLight } from "./typicalLight.ts";
export { type GridWeather, type StepGrid, weatherOnGrid } from "./weatherOnGrid.ts";
