import { wrapLongitudeDeg } from "../../engine/angle.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { distanceKm, readWeatherFile, type WeatherFile } from "../../engine/place/index.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { inUnits } from "../../engine/words/displayUnits.ts";
import { figure } from "../../engine/words/numbers.ts";
import { problemSentences } from "../../engine/words/problemSentences.ts";
import { weatherCsv } from "./weatherCsv.ts";

/** About two years by the hour: what a notebook can carry and still be one file. */
const MOST_LINES = 16_000;
const HOUR_MS = 3_600_000;
/** How far a weather file's place may be before the engine asks whether it is meant (`weather.maxDistanceKm` left out). */
const USUAL_KM = 150;

export type KeptWeather =
  | { readonly ok: true; readonly name: string; readonly text: string; readonly sentences: readonly string[] }
  | { readonly ok: false; readonly sentences: readonly string[] };

/**
 * Reads a weather file that somebody chose and makes of it what a notebook keeps: the same hours as a plain table, cut to the
 * years around the event's season where there are too many.
 * @param document the scenario that it is for
 */
export function keptWeather(source: string, fileName: string, document: ScenarioInput): KeptWeather {
  const read = readWeatherFile(source, fileName);
  if (!read.ok) return { ok: false, sentences: problemSentences(read.problems, 5) };
  const { file } = read;
  const count = file.startMs.length;
  const [from, to] = stretch(file, document);
  const text = weatherCsv(file, from, to);
  const name = `${freeId(fileName.replace(/\.[^.]*$/, ""), [])}-${fingerprint(text)}.csv`;
  const cut =
    to - from < count
      ? ` Of ${figure(count)} intervals it keeps the ${figure(to - from)} around the season of the event.`
      : "";
  return {
    ok: true,
    name,
    text,
    sentences: [
      `${fileName} is kept with the notebook: ${yearsWords(file, from, to)}, ${placeWords(file, document)}.${cut}`,
      ...file.notes,
    ],
  };
}

/** The stretch that is kept: everything, or as much as there is room for around the event's season in the newest year. */
function stretch(file: WeatherFile, document: ScenarioInput): readonly [number, number] {
  const count = file.startMs.length;
  if (count <= MOST_LINES) return [0, count];
  const start = Date.parse(`${document.time.start.slice(0, 10)}T00:00Z`);
  const end = Date.parse(`${document.time.end.slice(0, 10)}T00:00Z`);
  const middle = new Date((start + end) / 2).toISOString().slice(5, 10);
  let at = count - 1;
  while (at > 0 && clockDate(file, at).slice(5) !== middle) at--;
  const from = Math.max(0, Math.min(count - MOST_LINES, at - MOST_LINES / 2));
  return [from, from + MOST_LINES];
}

const clockDate = (file: WeatherFile, i: number) =>
  new Date(file.startMs[i]! + file.utcOffsetH * HOUR_MS).toISOString().slice(0, 10);

/** "hour by hour from 2012-01-01 to 2013-12-31"; for months put together from different years, which those are. */
function yearsWords(file: WeatherFile, from: number, to: number): string {
  const step = file.stepMinutes === 60 ? "hour by hour" : `every ${file.stepMinutes} minutes`;
  if (!file.typicalYear) return `${step} from ${clockDate(file, from)} to ${clockDate(file, to - 1)}`;
  const years = new Set<number>();
  for (let i = from; i < to; i++) years.add(Number(clockDate(file, i).slice(0, 4)));
  const all = [...years].sort((a, b) => a - b);
  return `${step}, a typical year made of months from ${all[0]} to ${all.at(-1)}`;
}

function placeWords(file: WeatherFile, { place, weather }: ScenarioInput): string {
  if (file.latitudeDeg === null || file.longitudeDeg === null) return "for a place that it does not name";
  const km = distanceKm(
    { lat: place.latitudeDeg, lon: wrapLongitudeDeg(place.longitudeDeg) },
    { lat: file.latitudeDeg, lon: wrapLongitudeDeg(file.longitudeDeg) },
  );
  const most = weather.kind === "file" ? (weather.maxDistanceKm ?? USUAL_KM) : USUAL_KM;
  const far = km > most ? `, farther than the ${inUnits(most, "km", 0)} that count as near` : "";
  return `for a place ${inUnits(km, "km", 0)} from ${place.name}${far}`;
}

/** Four letters that tell two files of one name apart (FNV-1a, 32 bits): results are remembered by the file's name. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36).padStart(7, "0").slice(-4);
}
