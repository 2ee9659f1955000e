import { createRoot } from "solid-js";
import { describe, expect, test } from "vitest";
import { figureAt, figuresIn } from "../../engine/answers/note/noteFigures.ts";
import type { VersusPicture } from "../../engine/answers/versus/versusPicture.ts";
import { tallyOf100 } from "../../engine/answers/versus/versusWords.ts";
import { askedByAll, leadOf } from "../../engine/notebook/asked.ts";
import { migrateNotebook } from "../../engine/notebook/migrateNotebook.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import {
  changedScenario,
  duplicateEntry,
  editEntry,
  freeId,
  moveEntry,
  whyKept,
  withoutEntry,
  withVariant,
} from "../../engine/notebook/notebookEdits.ts";
import { notebookFrom, readNotebook } from "../../engine/notebook/readNotebook.ts";
import { scenarioDocument, scenarioIn } from "../../engine/notebook/scenarioDocument.ts";
import { readScenario, readVariant } from "../../engine/scenario/readScenario.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { makeNotebook } from "../../explorer/notebook/makeNotebook.ts";
import { notebookFromScenario, notebookOf } from "../../explorer/start/notebookOf.ts";
import { EXAMPLE } from "./exampleRun.ts";

const example = exampleNotebook("example");
const text = (change: object) => JSON.stringify({ ...example, ...change });
const sentences = (source: string) => {
  const read = readNotebook(source);
  return read.ok ? [] : read.sentences;
};
const ids = (notebook: Notebook) => notebook.entries.map(({ id }) => id);

