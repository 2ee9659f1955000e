import { wrapLongitudeDeg } from "../angle.ts";
import { EngineFault } from "../fault.ts";
import { climateAt, type SiteClimate } from "../place/climateAt.ts";
import { distanceKm } from "../place/distanceKm.ts";
import type { WeatherFile } from "../place/weatherFile.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { airTemperature } from "../sky/airTemperature.ts";
import { type ClearSky, clearSky } from "../sky/clearSky.ts";
import { type DayLight, dayClearIndex, dayLight } from "../sky/dayClearIndex.ts";
import { SKY_WORDS } from "../sky/skyWords.ts";
import { makeSkyLight, type SkyLight, splitDiffuse } from "../sky/splitDiffuse.ts";
import { type SunTrack, sunTrack } from "../sky/sunTrack.ts";
import { typicalLight } from "../sky/typicalLight.ts";
import { usualClearness } from "../sky/usualClearness.ts";
import { usualTurbidity } from "../sky/usualTurbidity.ts";
import { weatherOnGrid } from "../sky/weatherOnGrid.ts";
import { isMeanTyped, statedClearness } from "./statedClearness.ts";
import type { Surroundings } from "./surroundings.ts";

/** The sky over an event; one value per step. */
export interface PreparedSky {
  readonly sun: SunTrack;
  readonly clear: ClearSky;
  readonly light: SkyLight;
  readonly airTempC: Float64Array;
  readonly windMs: Float64Array;
  readonly remarks: readonly string[];
}

type Outcome<T> = { ok: true; value: T } | { ok: false; problems: readonly Problem[] };

/** Lays the stated weather on the step grid: where the sun stands, what arrives, how warm the air is. */
export function prepareSky(
  scenario: Scenario,
  grid: TimeGrid,
  surroundings: Surroundings,
): { ok: true; sky: PreparedSky } | { ok: false; problems: readonly Problem[] } {
  const { place, weather } = scenario;
  const longitudeDeg = wrapLongitudeDeg(place.longitudeDeg);
  const sun = sunTrack(place.latitudeDeg, longitudeDeg, grid.middleMs);
  const linkeTurbidity = turbidityOf(scenario, grid);
  const clear = clearSky(sun, grid.middleMs, longitudeDeg, place.elevationM, linkeTurbidity);
  const steady = new Float64Array(grid.steps).fill(weather.windMs);
  const { latitudeDeg, elevationM } = place;
  const site = { latitudeDeg, longitudeDeg, elevationM, linkeTurbidity };
  const days = dayLight(site, grid.middleMs, grid.localDay);
  if (weather.kind === "file") return fromFile(scenario, grid, surroundings, sun, clear, days, steady);

  const light = makeSkyLight(grid.steps);
  const needsClimate = weather.air === undefined || (weather.kind === "typical" && !isMeanTyped(scenario));
  const climate = needsClimate ? climateFor(scenario, surroundings) : null;
  if (climate !== null && !climate.ok) return climate;
  const remarks = climate === null ? [] : [climate.value.provenance.sentence];
  const clearIndex = new Float64Array(grid.steps);
  const held = brightness(scenario, grid, days, climate?.value ?? climateHere(scenario, surroundings), clearIndex);
  if (held > 0) {
    remarks.push(
      `On ${held} of the ${grid.dates.length} days the ${isMeanTyped(scenario) ? "typed-in" : "tables'"} mean brightness leaves no room below the cleanest cloudless sky for brighter and duller days; it was lowered until it does.`,
    );
  }
  if (weather.kind === "typical") typicalLight(clear, days, clearIndex, light);
  else splitDiffuse(clear, days, grid.stepH, clearIndex, light);
  const airTempC = air(scenario, grid, climate?.value ?? null);
  return { ok: true, sky: { sun, clear, light, airTempC, windMs: steady, remarks } };
}

/** The stated haze, or what is usual there in the middle of the event. */
export function turbidityOf({ place, weather }: Scenario, grid: TimeGrid): number {
  const middleMs = grid.startMs + 0.5 * grid.steps * grid.stepMs;
  return weather.linkeTurbidity ?? usualTurbidity(place.latitudeDeg, place.elevationM, middleMs);
}

/** The tables' climate of the place where there are tables that know it. */
function climateHere(scenario: Scenario, surroundings: Surroundings): SiteClimate | null {
  const found = surroundings.climate === undefined ? null : climateFor(scenario, surroundings);
  return found?.ok ? found.value : null;
}

