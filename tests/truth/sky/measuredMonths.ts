import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readWeatherFile } from "../../../engine/place/readWeatherFile.ts";
import { type ClearSky, clearSky } from "../../../engine/sky/clearSky.ts";
import { type DayLight, dayLight } from "../../../engine/sky/dayClearIndex.ts";
import { solarHour } from "../../../engine/sky/solarDay.ts";
import type { SkyLight } from "../../../engine/sky/splitDiffuse.ts";
import { type SunTrack, sunTrack } from "../../../engine/sky/sunTrack.ts";
import { weatherOnGrid } from "../../../engine/sky/weatherOnGrid.ts";
import { erbsDiffuseShare } from "./erbsDiffuseShare.ts";
import type { Hours, SeparationModel } from "./separationModels.ts";

// Measured hours of GHI, DNI and DHI are not ours to pass on: they stand beside the project where it is developed.
const FOLDER = fileURLToPath(new URL("../../../../shared/data/hourly/", import.meta.url));
const STEP_MS = 300_000;
const HOUR_MS = 3_600_000;
const PARTS = 12;
/** Hours in which a cloudless sky gives less than this have no clearness to go by. */
const DIM_WM2 = 1;

/** A month of measured hours, and the cloudless sky over it at 5-minute steps. */
export interface MeasuredMonth {
  readonly name: string;
  readonly ghiWm2: readonly number[];
  readonly dniWm2: readonly number[];
  readonly dhiWm2: readonly number[];
  /** Whether the hour was measured. */
  readonly isThere: readonly boolean[];
  /** Day of mean solar time of each hour, from 0. */
  readonly day: readonly number[];
  readonly sun: SunTrack;
  readonly clear: ClearSky;
  readonly days: DayLight;
  readonly stepStartMs: number;
  readonly middleMs: Float64Array;
  readonly utcOffsetH: number;
  readonly stamps: readonly string[];
  /** Means over each hour. */
  readonly clearGhiWm2: readonly number[];
  readonly aboveWm2: readonly number[];
  /** Mean height of the sun while it is up, degrees; 0 where it is not. */
  readonly heightDeg: readonly number[];
  /** Measured GHI over the clear sky's; 0 where there is none. */
  readonly index: readonly number[];
  readonly hours: Hours;
}

interface Listed {
  file: string;
  lat: number;
  lon: number;
  elev: number;
  utcOffset: number;
  rows: number;
}

/** All measured months beside this checkout; none where the folder is not there. */
export function measuredMonths(linkeTurbidity = 3): MeasuredMonth[] {
  if (!existsSync(`${FOLDER}index.json`)) return [];
  const listed = JSON.parse(readFileSync(`${FOLDER}index.json`, "utf8")) as Listed[];
  return listed.filter(({ rows }) => rows > 100).map((site) => readMonth(site, linkeTurbidity));
}

export function hourMeans(values: Float64Array): number[] {
  return Array.from({ length: values.length / PARTS }, (_, hour) => {
    let sum = 0;
    for (let k = hour * PARTS; k < (hour + 1) * PARTS; k++) sum += values[k]!;
    return sum / PARTS;
  });
}

