import type { WeatherFile } from "../../engine/place/weatherFile.ts";

const HOUR_MS = 3_600_000;

/** A figure with one place, and none where it has none: weather files know no more. */
const short = (value: number) => String(Number(value.toFixed(1)));

/**
 * A stretch of a weather file as the plain table that the engine reads, on the file's own clock.
 * @param from first interval, and `to` the first that is left out
 */
export function weatherCsv(file: WeatherFile, from: number, to: number): string {
  const facts = [
    ["latitude", file.latitudeDeg],
    ["longitude", file.longitudeDeg],
    ["elevation", file.elevationM],
    ["utcOffset", file.utcOffsetH],
  ] as const;
  const columns = [
    ["ghi", file.ghiWm2],
    ["dni", file.dniWm2],
    ["dhi", file.dhiWm2],
    ["temp_c", file.tempC],
    ["wind_ms", file.windMs],
  ] as const;
  const there = columns.flatMap(([name, values]) => (values === null ? [] : [{ name, values }]));
  const lines = facts.flatMap(([name, value]) => (value === null ? [] : [`# ${name}: ${value}`]));
  lines.push(["time", ...there.map(({ name }) => name)].join(","));
  for (let i = from; i < to; i++) {
    const clock = new Date(file.startMs[i]! + file.utcOffsetH * HOUR_MS).toISOString().slice(0, 16);
    lines.push([clock, ...there.map(({ values }) => short(values[i]!))].join(","));
  }
  return `${lines.join("\n")}\n`;
}
