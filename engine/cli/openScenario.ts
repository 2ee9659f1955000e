import { open, realpath, stat } from "node:fs/promises";
import { basename, dirname, isAbsolute, join, relative, sep } from "node:path";
import { loadClimateTables } from "../place/loadClimateTables.ts";
import { readWeatherFile } from "../place/readWeatherFile.ts";
import { type Prepared, prepare } from "../run/prepare.ts";
import type { Surroundings } from "../run/surroundings.ts";
import { applyChanges } from "../scenario/applyChanges.ts";
import type { Problem } from "../scenario/problem.ts";
import { readScenario, readVariant } from "../scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import { withZone } from "../scenario/withZone.ts";
import { CallError } from "./callError.ts";

/** Weather files are read whole; anything larger is not one. */
const LARGEST_FILE_BYTES = 10_000_000;

export type Opened<T> = { ok: true; value: T } | { ok: false; problems: readonly Problem[] };

export async function textOf(path: string): Promise<string> {
  try {
    const { size } = await stat(path);
    if (size > LARGEST_FILE_BYTES) {
      throw new CallError(
        `${path} has ${(size / 1e6).toFixed(1)} MB; files of up to 10 MB are read. Is it the right file?`,
      );
    }
    return new TextDecoder().decode(await bytesOf(path));
  } catch (error) {
    if (error instanceof CallError) throw error;
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ENOENT") throw new CallError(`There is no file ${path}; check the name and the folder.`);
    if (code === "EISDIR") throw new CallError(`${path} is a folder; name a file in it.`);
    if (code === "EACCES") throw new CallError(`${path} may not be read by you; check its permissions.`);
    throw new CallError(`${path} could not be read (${code}); check the name and the folder.`);
  }
}

/** Reads to the end, or gives up past the bound: a device or a pipe does not say how long it is, and may have no end. */
async function bytesOf(path: string): Promise<Buffer> {
  const file = await open(path, "r");
  try {
    const chunks: Buffer[] = [];
    let length = 0;
    for await (const chunk of file.createReadStream({ autoClose: false })) {
      chunks.push(chunk as Buffer);
      length += (chunk as Buffer).length;
      if (length > LARGEST_FILE_BYTES)
        throw new CallError(`${path} does not end within 10 MB, and no more is read. Is it the right file?`);
    }
    return Buffer.concat(chunks);
  } finally {
    await file.close();
  }
}

/** Reads a scenario file, or one of its variants, and validates it. */
async function openScenario(path: string, variant: string | undefined): Promise<Opened<Scenario>> {
  const text = await textOf(path);
  const result = variant === undefined ? readScenario(text) : readVariant(text, variant);
  return result.ok ? { ok: true, value: result.scenario } : result;
}

/** A scenario of a file, or one of its variants, as it stands written (its zone included) and as it was read. */
export interface OpenedDocument {
  readonly path: string;
  readonly document: ScenarioInput;
  readonly scenario: Scenario;
}

/** Reads a scenario file, or one of its variants, as a document for `answerTo`. */
export async function openDocument(path: string, variant: string | undefined): Promise<Opened<OpenedDocument>> {
  const text = await textOf(path);
  const base = readScenario(text);
  if (!base.ok) return base;
  const document: unknown = JSON.parse(text);
  if (variant === undefined)
    return { ok: true, value: { path, document: withZone(document as ScenarioInput), scenario: base.scenario } };
  const read = readVariant(text, variant);
  if (!read.ok) return read;
  const changed = applyChanges(document, base.scenario.variants.find(({ id }) => id === variant)!.changes);
  if (!changed.ok) return changed;
  // A variant is told by its own name.
  const named = { ...withZone(changed.document as ScenarioInput), name: read.scenario.name };
  return { ok: true, value: { path, document: named, scenario: read.scenario } };
}

let weatherMayLieAnywhere = false;

/** Whether scenarios may name weather files outside their own folder, as the caller has said. */
export function allowWeatherAnywhere(allowed: boolean): void {
  weatherMayLieAnywhere = allowed;
}

const besideOf = (path: string, name: string) => (isAbsolute(name) ? name : join(dirname(path), name));

/** Files that a run of a scenario is worked out from. */
export function inputsOf(path: string, { weather }: Scenario): string[] {
  return weather.kind === "file" ? [path, besideOf(path, weather.file)] : [path];
}

/** Why a scenario may not have a file's weather; null where it may. A scenario may come from a stranger, and reads no more than lies beside it. */
async function whyNotRead(path: string, name: string): Promise<string | null> {
  const beside = besideOf(path, name);
  try {
    if (!(await stat(beside)).isFile())
      return "which is no regular file; name a file with one line of weather per hour.";
    if (weatherMayLieAnywhere) return null;
    const way = relative(await realpath(dirname(path)), await realpath(beside));
    if (way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way)) return null;
  } catch {
    // That it is not there is said when it is read; where it would lie matters all the same.
    const way = relative(dirname(path), beside);
    if (weatherMayLieAnywhere || (way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way))) return null;
  }
  return "which lies outside the scenario's folder; put the file beside the scenario, or allow it with --weather-anywhere.";
}

/** The text of the weather file that a scenario names: where it cannot be had, the scenario is wrong and not the call. */
async function textBeside(path: string, name: string): Promise<Opened<string>> {
  const why = await whyNotRead(path, name);
  if (why !== null) {
    const message = `weather.file is "${name}", ${why}`;
    return { ok: false, problems: [{ code: "weather-file-outside", path: ["weather", "file"], message }] };
  }
  try {
    return { ok: true, value: await textOf(besideOf(path, name)) };
  } catch (error) {
    if (!(error instanceof CallError)) throw error;
    const message = `weather.file is "${name}", which lies beside the scenario: ${error.message}`;
    return { ok: false, problems: [{ code: "no-weather-file", path: ["weather", "file"], message }] };
  }
}

/** Climate, and the weather file that a scenario names, which lies beside the file at `path`. */
export async function surroundingsOf(path: string, scenario: Scenario): Promise<Opened<Surroundings>> {
  const climate = await loadClimateTables();
  if (scenario.weather.kind !== "file") return { ok: true, value: { climate } };
  const name = scenario.weather.file;
  const text = await textBeside(path, name);
  if (!text.ok) return text;
  const weather = readWeatherFile(text.value, basename(name));
  return weather.ok ? { ok: true, value: { climate, weatherFile: weather.file } } : weather;
}

/** Reads a scenario file and prepares it for one run. */
export async function openPrepared(path: string, variant: string | undefined): Promise<Opened<Prepared>> {
  const opened = await openScenario(path, variant);
  if (!opened.ok) return opened;
  const surroundings = await surroundingsOf(path, opened.value);
  if (!surroundings.ok) return surroundings;
  const result = prepare(opened.value, surroundings.value);
  return result.ok ? { ok: true, value: result.prepared } : result;
}
