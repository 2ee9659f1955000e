import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { limits } from "../../engine/checks/limits.ts";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { oddsReport, runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { readWeatherFile } from "../../engine/place/readWeatherFile.ts";
import { prepare } from "../../engine/run/prepare.ts";
import { makeReuse } from "../../engine/run/reuse.ts";
import type { Surroundings } from "../../engine/run/surroundings.ts";
import { type Trace, tracePrepared } from "../../engine/run/trace.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { type SchemaNode, scenarioInputSchema } from "../../engine/scenario/scenarioSchema.ts";
import { type Document, EVERYTHING, WEATHER_CSV } from "./everything.ts";
import { put } from "./sampleScenario.ts";

/**
 * A model that ignores what it is told is wrong without saying so. Every field of the format is changed here, within its
 * range, in a scenario in which it should matter; some result must move. What is for people only, and what only an
 * ensemble reads, is named, and is shown to be just that.
 */

/** Names, notes and the documentation of effort: they are printed and change no watt. */
const FOR_PEOPLE = new Set([
  ...["$schema", "format", "version", "name", "note"].map((field) => `Scenario.${field}`),
  ...["Place", "Bank", "Gear", "Station", "Companion", "Panel group", "Loss", "Variant"].map((part) => `${part}.name`),
  ...["tree", "box", "horizon"].map((kind) => `Obstacle: ${kind}.name`),
  ...["mains", "generator", "vehicle"].map((kind) => `Source: ${kind}.name`),
  ...["cost", "massKg", "setupMinutes"].map((field) => `Bring.${field}`),
  // Says what blocks make up the nominal volts, and is refused where they cannot.
  "Bank.inSeries",
  // Names the file that is handed over along with the scenario; the command line goes and reads it.
  "Weather: file.file",
]);

/** Names by which one part refers to another; changed alone, they lead nowhere. */
const REFERENCES = /\.id$/;
/** The word that tells kinds apart; each kind is visited on its own. */
const KINDS = /\.kind$/;
/** Worked in before anything is read; `applyChanges.test.ts` sees to them. */
const CHANGES = /^(Change|Variant)\./;

/** What one run says nothing about. */
const ENSEMBLE_ONLY =
  /^(How sure are you\?|Operators|Known day)\.|^Scenario\.shedding$|^Weather: typical\.monthlyKt(Sd|R1)/;

/** What a run passes over and the limits read. */
const LIMITS_ONLY = new Set([
  "Module.iscA",
  "Module.maxSeriesFuseA",
  ...["maxPanelV", "maxPanelA", "fuseA", "holderA"].map((field) => `Controller.${field}`),
  ...["fuseA", "holderA"].map((field) => `Feed.${field}`),
  ...["fuseA", "holderA"].map((field) => `Lead.${field}`),
  "Station.longestOverMin",
  "Panel group.stringFuseA",
  "Converter.maxOutputA",
  ...["peakDischargeA", "shortCircuitA"].map((field) => `Bank.${field}`),
  ...["fuseA", "holderA", "fuseBreaksA", "fuseFromPostM", "fuseLeadSheathed", "disconnectA", "distributionA"].map(
    (field) => `Main feed.${field}`,
  ),
]);
/** Texts that mean something, and what else they could be. */
const OTHER_TEXTS: Readonly<Record<string, readonly unknown[]>> = {
  "Place.zone": ["Europe/London"],
  "Time.start": ["2026-06-12T08:30"],
  "Time.end": ["2026-06-14T06:20"],
  "Stretch of the clock.from": ["07:10", "13:50"],
  "Stretch of the clock.to": ["16:40", "11:10"],
  "Aim.at": ["06:10", "15:50"],
  "Use.station": ["b"],
  "Station.interlock": ["another"],
  "Known day.date": ["2026-06-14"],
  ...Object.fromEntries(
    ["Gear", "Station", "Panel group", "Source: mains", "Source: vehicle", "Source: generator"].flatMap((part) => [
      [`${part}.from`, ["2026-06-12T11:40", "2026-06-12T19:00", "2026-06-12T07:30", "2026-06-12T21:40"]],
      [
        `${part}.until`,
        ["2026-06-13T11:00", "2026-06-13T18:40", "2026-06-13T08:00", "2026-06-12T07:20", "2026-06-12T21:40"],
      ],
    ]),
  ),
  "Selector.inputs": ["south"],
  "Scenario.shedding": ["a"],
  "Weather: file.file": ["elsewhere.csv"],
};

/** Fields that stand in a sum with others; a change must keep it. */
const TOGETHER: Readonly<Record<string, (document: Document, path: Path) => void>> = {
  "Mode.share": (document, path) => {
    const list = path.slice(0, -2);
    put(document, [...list, 0, "share"], 0.2);
    put(document, [...list, 1, "share"], 0.8);
  },
};

type Path = readonly (string | number)[];

interface Leaf {
  readonly field: string;
  readonly path: Path;
  readonly value: unknown;
  readonly node: SchemaNode;
}

const SCHEMA = scenarioInputSchema();

/** Every single value of a document with the field of the format that it fills. */
function leaves(node: SchemaNode, value: unknown, path: Path, field: string): Leaf[] {
  const options = node.oneOf ?? node.anyOf;
  if (options !== undefined && value !== null && typeof value === "object") {
    const kind = (value as { kind?: string }).kind;
    const option = options.find((each) => each.properties?.kind?.const === kind || each.type === "array");
    return leaves(option ?? options[0]!, value, path, field);
  }
  if (Array.isArray(value)) return value.flatMap((item, i) => leaves(node.items!, item, [...path, i], field));
  if (value !== null && typeof value === "object") {
    return Object.entries(value).flatMap(([key, inner]) =>
      leaves(node.properties![key]!, inner, [...path, key], `${node.title}.${key}`),
    );
  }
  return [{ field, path, value, node }];
}

/** Every field that the format has, by the name of its part. */
function fieldsOf(node: SchemaNode, field: string, found: Set<string>): Set<string> {
  const inner = [...(node.oneOf ?? []), ...(node.anyOf ?? [])];
  if (node.properties !== undefined) {
    for (const [key, each] of Object.entries(node.properties)) fieldsOf(each, `${node.title}.${key}`, found);
  } else if (node.items !== undefined) fieldsOf(node.items, field, found);
  else if (inner.some((each) => each.properties !== undefined || each.items !== undefined)) {
    for (const each of inner) fieldsOf(each, field, found);
  } else found.add(field);
  return found;
}

function othersFor({ field, node, value }: Leaf): unknown[] {
  if (OTHER_TEXTS[field] !== undefined) return [...OTHER_TEXTS[field]];
  if (typeof value === "boolean") return [!value];
  const nodes = [node, ...(node.anyOf ?? []), ...(node.oneOf ?? [])];
  return nodes.flatMap((each): unknown[] => {
    if (each.enum !== undefined) return each.enum.filter((word) => word !== value);
    if (each.const !== undefined) return each.const === value ? [] : [each.const];
    if (each.quantity === undefined) return [];
    const { low, high } = each.quantity;
    const now = typeof value === "number" ? value : (low + high) / 2;
    const near = [
      now * 1.1,
      now * 0.9,
      now * 1.04,
      now * 0.96,
      now * 0.5,
      now * 2,
      now + 1,
      now - 1,
      low,
      high,
      (low + high) / 2,
    ];
    const whole = each.type === "integer" ? near.map(Math.round) : near;
    return whole.filter((number) => number >= low && number <= high && number !== value);
  });
}

const climate = await loadClimateTables();
const file = readWeatherFile(WEATHER_CSV, "hours.csv");
if (!file.ok) throw new Error(file.problems[0]!.message);
const around: Surroundings = { climate, weatherFile: file.file };

/** Fingerprint of all figures in a value. Words, and what is only the input again, do not count. */
const hash = (value: unknown) => {
  const print = createHash("sha1");
  const visit = (at: unknown): void => {
    if (ArrayBuffer.isView(at)) print.update(new Uint8Array(at.buffer, at.byteOffset, at.byteLength));
    else if (at !== null && typeof at === "object") {
      for (const [key, inner] of Object.entries(at)) {
        if (key === "sentences" || key === "name" || key === "minimumV") continue;
        print.update(`${key}:`);
        visit(inner);
      }
    } else print.update(`${JSON.stringify(at)},`);
  };
  visit(value);
  return print.digest("hex");
};

/** What scenarios that differ in one field share is prepared once; that it is theirs, `reuse.test.ts` sees to. */
const reuse = makeReuse(200);

/** One run, or why there is none; null where the document is refused. */
function traceOf(document: unknown): Trace | string | null {
  const read = readScenario(document);
  if (!read.ok) return null;
  const ready = prepare(read.scenario, around, reuse);
  return ready.ok ? tracePrepared(ready.prepared) : hash(ready.problems);
}

/** All that one run says in figures; null where the document is refused. */
function runOf(document: unknown): string | null {
  const run = traceOf(document);
  if (run === null || typeof run === "string") return run;
  const { record, details, verdict, days, prepared } = run;
  return hash([record, details, verdict, days, prepared.grid.zone === "" ? 0 : prepared.grid.localMinute]);
}

/** What the limits of one run say in figures. */
function limitsOf(document: unknown): string | null {
  const run = traceOf(document);
  return run === null || typeof run === "string" ? run : hash(limits(run));
}

/** What a small ensemble says in figures. */
function ensembleOf(document: unknown): string | null {
  const read = readScenario(document);
  if (!read.ok) return null;
  const ready = prepareEnsemble(read.scenario, around, "every field", reuse);
  if (!ready.ok) return null;
  return hash(oddsReport(ready.ensemble, runMembers(ready.ensemble, 0, 12)));
}

const documents = Object.entries(EVERYTHING);
const wanted = [...fieldsOf(SCHEMA, "", new Set())].filter(
  (field) => !REFERENCES.test(field) && !KINDS.test(field) && !CHANGES.test(field) && !FOR_PEOPLE.has(field),
);

function changed(document: ScenarioInput, leaf: Leaf, other: unknown): Document {
  const copy = structuredClone(document) as Document;
  put(copy, leaf.path, other);
  return copy;
}

/** Tries of a field that should move nothing, in each document: what reads it reads it whatever it says. */
const TRIES_IN_VAIN = 3;

/** Fields of which some change moves what `results` says. @param most tries of one field in one document */
function moving(
  results: (document: unknown) => string | null,
  fields: ReadonlySet<string>,
  most = Number.POSITIVE_INFINITY,
): Set<string> {
  const moved = new Set<string>();
  for (const [name, document] of documents) {
    const before = results(document);
    expect(before, `${name} reads and runs`).not.toBeNull();
    for (const leaf of leaves(SCHEMA, document, [], "")) {
      const { field, path } = leaf;
      if (!fields.has(field) || moved.has(field)) continue;
      const together = TOGETHER[field];
      const tries =
        together === undefined
          ? othersFor(leaf)
              .slice(0, most)
              .map((other) => changed(document, leaf, other))
          : [];
      if (together !== undefined) {
        const copy = structuredClone(document) as Document;
        together(copy, path);
        tries.push(copy);
      }
      const isMoved = tries.some((each) => {
        const after = results(each);
        return after !== null && after !== before;
      });
      if (isMoved) moved.add(field);
    }
  }
  return moved;
}

test("every field that describes the plan moves some figure of a run", () => {
  const fields = new Set(wanted.filter((field) => !ENSEMBLE_ONLY.test(field) && !LIMITS_ONLY.has(field)));
  const moved = moving(runOf, fields);
  expect([...fields].filter((field) => !moved.has(field))).toEqual([]);
});

test("what only an ensemble reads moves an ensemble and no run", () => {
  const fields = new Set(wanted.filter((field) => ENSEMBLE_ONLY.test(field)));
  expect(fields.size).toBeGreaterThan(10);
  const moved = moving(ensembleOf, fields);
  expect([...fields].filter((field) => !moved.has(field))).toEqual([]);
  expect([...moving(runOf, fields, TRIES_IN_VAIN)]).toEqual([]);
});

test("what only the limits read moves a limit and no run", () => {
  const moved = moving(limitsOf, LIMITS_ONLY);
  expect([...LIMITS_ONLY].filter((field) => !moved.has(field))).toEqual([]);
  expect([...moving(runOf, LIMITS_ONLY, TRIES_IN_VAIN)]).toEqual([]);
});

test("the main feed's cable moves a limit, and a run's volts at the radio", () => {
  const { full } = EVERYTHING;
  const { converter: _, ...direct } = full!;
  const longer = { ...direct, mainFeed: { ...full!.mainFeed!, cable: { mm2: 16, oneWayM: 3 } } };
  expect(limitsOf(longer)).not.toBe(limitsOf(direct));
  expect(runOf(longer)).not.toBe(runOf(direct));
});

test("what is for people moves no figure", () => {
  const fields = new Set([...FOR_PEOPLE].filter((field) => !/\.(format|version)$/.test(field)));
  expect([...moving(runOf, fields, TRIES_IN_VAIN)]).toEqual([]);
});

test("air that is typed in goes before a weather file's, in one run and in an ensemble", () => {
  const document = EVERYTHING["from a file"]!;
  const cold = { ...document, weather: { ...document.weather, air: { maxC: -8, minC: -20 } } };
  expect(runOf(cold)).not.toBe(runOf(document));
  expect(ensembleOf(cold)).not.toBe(ensembleOf(document));
});