function readMonth(site: Listed, linkeTurbidity: number): MeasuredMonth {
  const rows = readFileSync(FOLDER + site.file, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));
  const startMs = Date.parse(`${rows[0]![0]}Z`) - site.utcOffset * HOUR_MS;
  const middleMs = Float64Array.from({ length: rows.length * PARTS }, (_, i) => startMs + (i + 0.5) * STEP_MS);
  const sun = sunTrack(site.lat, site.lon, middleMs);
  const clear = clearSky(sun, middleMs, site.lon, site.elev, linkeTurbidity);
  const dayOf = (timeMs: number) => Math.floor((timeMs + site.lon * 240_000) / (24 * HOUR_MS));
  const place = { latitudeDeg: site.lat, longitudeDeg: site.lon, elevationM: site.elev, linkeTurbidity };
  const days = dayLight(
    place,
    middleMs,
    Int32Array.from(middleMs, (timeMs) => dayOf(timeMs) - dayOf(middleMs[0]!)),
  );
  const number = (cell: string | undefined) => Math.max(0, Number(cell ?? 0));
  const ghiWm2 = rows.map((row) => number(row[1]));
  const day = rows.map((_, hour) => dayOf(startMs + hour * HOUR_MS) - dayOf(startMs));
  const clearGhiWm2 = hourMeans(clear.ghiWm2);
  const aboveWm2 = hourMeans(clear.extraterrestrialWm2.map((above, i) => above * clear.sinElevation[i]!));
  const heights = hourMeans(sun.elevationDeg.map((deg) => Math.max(0, deg)));
  const up = hourMeans(sun.elevationDeg.map((deg) => (deg > 0 ? 1 : 0)));
  const heightDeg = heights.map((deg, hour) => (up[hour]! > 0 ? deg / up[hour]! : 0));
  const perDay = (values: readonly number[]) => {
    const sums: number[] = [];
    values.forEach((value, hour) => {
      sums[day[hour]!] = (sums[day[hour]!] ?? 0) + value;
    });
    return sums;
  };
  const [dayGhi, dayAbove] = [perDay(ghiWm2), perDay(aboveWm2)];
  const isLit = (hour: number, from: number) => day[hour] === day[from] && clearGhiWm2[hour]! > DIM_WM2;
  const over = (values: readonly number[], by: readonly number[]) =>
    values.map((value, i) => (by[i]! > 0 ? value / by[i]! : 0));
  const before = ghiWm2.map((_, i) => (isLit(i - 1, i) ? i - 1 : isLit(i + 1, i) ? i + 1 : i));
  return {
    name: site.file.replace(".csv", ""),
    ghiWm2,
    dniWm2: rows.map((row) => number(row[2])),
    dhiWm2: rows.map((row) => number(row[3])),
    isThere: rows.map((row) => row[1] !== "" && row[2] !== ""),
    day,
    sun,
    clear,
    days,
    stepStartMs: startMs,
    middleMs,
    utcOffsetH: site.utcOffset,
    stamps: rows.map((row) => row[0]!),
    clearGhiWm2,
    aboveWm2,
    heightDeg,
    index: over(ghiWm2, clearGhiWm2),
    hours: {
      elevationM: site.elev,
      kt: over(ghiWm2, aboveWm2),
      clearKt: over(clearGhiWm2, aboveWm2),
      dayKt: day.map((of) => (dayAbove[of]! > 0 ? dayGhi[of]! / dayAbove[of]! : 0)),
      heightDeg: heightDeg.map((deg) => Math.max(0.1, deg)),
      solarHour: rows.map((_, hour) => solarHour(startMs + (hour + 0.5) * HOUR_MS, site.lon)),
      before,
      after: before.map((earlier, i) => (isLit(i + 1, i) ? i + 1 : earlier)),
    },
  };
}

/** Beam and sky light at the month's steps. */
export type StepLight = Pick<SkyLight, "dniWm2" | "dhiWm2">;

/** What the engine makes of a file with these columns. */
export function laidByEngine(
  month: MeasuredMonth,
  columns: Record<string, readonly number[]>,
): { light: SkyLight; notes: readonly string[] } {
  const names = Object.keys(columns);
  const lines = month.stamps.map((stamp, hour) => [stamp, ...names.map((name) => columns[name]![hour]!)].join(","));
  const text = [`# utcOffset: ${month.utcOffsetH}`, `time,${names.join(",")}`, ...lines].join("\n");
  const reading = readWeatherFile(text, `${month.name}.csv`);
  if (!reading.ok) throw new Error(reading.problems[0]!.message);
  const { middleMs, stepStartMs } = month;
  const grid = { startMs: stepStartMs, stepMs: STEP_MS, steps: middleMs.length, middleMs };
  const laid = weatherOnGrid(reading.file, grid, month.clear, month.days);
  if (!laid.ok) throw new Error(laid.problems[0]!.message);
  return laid.weather;
}

/** The month's light as the engine splits it from GHI alone. */
export function engineLight(month: MeasuredMonth): StepLight {
  return laidByEngine(month, { ghi: month.ghiWm2 }).light;
}

