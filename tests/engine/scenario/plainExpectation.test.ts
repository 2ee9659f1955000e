import { expect, test } from "vitest";
import { readMeasuredGear } from "../../../engine/gear/measuredGear.ts";
import { readMeterMapping } from "../../../engine/meter/meterMapping.ts";
import { notebookFrom } from "../../../engine/notebook/readNotebook.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { EVERYTHING } from "../../promise/everything.ts";
import { plainInput } from "../../truth/run/plainScenario.ts";

const WRONG: readonly unknown[] = [
  null,
  [],
  {},
  "",
  "x".repeat(61_000),
  -1,
  1e12,
  0.5,
  true,
  [null],
  [[]],
  { kind: "x" },
  Number.NaN,
];
const JARGON = /Invalid|Unrecognized|Too (small|big)|expected|received|undefined|\[object/;

/** Each value of a document replaced by each wrong one, and each taken out. */
function* mutated(document: unknown): Generator<unknown> {
  const places: (string | number)[][] = [];
  const visit = (node: unknown, path: (string | number)[]): void => {
    if (typeof node !== "object" || node === null) return;
    for (const key of Object.keys(node)) {
      places.push([...path, key]);
      visit((node as Record<string, unknown>)[key], [...path, key]);
    }
  };
  visit(document, []);
  for (const place of places) {
    for (const wrong of [undefined, ...WRONG]) {
      const copy = structuredClone(document) as Record<string | number, unknown>;
      let parent = copy;
      for (const key of place.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>;
      if (wrong === undefined) delete parent[place.at(-1)!];
      else parent[place.at(-1)!] = wrong;
      yield copy;
    }
  }
}

const plain = (sentences: readonly string[]) => sentences.filter((said) => JARGON.test(said.replace(/"[^"]*"/g, "")));

test("a meter's mapping is refused in plain words", () => {
  const mapping = {
    delimiter: ",",
    decimal: ".",
    zone: "Etc/UTC",
    shiftMinutes: 3,
    stamp: "start",
    columns: { charge: "SOC" },
  };
  for (const wrong of [...mutated(mapping), ...WRONG]) {
    const read = readMeterMapping(wrong);
    if (!read.ok) expect(plain(read.problems.map(({ message }) => message))).toEqual([]);
  }
  const read = readMeterMapping({ shiftMinutes: "three" });
  expect(read.ok ? "" : read.problems[0]!.message).toContain(
    "shiftMinutes of the meter's mapping does not fit (must be a number)",
  );
});

test("measured gear is refused in plain words", () => {
  const file = { format: "duskline-gear", version: 1, measured: [{ gear: "fridge", working: 3.6, on: "2026-05-31" }] };
  for (const wrong of [...mutated(file), ...WRONG]) {
    const read = readMeasuredGear(JSON.stringify(wrong));
    if (!read.ok) expect(plain(read.sentences)).toEqual([]);
  }
  const read = readMeasuredGear(
    '{"format":"duskline-gear","version":1,"measured":[{"gear":"fridge","working":"much"}]}',
  );
  expect(read.ok ? [] : read.sentences).toEqual([
    "measured.0.working: must be a number from 0 to 5000 (measured at work, in the shelf's unit).",
  ]);
});

test("a notebook is refused in plain words", () => {
  const { scenarios, ...rest } = exampleNotebook("example");
  const first = scenarios[0]!;
  const small = {
    ...rest,
    scenarios: [{ ...first, document: {} }, ...scenarios.slice(1, 2)],
    entries: rest.entries.slice(0, 4),
  };
  let refused = 0;
  for (const wrong of mutated(small)) {
    const read = notebookFrom(wrong);
    if (read.ok) continue;
    refused++;
    expect(plain(read.sentences)).toEqual([]);
  }
  expect(refused).toBeGreaterThan(100);
});

test("a scenario with everything in it is refused in plain words", () => {
  let refused = 0;
  let turn = 0;
  for (const wrong of mutated(EVERYTHING)) {
    // Every 31st, so that every value goes into some field of every kind and the whole stays short.
    if (turn++ % 31 !== 0) continue;
    const read = readScenario(wrong);
    if (read.ok) continue;
    refused++;
    expect(plain(read.problems.map(({ message }) => message))).toEqual([]);
  }
  expect(refused).toBeGreaterThan(300);
});

test("a scenario's changes are refused in plain words", () => {
  const variants = [{ id: "v", name: "v", changes: [{ at: "name", to: { inner: Number.NaN } }] }];
  const read = readScenario({ ...plainInput(), variants });
  const said = read.ok ? [] : read.problems.map(({ message }) => message);
  expect(said).toHaveLength(1);
  expect(plain(said)).toEqual([]);
});

test("a variant that nests 8,000 deep is refused in a sentence, as text and as a value", () => {
  const deep = `${'{"to":'.repeat(8000)}1${"}".repeat(8000)}`;
  const text = JSON.stringify({
    ...plainInput(),
    variants: [{ id: "v", name: "v", changes: [{ at: "name", to: "DEEP" }] }],
  }).replace('"DEEP"', deep);
  for (const source of [text, JSON.parse(text)]) {
    const read = readScenario(source);
    expect(read.ok ? "" : read.problems[0]!.message).toContain("nests groups and lists more than 40 deep");
  }
});
