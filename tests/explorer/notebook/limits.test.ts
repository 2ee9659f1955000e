import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  LONGEST_NOTE,
  LONGEST_TEXT,
  MOST_BYTES,
  MOST_CHANGES,
  MOST_ENTRIES,
  MOST_READINGS,
  MOST_SCENARIOS,
} from "../../../engine/answers/notebookLimits.ts";
import type { Entry, Notebook } from "../../../engine/notebook/notebook.ts";
import {
  duplicateEntry,
  editEntry,
  moveEntry,
  withEntry,
  withoutEntry,
  withScenario,
  withVariant,
} from "../../../engine/notebook/notebookEdits.ts";
import { readNotebook } from "../../../engine/notebook/readNotebook.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { makeNotebook } from "../../../explorer/notebook/makeNotebook.ts";
import { notebookText } from "../../../explorer/notebook/notebookText.ts";
import { whyNotKept } from "../../../explorer/notebook/whyNotKept.ts";

const example = exampleNotebook("example");
const note = (text: string, id = "note"): Entry => ({ id, kind: "note", title: "Note", doc: { text } });
const readings = (count: number): Entry => ({
  id: "readings",
  kind: "readings",
  title: "Readings",
  doc: {
    scenario: "roof",
    readings: Array.from({ length: count }, () => ({ at: "2026-10-09T12:00", chargeShare: 0.5 })),
  },
});
const log = (rows: number): Entry => ({
  id: "log",
  kind: "actual",
  title: "Log",
  doc: {
    scenario: "roof",
    log: {
      name: "meter.csv",
      zone: "UTC",
      stamp: "instant",
      startMs: 0,
      usualMs: 900_000,
      atMinutes: Array.from({ length: rows }, (_, k) => 15 * k),
      ...Object.fromEntries(
        ["chargeShare", "bankV", "bankA", "bankW", "pvW", "loadW"].map((name) => [
          name,
          Array.from({ length: rows }, (_, k) => k / 8),
        ]),
      ),
      titles: [],
      mapping: {},
      findings: [],
    },
  },
});
const many = (count: number, edit: (notebook: Notebook, k: number) => Notebook, from = example) => {
  let notebook = from;
  for (let k = 0; k < count; k++) notebook = edit(notebook, k);
  return notebook;
};
const withVariants = (count: number) => many(count, (notebook) => withVariant(notebook, "roof").notebook);
const withNotes = (count: number, text = "") =>
  many(count, (notebook, k) => withEntry(notebook, note(text, `n${k}`), 0));
const isRead = (notebook: Notebook) => readNotebook(notebookText(notebook)).ok;