/** Light of an hour with so much beam, laid inside the hour by the clear sky's course. */
export function byBeam(month: MeasuredMonth, beamWm2: readonly number[]): StepLight {
  const { clear, ghiWm2 } = month;
  const clearBeam = hourMeans(clear.dniWm2.map((dni, i) => dni * clear.sinElevation[i]!));
  const clearSkyWm2 = hourMeans(clear.dhiWm2);
  const at = (i: number) => Math.floor(i / PARTS);
  return {
    dniWm2: clear.dniWm2.map((dni, i) =>
      clearBeam[at(i)]! > DIM_WM2 ? (dni * beamWm2[at(i)]!) / clearBeam[at(i)]! : 0,
    ),
    dhiWm2: clear.dhiWm2.map((dhi, i) => {
      const beam = clearBeam[at(i)]! > DIM_WM2 ? beamWm2[at(i)]! : 0;
      const sky = Math.max(0, ghiWm2[at(i)]! - beam);
      return clearSkyWm2[at(i)]! > DIM_WM2 ? (dhi * sky) / clearSkyWm2[at(i)]! : sky;
    }),
  };
}

/** The month's light by a published model of the diffuse share. */
export function modelLight(month: MeasuredMonth, model: SeparationModel): StepLight {
  const share = model(month.hours);
  return byBeam(
    month,
    month.ghiWm2.map((ghi, i) => ghi * (1 - share[i]!)),
  );
}

/** The measured light: beam as the pyrheliometer had it, and the rest of GHI from the sky, so that no zero of a third instrument enters. */
export function measuredLight(month: MeasuredMonth): StepLight {
  const { clear, dniWm2, ghiWm2 } = month;
  const clearBeam = hourMeans(clear.dniWm2.map((dni, i) => dni * clear.sinElevation[i]!));
  const clearDni = hourMeans(clear.dniWm2);
  return byBeam(
    month,
    dniWm2.map((dni, i) => (clearDni[i]! > DIM_WM2 ? Math.min(ghiWm2[i]!, (dni * clearBeam[i]!) / clearDni[i]!) : 0)),
  );
}

/**
 * What the engine had until it was held against low winter suns: Erbs's beam at each step, scaled so that a cloudless step keeps the whole
 * of the clear sky's beam.
 */
export function scaledErbsLight(month: MeasuredMonth): StepLight {
  const { clear, index, clearGhiWm2 } = month;
  const dniWm2 = clear.dniWm2.map((dni, i) => {
    const hour = Math.floor(i / PARTS);
    const sine = clear.sinElevation[i]!;
    if (sine <= 0 || clearGhiWm2[hour]! <= DIM_WM2) return 0;
    const clearKt = clear.ghiWm2[i]! / (clear.extraterrestrialWm2[i]! * sine);
    const left = (index[hour]! * (1 - erbsDiffuseShare(index[hour]! * clearKt))) / (1 - erbsDiffuseShare(clearKt));
    return Math.min(dni, left * dni);
  });
  const dhiWm2 = clear.ghiWm2.map((ghi, i) => {
    const hour = Math.floor(i / PARTS);
    if (clearGhiWm2[hour]! <= DIM_WM2) return month.ghiWm2[hour]!;
    return Math.max(0, index[hour]! * ghi - dniWm2[i]! * clear.sinElevation[i]!);
  });
  return { dniWm2, dhiWm2 };
}

/**
 * Light of each day on a plane to the south, Wh/m²; hours that were not measured left out. Transposed after Hay and Davies (1980), albedo 0.2.
 */
export function planeDays(month: MeasuredMonth, light: StepLight, tiltDeg: number): number[] {
  const rad = Math.PI / 180;
  const { clear, sun, isThere, day } = month;
  const [cosTilt, sinTilt] = [Math.cos(tiltDeg * rad), Math.sin(tiltDeg * rad)];
  const sums = new Array<number>(day.at(-1)! + 1).fill(0);
  light.dniWm2.forEach((dni, i) => {
    const hour = Math.floor(i / PARTS);
    if (!isThere[hour] || clear.ghiWm2[i]! <= 0) return;
    const height = sun.elevationDeg[i]! * rad;
    const sine = Math.max(clear.sinElevation[i]!, 0.01745);
    const facing = Math.cos((sun.azimuthDeg[i]! - 180) * rad);
    const cosine = Math.max(0, Math.sin(height) * cosTilt + Math.cos(height) * sinTilt * facing);
    const beside = Math.min(1, dni / clear.extraterrestrialWm2[i]!);
    const dhi = light.dhiWm2[i]!;
    const ground = (dhi + dni * clear.sinElevation[i]!) * 0.2 * (0.5 - 0.5 * cosTilt);
    const sky = dhi * ((beside * cosine) / sine + (1 - beside) * (0.5 + 0.5 * cosTilt));
    sums[day[hour]!]! += (dni * cosine + sky + ground) / PARTS;
  });
  return sums;
}
