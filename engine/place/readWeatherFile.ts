import { csvParseRows } from "d3-dsv";
import { readEpw } from "./readEpw.ts";
import { readPlainCsv } from "./readPlainCsv.ts";
import { readTmy3 } from "./readTmy3.ts";
import type { WeatherReading } from "./weatherFile.ts";

const MOST_BYTES = 10_000_000;

/**
 * Reads a weather file that a person chose: TMY3, EPW or our own plain table, told apart by what is in it.
 * @param text the whole file, at most 10 million characters
 * @param fileName for its ending, `.epw`, and for messages
 * @returns the file, for `surroundings.weatherFile`: light in W/m², air in °C, wind in m/s, one value per interval of equal length; or every
 *   problem as a sentence with line, value and remedy; the first fifty of them, and a count
 * @throws nothing because of a file
 * @see docs/scenario-format.md for the columns that are read
 */
export function readWeatherFile(text: string, fileName: string): WeatherReading {
  if (text.length > MOST_BYTES) {
    const size = (text.length / 1e6).toFixed(1);
    const message = `${fileName} is ${size} MB, and at most 10 MB are read; cut it to the months you need.`;
    return { ok: false, problems: [{ code: "file-too-large", path: [], message }] };
  }
  const body = text.replace(/^\uFEFF/, "");
  if (body.trim() === "") {
    const message = `${fileName} is empty; choose a file with one line of weather per hour.`;
    return { ok: false, problems: [{ code: "empty-file", path: [], message }] };
  }
  const rows = csvParseRows(body);
  const first = (rows[0]?.[0] ?? "").trim().toUpperCase();
  if (first === "LOCATION" || fileName.toLowerCase().endsWith(".epw")) return readEpw(rows);
  const second = (rows[1]?.[0] ?? "").trim().toUpperCase();
  if (second.startsWith("DATE (MM/DD/YYYY)")) return readTmy3(rows);
  return readPlainCsv(rows);
}