describe("an edit beyond what a notebook holds is not made, and it is said why", () => {
  const full = withVariants(MOST_SCENARIOS - example.scenarios.length);
  const changes = Array.from({ length: MOST_CHANGES + 1 }, (_, k) => ({ at: `place.${k}`, to: k }));
  const longText = withNotes(39, "x".repeat(LONGEST_NOTE));
  const cases: {
    what: string;
    from?: Notebook;
    to: (from: Notebook) => Notebook;
    says: RegExp;
    isStillRead?: boolean;
  }[] = [
    {
      what: "a note of 50 001 characters",
      to: (from) => withEntry(from, note("x".repeat(LONGEST_NOTE + 1)), 0),
      says: /at most, and this one has 50.001/,
    },
    {
      what: "a 41st scenario",
      from: full,
      to: (from) => withVariant(from, "roof").notebook,
      says: /40 scenarios at most/,
    },
    {
      what: "a 201st entry",
      from: withNotes(MOST_ENTRIES - example.entries.length),
      to: (from) => duplicateEntry(from, "answer"),
      says: /200 entries at most/,
    },
    { what: "a 501st reading", to: (from) => withEntry(from, readings(MOST_READINGS + 1), 0), says: /500 readings/ },
    {
      what: "a 501st change",
      to: (from) => withScenario(from, { id: "meadow", name: "M", basedOn: "roof", changes }),
      says: /501 changes, and a scenario has 500/,
    },
    {
      what: "a third weather file",
      to: (from) => ({ ...from, weatherFiles: ["a", "b", "c"].map((name) => ({ name, text: "" })) }),
      says: /2 weather files at most/,
    },
    {
      what: "a weather file of 900 001 characters",
      to: (from) => ({ ...from, weatherFiles: [{ name: "long.csv", text: "x".repeat(900_001) }] }),
      says: /long.csv: text: must be at most 900000/,
    },
    { what: "a log of 3001 rows", to: (from) => withEntry(from, log(3001), 0), says: /Log: doc.log/ },
    {
      what: "more than two million characters",
      from: longText,
      to: (from) => withEntry(from, note("x".repeat(LONGEST_NOTE), "last"), 0),
      says: /2 million characters at most as a file, and this would be 2.0/,
      isStillRead: true, // older notebooks met no limit
    },
    {
      what: "more than 200 000 values",
      from: many(8, (notebook) => duplicateEntry(notebook, "log"), withEntry(example, log(3000), 0)),
      to: (from) => duplicateEntry(from, "log"),
      says: /200.000 figures and texts at most/,
    },
    { what: "a title of 121 characters", to: (from) => ({ ...from, title: "x".repeat(121) }), says: /title: .* 120/ },
    { what: "an empty title", to: (from) => editEntry(from, "answer", { title: "" }), says: /must not be empty/ },
    { what: "a seed of 61 characters", to: (from) => ({ ...from, seed: "x".repeat(61) }), says: /seed/ },
    { what: "10 001 skies", to: (from) => ({ ...from, members: 10_001 }), says: /members/ },
    {
      what: "a forecast of five",
      to: (from) => editEntry(from, "forecast", { doc: { scenarios: Array(5).fill("roof") } }),
      says: /doc.scenarios/,
    },
    {
      what: "a map of 51 values",
      to: (from) =>
        withEntry(
          from,
          {
            id: "map",
            kind: "sizing",
            title: "Map",
            doc: {
              scenario: "roof",
              across: { at: "bank.blockAh", values: Array(51).fill(100) },
              targetIn100: 95,
              autonomyDays: 2,
            },
          },
          0,
        ),
      says: /at most 50 values/,
    },
    {
      what: "figures that are none",
      to: (from) =>
        withScenario(from, {
          id: "meadow",
          name: "M",
          basedOn: "roof",
          changes: [{ at: "bank.blockAh", to: [[Number.NaN]] }, { at: "" }],
        } as never),
      says: /M: changes/,
    },
    {
      what: "nesting",
      to: (from) =>
        withScenario(from, {
          id: "meadow",
          name: "M",
          basedOn: "roof",
          changes: [{ at: "x", to: JSON.parse(`${"[".repeat(36)}${"]".repeat(36)}`) }],
        }),
      says: /nests at most 40 levels/,
    },
    {
      what: "a field that reaches into the program",
      to: (from) =>
        withScenario(from, {
          id: "meadow",
          name: "M",
          basedOn: "roof",
          changes: [{ at: "x", to: JSON.parse('{"__proto__":1}') }],
        }),
      says: /__proto__ cannot be kept/,
    },
    {
      what: "an entry about nothing",
      to: (from) => editEntry(from, "run", { doc: { scenario: "gone" } }),
      says: /shows scenario gone/,
    },
  ];
  test.each(cases)("$what", ({ from = example, to, says, isStillRead = false }) => {
    const state = makeNotebook(from);
    expect(isRead(from)).toBe(true);
    const next = to(from);
    expect(isRead(next)).toBe(isStillRead);
    expect(state.act(next)).toMatch(says);
    expect(state.refusal()).toMatch(says);
    expect(state.now()).toBe(from);
    expect(state.canUndo()).toBe(false);
    expect(state.act({ ...from, title: "Goes on" })).toBeNull();
    expect(state.refusal()).toBeNull();
  });

  test("what stands just at the limit is kept", () => {
    for (const notebook of [full, withNotes(MOST_ENTRIES - example.entries.length), longText]) {
      expect(isRead(notebook)).toBe(true);
    }
    expect(whyNotKept(withEntry(example, note("x".repeat(LONGEST_NOTE)), 0), example)).toBeNull();
    expect(whyNotKept(withEntry(example, readings(MOST_READINGS), 0), example)).toBeNull();
    expect(whyNotKept(withEntry(example, log(3000), 0), example)).toBeNull();
  });

  test("one that an older duskline let grow over a limit may be made smaller, and not larger", () => {
    const over = withVariants(MOST_SCENARIOS + 3);
    const state = makeNotebook(over);
    expect(state.act({ ...over, title: "Renamed" })).toBeNull();
    expect(state.act({ ...over, scenarios: over.scenarios.slice(0, -1) })).toBeNull();
    expect(state.act(withVariant(over, "roof").notebook)).toMatch(/40 scenarios/);
  });

  test("a file fits into what is read of one, whatever letters it is written in", () => {
    const text = notebookText(withNotes(39, "\u{1F50B}".repeat(LONGEST_NOTE / 2)));
    expect(new TextEncoder().encode(text).length).toBeLessThan(MOST_BYTES);
    expect(text.length).toBeLessThan(LONGEST_TEXT * 1.1);
  });
});

