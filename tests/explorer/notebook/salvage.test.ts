import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Entry, Notebook } from "../../../engine/notebook/notebook.ts";
import { withEntry, withVariant } from "../../../engine/notebook/notebookEdits.ts";
import { notebookFrom } from "../../../engine/notebook/readNotebook.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { salvagedNotebook } from "../../../explorer/notebook/salvage/salvagedNotebook.ts";

const example = exampleNotebook("example");
const salvaged = (value: unknown) => {
  expect(notebookFrom(value).ok).toBe(false);
  const got = salvagedNotebook(value, "read");
  if (!got.ok) throw new Error(got.sentences.join(" "));
  expect(notebookFrom(got.notebook).ok).toBe(true);
  expect(got.notebook.id).toBe("read");
  expect(got.missing.length).toBeGreaterThan(0);
  return got;
};
const says = (value: unknown) => salvaged(value).missing.join("\n");
const entryIds = (notebook: Notebook) => notebook.entries.map(({ id }) => id);
const without = (id: string) => entryIds(example).filter((each) => each !== id);

describe("a notebook that cannot be read whole opens with what can be read, and says what is missing", () => {
  test("a note beyond its limit stands there as several, and not a letter of it is missing", () => {
    const text = `${"a".repeat(49_999)}\u{1F50B}${"b".repeat(70_000)}`;
    const long: Entry = { id: "long", kind: "note", title: "Long", doc: { text } };
    const { notebook, missing } = salvaged(withEntry(example, long, 1));
    const parts = notebook.entries.flatMap((entry) => (entry.title.startsWith("Long") ? [entry] : []));
    expect(parts.map(({ title }) => title)).toEqual(["Long", "Long, part 2", "Long, part 3"]);
    expect(parts.map(({ doc }) => (doc as { text: string }).text).join("")).toBe(text);
    expect(notebook.entries).toHaveLength(example.entries.length + 3);
    expect(missing).toEqual([expect.stringMatching(/“Long” is too long for one entry and stands here as 3/)]);
  });

  test("so do readings", () => {
    const all = Array.from({ length: 1100 }, (_, k) => ({ at: "2026-10-09T12:00", panelsW: k }));
    const entry: Entry = { id: "r", kind: "readings", title: "Read", doc: { scenario: "roof", readings: all } };
    const { notebook } = salvaged(withEntry(example, entry, 0));
    const read = notebook.entries.slice(0, 3).flatMap(({ doc }) => (doc as { readings: unknown[] }).readings);
    expect(read).toEqual(all);
  });

  test("scenarios beyond the fortieth are named, with the entries that show them", () => {
    let over = example;
    for (let k = 0; k < 39; k++) over = withVariant(over, "roof", [], `Variant ${k}`).notebook;
    over = withEntry(over, { id: "last", kind: "run", title: "The last", doc: { scenario: "variant-38" } }, 0);
    const { notebook, missing } = salvaged(over);
    expect(notebook.scenarios).toHaveLength(40);
    expect(missing).toEqual([
      expect.stringMatching(/Scenario “Variant 37” is missing: a notebook holds 40/),
      expect.stringMatching(/Scenario “Variant 38” is missing/),
      expect.stringMatching(/Entry “The last” is missing: so is what it shows/),
    ]);
  });

  test("entries beyond the two hundredth are named", () => {
    let over = example;
    for (let k = 0; k < 200; k++) {
      over = withEntry(over, { id: `n${k}`, kind: "note", title: `N ${k}`, doc: { text: "" } }, k);
    }
    const { notebook, missing } = salvaged(over);
    expect(notebook.entries).toHaveLength(200);
    expect(missing).toHaveLength(example.entries.length);
    expect(missing[0]).toMatch(/Entry “Will it hold\?” is missing: a notebook holds 200/);
  });

  test.each([
    ["an entry of a kind that there is not", 1, { kind: "gauge" }, /Entry “.*” is missing: kind/],
    ["an entry that is a number", 1, 5, /Entry 2 is missing: it is damaged/],
    ["an entry without its document", 1, { doc: undefined }, /is missing: doc/],
    ["an entry with a field that reaches into the program", 1, JSON.parse('{"__proto__":1}'), /named __proto__/],
  ])("%s is missing alone", (_, at, change, words) => {
    const entry = typeof change === "number" ? change : Object.assign(Object.create(null), example.entries[at], change);
    if (typeof change === "object" && Object.hasOwn(change, "__proto__")) {
      Object.defineProperty(entry, "__proto__", { value: 1, enumerable: true });
    }
    const value = { ...example, entries: example.entries.map((each, k) => (k === at ? entry : each)) };
    const { notebook, missing } = salvaged(value);
    expect(entryIds(notebook)).toEqual(without(example.entries[at]!.id));
    expect(missing.join()).toMatch(words);
  });

  test("ids that stand twice or are none, and titles that are too long, cost nothing but their names", () => {
    const [first, ...rest] = example.entries;
    const value = { ...example, entries: [{ ...first, id: "../up", title: "x".repeat(130) }, ...rest, rest[0]] };
    const { notebook } = salvaged(value);
    expect(notebook.entries).toHaveLength(example.entries.length + 1);
    expect(notebook.entries[0]).toMatchObject({ id: "entry", title: "x".repeat(120), doc: first!.doc });
    expect(new Set(entryIds(notebook)).size).toBe(notebook.entries.length);
  });

  test("what is based on a damaged scenario goes with it; a ring goes whole; without any, a stand-in is named", () => {
    const damaged = {
      ...example,
      scenarios: [{ id: "roof", name: "Roof", document: 5 }, ...example.scenarios.slice(1)],
    };
    expect(says(damaged)).toMatch(
      /“Roof” is missing: Its document should be[\s\S]*“Roof and meadow” is missing: so is its base/,
    );
    const { notebook } = salvaged(damaged);
    expect(notebook.scenarios).toMatchObject([{ id: "a-stand-in", name: expect.stringMatching(/stand-in/) }]);
    expect(notebook.entries.map(({ kind }) => kind)).toEqual(
      example.entries.map(({ kind }) => kind).filter((kind) => kind === "note" || kind === "cautions"),
    );
    const ring = {
      ...example,
      scenarios: [
        ...example.scenarios,
        { id: "a", name: "A", basedOn: "b", changes: [] },
        { id: "b", name: "B", basedOn: "a", changes: [] },
      ],
    };
    expect(salvaged(ring).notebook.scenarios).toEqual(example.scenarios);
  });

  test("a damaged head is said and replaced; lists that are none are empty", () => {
    expect(says({ ...example, seed: 5, members: -3, title: "", extra: 1, weatherFiles: "no", entries: null })).toMatch(
      /extra[\s\S]*weather files is damaged[\s\S]*entries is damaged[\s\S]*title[\s\S]*4127[\s\S]*1000 are drawn/,
    );
  });

  test("a newer one, and what is no notebook, are refused in a sentence", () => {
    for (const [value, words] of [
      [{ ...example, version: 99 }, /newer duskline/],
      [{ format: "recipe" }, /no notebook/],
      [undefined, /holds no notebook/],
    ] as const) {
      const got = salvagedNotebook(value, "read");
      expect(!got.ok && got.sentences.join()).toMatch(words);
    }
  });

  test("wherever it is damaged, all other parts are there as they were", () => {
    const damage = fc.oneof(
      fc.constantFrom(null, 0, -1, "", "x", true, [], {}, [[]], "x".repeat(200)),
      fc.jsonValue({ maxDepth: 3 }),
    );
    const parts = [...example.scenarios.keys()].map((k) => ["scenarios", k] as const);
    const entries = [...example.entries.keys()].map((k) => ["entries", k] as const);
    fc.assert(
      fc.property(
        fc.constantFrom(...parts, ...entries),
        fc.string(),
        damage,
        fc.nat(),
        ([list, at], key, worth, pick) => {
          const value = JSON.parse(JSON.stringify(example));
          const keys = Object.keys(value[list][at]);
          const name = pick % 3 === 0 ? key : keys[pick % keys.length]!;
          Object.defineProperty(value[list][at], name, { value: worth, enumerable: true });
          if (notebookFrom(value).ok) return;
          const { notebook } = salvaged(value);
          if (list === "entries") {
            const others = example.entries.filter((_, k) => k !== at);
            for (const other of others) expect(notebook.entries).toContainEqual(other);
            expect(notebook.scenarios).toEqual(JSON.parse(JSON.stringify(example.scenarios)));
          } else {
            const needed = (id: string) => id === example.scenarios[at]!.id || at === 0;
            for (const entry of example.entries) {
              if (
                !JSON.stringify(entry.doc)
                  .match(/"(roof|meadow|two-blocks)"/g)
                  ?.some((id) => needed(id.slice(1, -1)))
              ) {
                expect(notebook.entries).toContainEqual(entry);
              }
            }
          }
        },
      ),
      { numRuns: Number(process.env.DUSKLINE_RUNS ?? 200), seed: 4127 },
    );
  });
});
