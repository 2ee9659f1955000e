import { basename } from "node:path";
import { loadClimateTables } from "../place/loadClimateTables.ts";
import { readWeatherFile } from "../place/readWeatherFile.ts";
import { type Prepared, prepare } from "../run/prepare.ts";
import type { Surroundings } from "../run/surroundings.ts";
import { applyChanges } from "../scenario/applyChanges.ts";
import type { Problem } from "../scenario/problem.ts";
import { readScenario, readVariant } from "../scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import { withZone } from "../scenario/withZone.ts";
import { besideOf, type CallContext } from "./callContext.ts";
import { CallError } from "./callError.ts";

export type Opened<T> = { ok: true; value: T } | { ok: false; problems: readonly Problem[] };

/** Reads a scenario file, or one of its variants, and validates it. */
async function openScenario(
  path: string,
  variant: string | undefined,
  context: CallContext,
): Promise<Opened<Scenario>> {
  const text = await context.textOf(path);
  const result = variant === undefined ? readScenario(text) : readVariant(text, variant);
  return result.ok ? { ok: true, value: result.scenario } : result;
}

/** A scenario of a file, or one of its variants, as it stands written (its zone included) and as it was read. */
export interface OpenedDocument {
  readonly path: string;
  readonly context: CallContext;
  readonly document: ScenarioInput;
  readonly scenario: Scenario;
}

/** Reads a scenario file, or one of its variants, as a document for `answerTo`. */
export async function openDocument(
  path: string,
  variant: string | undefined,
  context: CallContext,
): Promise<Opened<OpenedDocument>> {
  const text = await context.textOf(path);
  const base = readScenario(text);
  if (!base.ok) return base;
  const document: unknown = JSON.parse(text);
  const from = { path, context };
  if (variant === undefined)
    return { ok: true, value: { ...from, document: withZone(document as ScenarioInput), scenario: base.scenario } };
  const read = readVariant(text, variant);
  if (!read.ok) return read;
  const changed = applyChanges(document, base.scenario.variants.find(({ id }) => id === variant)!.changes);
  if (!changed.ok) return changed;
  // A variant is told by its own name.
  const named = { ...withZone(changed.document as ScenarioInput), name: read.scenario.name };
  return { ok: true, value: { ...from, document: named, scenario: read.scenario } };
}

/** The text of the weather file that a scenario names: where it cannot be had, the scenario is wrong and not the call. */
async function textBeside(path: string, name: string, context: CallContext): Promise<Opened<string>> {
  const why = await context.whyNotBeside(path, name);
  if (why !== null) {
    const message = `weather.file is "${name}", ${why}`;
    return { ok: false, problems: [{ code: "weather-file-outside", path: ["weather", "file"], message }] };
  }
  try {
    return { ok: true, value: await context.textOf(besideOf(path, name)) };
  } catch (error) {
    if (!(error instanceof CallError)) throw error;
    const message = `weather.file is "${name}", which lies beside the scenario: ${error.message}`;
    return { ok: false, problems: [{ code: "no-weather-file", path: ["weather", "file"], message }] };
  }
}

/** Climate, and the weather file that a scenario names, which lies beside the file at `path`. */
export async function surroundingsOf(
  path: string,
  scenario: Scenario,
  context: CallContext,
): Promise<Opened<Surroundings>> {
  const climate = await loadClimateTables();
  if (scenario.weather.kind !== "file") return { ok: true, value: { climate } };
  const name = scenario.weather.file;
  const text = await textBeside(path, name, context);
  if (!text.ok) return text;
  const weather = readWeatherFile(text.value, basename(name));
  return weather.ok ? { ok: true, value: { climate, weatherFile: weather.file } } : weather;
}

/** Reads a scenario file and prepares it for one run. */
export async function openPrepared(
  path: string,
  variant: string | undefined,
  context: CallContext,
): Promise<Opened<Prepared>> {
  const opened = await openScenario(path, variant, context);
  if (!opened.ok) return opened;
  const surroundings = await surroundingsOf(path, opened.value, context);
  if (!surroundings.ok) return surroundings;
  const result = prepare(opened.value, surroundings.value);
  return result.ok ? { ok: true, value: result.prepared } : result;
}
