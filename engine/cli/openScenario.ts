import { readFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import {
  loadClimateTables,
  type Prepared,
  type Problem,
  prepare,
  readScenario,
  readVariant,
  readWeatherFile,
  type Scenario,
  type Surroundings,
} from "../index.ts";
import { CallError } from "./callError.ts";

/** Weather files are read whole; anything larger is not one. */
const LARGEST_FILE_BYTES = 10_000_000;

export type Opened<T> = { ok: true; value: T } | { ok: false; problems: readonly Problem[] };

async function textOf(path: string): Promise<string> {
  try {
    const bytes = await readFile(path);
    if (bytes.length > LARGEST_FILE_BYTES) {
      throw new CallError(
        `${path} has ${(bytes.length / 1e6).toFixed(1)} MB; files of up to 10 MB are read. Is it the right file?`,
      );
    }
    return new TextDecoder().decode(bytes);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ENOENT") throw new CallError(`There is no file ${path}; check the name and the folder.`);
    if (code === "EISDIR") throw new CallError(`${path} is a folder; name a scenario file in it.`);
    if (code === "EACCES") throw new CallError(`${path} may not be read by you; check its permissions.`);
    throw error;
  }
}

/** Reads a scenario file, or one of its variants, and validates it. */
export async function openScenario(path: string, variant: string | undefined): Promise<Opened<Scenario>> {
  const text = await textOf(path);
  const result = variant === undefined ? readScenario(text) : readVariant(text, variant);
  return result.ok ? { ok: true, value: result.scenario } : result;
}

/** Reads a scenario file with all it needs from outside and prepares it for a run. */
export async function openPrepared(path: string, variant: string | undefined): Promise<Opened<Prepared>> {
  const opened = await openScenario(path, variant);
  if (!opened.ok) return opened;
  const scenario = opened.value;
  const surroundings: { -readonly [Key in keyof Surroundings]: Surroundings[Key] } = {
    climate: await loadClimateTables(),
  };
  if (scenario.weather.kind === "file") {
    const name = scenario.weather.file;
    const weather = readWeatherFile(await textOf(join(dirname(path), name)), basename(name));
    if (!weather.ok) return weather;
    surroundings.weatherFile = weather.file;
  }
  const result = prepare(scenario, surroundings);
  return result.ok ? { ok: true, value: result.prepared } : result;
}