test("whatever is edited in whatever order, what is kept can be opened again", () => {
  const lengths = fc.oneof(
    fc.constantFrom(0, 1, LONGEST_NOTE - 1, LONGEST_NOTE, LONGEST_NOTE + 1, 900_000, 900_001),
    fc.integer({ min: 0, max: 2 * LONGEST_NOTE }),
  );
  const letters = fc.constantFrom("x", "\u{1F50B}", "\u0000", '"', "\ud83d", "é", "\n");
  const texts = fc.tuple(letters, lengths).map(([letter, length]) => letter.repeat(Math.ceil(length / letter.length)));
  const values = fc.oneof(fc.jsonValue({ maxDepth: 45 }), fc.constantFrom(undefined, Number.NaN, -0, 1e308));
  const picks = fc.nat(1000);
  type Edit = (notebook: Notebook) => Notebook;
  const entryAt = ({ entries }: Notebook, k: number) => entries[k % Math.max(1, entries.length)]?.id ?? "none";
  const edits: fc.Arbitrary<Edit> = fc.oneof(
    texts.map(
      (text): Edit =>
        (from) =>
          withEntry(from, note(text, `n${from.entries.length}`), 0),
    ),
    fc.tuple(picks, texts).map(
      ([k, title]): Edit =>
        (from) =>
          editEntry(from, entryAt(from, k), { title }),
    ),
    picks.map(
      (k): Edit =>
        (from) =>
          duplicateEntry(from, entryAt(from, k)),
    ),
    picks.map(
      (k): Edit =>
        (from) =>
          many(100, (next) => duplicateEntry(next, entryAt(from, k)), from),
    ),
    picks.map(
      (k): Edit =>
        (from) =>
          withoutEntry(from, entryAt(from, k)),
    ),
    fc.tuple(picks, picks).map(
      ([k, to]): Edit =>
        (from) =>
          moveEntry(from, entryAt(from, k), to),
    ),
    fc.tuple(picks, values).map(
      ([k, to]): Edit =>
        (from) => {
          const base = from.scenarios[k % from.scenarios.length]!.id;
          return withVariant(from, base, [{ at: "bank.blockAh", to: to as number }]).notebook;
        },
    ),
    picks.map(
      (k): Edit =>
        (from) =>
          many(20, (next) => withVariant(next, from.scenarios[k % from.scenarios.length]!.id).notebook, from),
    ),
    fc.integer({ min: 1, max: 520 }).map(
      (count): Edit =>
        (from) =>
          withEntry(from, { ...readings(count), id: `r${from.entries.length}` }, 0),
    ),
    fc.integer({ min: 1, max: 3100 }).map(
      (rows): Edit =>
        (from) =>
          withEntry(from, { ...log(rows), id: `l${from.entries.length}` }, 0),
    ),
    texts.map(
      (text): Edit =>
        (from) => ({
          ...from,
          weatherFiles: [...(from.weatherFiles ?? []), { name: `w${from.weatherFiles?.length ?? 0}`, text }],
        }),
    ),
    fc.tuple(texts, texts).map(
      ([title, seed]): Edit =>
        (from) => ({ ...from, title, seed }),
    ),
  );
  fc.assert(
    fc.property(fc.array(edits, { minLength: 1, maxLength: 40 }), (all) => {
      const state = makeNotebook(example);
      for (const edit of all) state.act(edit(state.now()));
      const read = readNotebook(notebookText(state.now()));
      expect(read).toMatchObject({ ok: true });
    }),
    { numRuns: Number(process.env.DUSKLINE_RUNS ?? 25), seed: 4127 },
  );
});