function climateFor(scenario: Scenario, surroundings: Surroundings): Outcome<SiteClimate> {
  const { latitudeDeg, longitudeDeg, elevationM } = scenario.place;
  if (surroundings.climate === undefined) {
    const message =
      "weather needs the climate tables (for typical days, or because weather.air is left out), and none were given; type in weather.air and monthly means, or load the tables.";
    return { ok: false, problems: [{ code: "no-climate", path: ["weather"], message }] };
  }
  const found = climateAt(surroundings.climate, latitudeDeg, wrapLongitudeDeg(longitudeDeg), elevationM);
  return found.ok ? { ok: true, value: found.climate } : { ok: false, problems: found.problems };
}

/** Writes the clear-sky index of each step. @returns how many days' mean had to be lowered */
function brightness(
  scenario: Scenario,
  grid: TimeGrid,
  days: DayLight,
  climate: SiteClimate | null,
  out: Float64Array,
): number {
  const { weather } = scenario;
  if (weather.kind === "words") {
    for (let i = 0; i < grid.steps; i++) {
      const word = weather.days[grid.localDay[i]!];
      out[i] = SKY_WORDS.find((known) => known.word === word)!.clearIndexShare;
    }
    return 0;
  }
  if (weather.kind !== "typical") {
    out.fill(1);
    return 0;
  }
  const usual = usualClearness(statedClearness(scenario, climate), grid.dates, days.brightestKt);
  dayClearIndex(days, usual.meanKt, out);
  return usual.heldDays;
}

function air(scenario: Scenario, grid: TimeGrid, climate: SiteClimate | null): Float64Array {
  const typed = scenario.weather.air;
  const monthOfDay = grid.dates.map((date) => Number(date.slice(5, 7)) - 1);
  const maxC = Float64Array.from(monthOfDay, (month) => typed?.maxC ?? climate!.tmaxC[month]!);
  const minC = Float64Array.from(monthOfDay, (month) => typed?.minC ?? climate!.tminC[month]!);
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  return airTemperature(grid.middleMs, longitudeDeg, grid.localDay, maxC, minC, typed?.warmestSolarHour);
}

function fromFile(
  scenario: Scenario,
  grid: TimeGrid,
  surroundings: Surroundings,
  sun: SunTrack,
  clear: ClearSky,
  days: DayLight,
  steadyWind: Float64Array,
): { ok: true; sky: PreparedSky } | { ok: false; problems: readonly Problem[] } {
  const file = surroundings.weatherFile;
  if (scenario.weather.kind !== "file") throw new EngineFault("fromFile was called for other weather");
  if (file === undefined) {
    const message = `weather.file is "${scenario.weather.file}", and that file was not given along with the scenario; put it beside the scenario.`;
    return { ok: false, problems: [{ code: "no-weather-file", path: ["weather", "file"], message }] };
  }
  const far = farAway(scenario, file);
  if (far !== null) return { ok: false, problems: [far] };
  const laid = weatherOnGrid(file, grid, clear, days);
  if (!laid.ok) return laid;
  const { light, tempC, windMs, notes } = laid.weather;
  const remarks = [...notes];
  let airTempC = tempC;
  if (scenario.weather.air !== undefined || airTempC === null) {
    const climate = scenario.weather.air === undefined ? climateFor(scenario, surroundings) : null;
    if (climate !== null && !climate.ok) return climate;
    if (climate !== null) remarks.push(`The file has no temperature. ${climate.value.provenance.sentence}`);
    airTempC = air(scenario, grid, climate?.value ?? null);
  }
  return { ok: true, sky: { sun, clear, light, airTempC, windMs: windMs ?? steadyWind, remarks } };
}

/** @returns a problem if the file's place lies farther away than the scenario allows; null if near enough or unknown */
function farAway(scenario: Scenario, file: WeatherFile): Problem | null {
  if (scenario.weather.kind !== "file" || file.latitudeDeg === null || file.longitudeDeg === null) return null;
  const { place, weather } = scenario;
  const km = distanceKm(
    { lat: place.latitudeDeg, lon: wrapLongitudeDeg(place.longitudeDeg) },
    { lat: file.latitudeDeg, lon: wrapLongitudeDeg(file.longitudeDeg) },
  );
  if (km <= weather.maxDistanceKm) return null;
  const message = `weather.file "${weather.file}" is for a place ${Math.round(km)} km from ${place.name} (at most ${weather.maxDistanceKm} km allowed); load a nearer file, or raise weather.maxDistanceKm if its weather will do.`;
  return { code: "file-far-away", path: ["weather", "file"], message };
}