describe("reading a notebook", () => {
  test("the example is one, and comes back from its file as it was", () => {
    const read = readNotebook(JSON.stringify(example));
    expect(read.ok && read.notebook).toEqual(JSON.parse(JSON.stringify(example)));
  });

  test.each([
    { what: "no JSON", source: "{", says: /not JSON/ },
    { what: "something else", source: '{"format":"recipe"}', says: /format should be "duskline-notebook"/ },
    { what: "no object", source: "[]", says: /one JSON object/ },
    { what: "too long", source: `"${"x".repeat(4_000_001)}"`, says: /at most 2 million/ },
    { what: "a newer one", source: text({ version: 99 }), says: /newer duskline \(version 99.*left as it is/ },
    { what: "an unknown field", source: text({ extra: 1 }), says: /extra/ },
    {
      what: "an unknown kind",
      source: text({ entries: [{ id: "a", kind: "gauge", title: "A", doc: {} }] }),
      says: /entries\.0/,
    },
    {
      what: "a polluting field",
      source: text({}).replace('"title"', '"__proto__":{"x":1},"title"'),
      says: /__proto__/,
    },
    {
      what: "ids that stand twice",
      source: text({ entries: [example.entries[0], example.entries[0]] }),
      says: /Two entries have the id answer/,
    },
    {
      what: "an entry about nothing",
      source: text({ entries: [{ id: "a", kind: "run", title: "A", doc: { scenario: "gone" } }] }),
      says: /shows scenario gone/,
    },
    {
      what: "a ring of scenarios",
      source: text({
        entries: [],
        scenarios: [
          { id: "a", name: "A", basedOn: "b", changes: [] },
          { id: "b", name: "B", basedOn: "a", changes: [] },
        ],
      }),
      says: /based on itself/,
    },
    { what: "too few members", source: text({ members: 1 }), says: /members/ },
  ])("$what is refused in a sentence", ({ source, says }) => {
    expect(sentences(source).join(" ")).toMatch(says);
  });

  test("depth does no harm", () => {
    const deep = `${"[".repeat(100_000)}${"]".repeat(100_000)}`;
    expect(sentences(text({}).replace('"seed":"4127"', `"seed":${deep}`)).join(" ")).toMatch(/nests deeper|not JSON/);
  });

  test("an older version is brought up step by step and a newer one is left alone", () => {
    const old = { ...example, version: 1 };
    const steps = {
      1: (document: object) => ({ ...document, a: 1 }),
      2: (document: object) => ({ ...document, b: 2 }),
    };
    expect(migrateNotebook(old, steps, 3)).toMatchObject({ ok: true, document: { version: 3, a: 1, b: 2 } });
    expect(migrateNotebook({ ...example, version: 4 }, steps, 3)).toMatchObject({ ok: false });
    expect(old.version).toBe(1);
  });
});

describe("scenarios based on scenarios", () => {
  test("a variant is the scenario that the engine makes of the same variant", () => {
    const found = scenarioDocument(example, "meadow");
    const ours = readScenario(found.ok ? found.document : null);
    const engines = readVariant(EXAMPLE, "meadow");
    if (!ours.ok || !engines.ok) throw new Error("both read");
    const { $schema, ...theirs } = engines.scenario;
    expect({ ...ours.scenario, name: "" }).toEqual({ ...theirs, name: "" });
  });

  test("editing the base moves what is based on it", () => {
    const base = scenarioIn(example, "roof")!;
    const changed = changedScenario(base, [{ at: "bank.blockAh", to: 200 }]);
    const notebook = { ...example, scenarios: [changed, ...example.scenarios.slice(1)] } as Notebook;
    const found = scenarioDocument(notebook, "meadow");
    expect(found.ok && found.document.bank.blockAh).toBe(200);
    expect(found.ok && found.document.panels).toHaveLength(2);
  });

  test("a later change of the same place takes the earlier one's", () => {
    const once = changedScenario(scenarioIn(example, "two-blocks")!, [{ at: "bank.inParallel", to: 3 }]);
    expect("changes" in once && once.changes.filter(({ at }) => at === "bank.inParallel")).toEqual([
      { at: "bank.inParallel", to: 3 },
    ]);
  });

  test("what another is based on, or an entry shows, is kept, and it is said why", () => {
    expect(whyKept(example, "roof")).toMatch(/based on it/);
    const { notebook, id } = withVariant(example, "meadow");
    expect(whyKept(notebook, id)).toBeNull();
    expect(whyKept(notebook, "meadow")).toMatch(/based on it/);
  });

  test("a scenario file becomes a notebook with its variants", () => {
    const made = notebookOf(EXAMPLE, "made");
    expect(notebookFrom(JSON.parse(JSON.stringify(made))).ok).toBe(true);
    expect(made.scenarios.map(({ id }) => id)).toEqual(["plan", "meadow", "one-station", "two-blocks"]);
    expect(notebookFromScenario("{}", "made").ok).toBe(false);
  });
});

describe("entries", () => {
  test("move, copy and go, and leave what they were taken from untouched", () => {
    const before = ids(example);
    expect(ids(moveEntry(example, "forecast", 0)).slice(0, 2)).toEqual(["forecast", "answer"]);
    expect(moveEntry(example, "answer", -1)).toBe(example);
    expect(ids(duplicateEntry(example, "run"))).toContain("run-2");
    expect(ids(withoutEntry(example, "run"))).not.toContain("run");
    expect(ids(example)).toEqual(before);
  });

  test("an id is free and fit for an address", () => {
    expect(freeId("Übung am Fluß!", [])).toBe("u-bung-am-flu");
    expect(freeId("note", [{ id: "note" }, { id: "note-2" }])).toBe("note-3");
  });

  test("the notebook asks for each result once, the ruler's run first", () => {
    const asked = askedByAll(example);
    expect(asked[0]).toEqual({ kind: "run", doc: { scenario: leadOf(example) } });
    expect(new Set(asked.map((each) => JSON.stringify(each))).size).toBe(asked.length);
    expect(asked).toContainEqual({ kind: "versus", doc: { scenarios: ["roof", "meadow"] } });
  });
});

describe("undo over everything", () => {
  test("a run of typing is one step that starts from what was there; other acts are steps of their own", () => {
    createRoot((dispose) => {
      let nowMs = 0;
      const state = makeNotebook(example, () => nowMs);
      const ah = () => {
        const found = scenarioDocument(state.now(), "roof");
        return found.ok ? found.document.bank : null;
      };
      const resistance = ah()!.internalResistanceOhm!;
      for (const typed of [5, 56, 560]) {
        nowMs += 100;
        state.turn("roof", "blockAh", (document) => [
          { at: "bank.blockAh", to: typed },
          {
            at: "bank.internalResistanceOhm",
            to: (document.bank.internalResistanceOhm! * document.bank.blockAh) / typed,
          },
        ]);
      }
      expect(ah()!.blockAh).toBe(560);
      expect(ah()!.internalResistanceOhm).toBeCloseTo(resistance / 2, 9);
      state.act(editEntry(state.now(), "run", { title: "Renamed" }));
      state.act(withoutEntry(state.now(), "run"));
      state.undo();
      expect(state.now().entries.find(({ id }) => id === "run")?.title).toBe("Renamed");
      state.undo();
      state.undo();
      expect(state.now()).toBe(example);
      state.redo();
      expect(ah()!.blockAh).toBe(560);
      dispose();
    });
  });
});

describe("figures in notes", () => {
  test("are read with their scenario, or with the two that are held against one another", () => {
    expect(figuresIn("a {holds, meadow} b {saved, meadow over roof} c {not this} {usual lowest, roof}")).toMatchObject([
      { want: "holds", scenario: "meadow", over: null, of: "odds" },
      { want: "saved", scenario: "meadow", over: "roof", of: "versus" },
      { want: "usual lowest", scenario: "roof", over: null, of: "run" },
    ]);
    expect(figureAt("{holds}")).toBeNull();
    expect(figureAt("{__proto__, roof}")).toBeNull();
  });
});

test("a tally has a hundred strokes, whatever the sample's size", () => {
  const tally = (both: number, onlySecond: number, onlyFirst: number, neither: number) =>
    tallyOf100({
      members: both + onlySecond + onlyFirst + neither,
      tally: { both, onlySecond, onlyFirst, neither },
    } as VersusPicture);
  expect(tally(109, 820, 3, 68)).toEqual([11, 82, 0, 7]);
  expect(tally(1, 1, 1, 0).reduce((sum, count) => sum + count)).toBe(100);
});
