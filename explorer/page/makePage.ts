import { createComputed, createMemo, createSignal } from "solid-js";
import { timeScale } from "../charts/timeScale.ts";
import { type Asked, askedByAll } from "../notebook/asked.ts";
import type { NotebookState } from "../notebook/makeNotebook.ts";
import type { EntryDoc, Notebook } from "../notebook/notebook.ts";
import {
  freeId,
  whyKept,
  withEntry,
  withoutChange,
  withoutScenario,
  withScenario,
  withVariant,
} from "../notebook/notebookEdits.ts";
import type { Found, NotebookPage } from "../notebook/notebookPage.ts";
import { lostChanges, type ScenarioDocument, scenarioDocument, scenarioIn } from "../notebook/scenarioDocument.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import type { Want } from "../results/desk.ts";
import type { Results } from "../results/makeResults.ts";
import { actualWanted, driversWanted, learnedWanted, limitsWanted, sizesWanted } from "../results/wanted.ts";

/** A sheet narrower than this is read with a thumb. */
const PHONE_PX = 700;

type Documents = ReadonlyMap<string, ScenarioDocument>;

function documentsOf(notebook: Notebook): Documents {
  return new Map(notebook.scenarios.map(({ id }) => [id, scenarioDocument(notebook, id)]));
}

/** The key of a want is its whole content. */
const runKey = (found: ScenarioDocument | undefined) => (found?.ok ? JSON.stringify(["run", found.document]) : null);

/** What entries see of their page, put together from the notebook, its results and the width of the sheet. */
export function makePage(
  state: NotebookState,
  results: Results,
  sheetPx: () => number,
  takeWeather: NotebookPage["takeWeather"],
) {
  const [readingMs, setReadingMs] = createSignal<number | null>(null);
  const [scrolled, setScrolled] = createSignal({ px: 0, viewPx: 0 });
  const documents = createMemo(() => documentsOf(state.now()));
  const documentsBefore = createMemo(() => {
    const before = state.before();
    return before === null ? null : documentsOf(before);
  });
  const isPhone = () => sheetPx() < PHONE_PX;
  const room = createMemo(() => ({
    isPhone: isPhone(),
    axisPx: isPhone() ? 40 : 64,
    labelsPx: sheetPx() >= 1100 ? 214 : 192,
  }));
  const roomPx = () => sheetPx() - room().axisPx - room().labelsPx;
  const keys = createMemo(() => {
    documents();
    state.now();
    return new Map<string, string | null>();
  });
  /** A key is long to write and read at every news: once for each edit. */
  const keyOnce = (name: string, write: () => string | null): string | null => {
    const known = keys();
    const key = known.has(name) ? known.get(name)! : write();
    known.set(name, key);
    return key;
  };
  const oddsKey = (found: ScenarioDocument | undefined) => {
    const { seed, members } = state.now();
    return found?.ok ? JSON.stringify(["odds", seed, members, found.document]) : null;
  };
  const versusKey = (first: ScenarioDocument | undefined, second: ScenarioDocument | undefined) => {
    const { seed, members } = state.now();
    return first?.ok && second?.ok ? JSON.stringify(["versus", seed, members, first.document, second.document]) : null;
  };

  const sizesWant = (doc: EntryDoc<"sizing">): Want | null => {
    const found = documents().get(doc.scenario);
    if (!found?.ok) return null;
    return sizesWanted(found.document, doc, state.now());
  };
  const driversWant = (scenario: string): Want | null => {
    const found = documents().get(scenario);
    if (!found?.ok) return null;
    return driversWanted(found.document, state.now());
  };

  const limitsWant = (doc: EntryDoc<"limits">): Want | null => {
    const found = documents().get(doc.scenario);
    return found?.ok ? limitsWanted(found.document, doc) : null;
  };
  const learnedWant = (doc: EntryDoc<"readings">): Want | null => {
    const found = documents().get(doc.scenario);
    return found?.ok ? learnedWanted(found.document, doc, state.now()) : null;
  };
  const actualWant = (doc: EntryDoc<"actual">): Want | null => {
    const found = documents().get(doc.scenario);
    return found?.ok ? actualWanted(found.document, doc, state.now()) : null;
  };
  /** What an entry with choices of its own wants; undefined for what a scenario alone says. */
  const ownWant = (asked: Asked): Want | null | undefined => {
    switch (asked.kind) {
      case "sizes":
        return sizesWant(asked.doc);
      case "drivers":
        return driversWant(asked.scenario);
      case "limits":
        return limitsWant(asked.doc);
      case "learned":
        return learnedWant(asked.doc);
      case "actual":
        return actualWant(asked.doc);
      default:
        return undefined;
    }
  };

  // Before anything is drawn: the desk works while the page does.
  createComputed(() => {
    const { seed, members } = state.now();
    const wants = askedByAll(state.now()).flatMap((asked): Want[] => {
      const own = ownWant(asked);
      if (own !== undefined) return own === null ? [] : [own];
      if (asked.kind === "versus") {
        const [first, second] = [documents().get(asked.first), documents().get(asked.second)];
        const key = versusKey(first, second);
        if (key === null || !first?.ok || !second?.ok) return [];
        return [{ key, kind: "versus", documents: [first.document, second.document], seed, members }];
      }
      if (asked.kind !== "run" && asked.kind !== "odds") return [];
      const found = documents().get(asked.scenario);
      const key = asked.kind === "run" ? runKey(found) : oddsKey(found);
      if (key === null || !found?.ok) return [];
      const { document } = found;
      return [asked.kind === "run" ? { key, kind: "run", document } : { key, kind: "odds", document, seed, members }];
    });
    results.want(wants);
  });

  /** Adds what is wrong with the document itself, where it cannot even be put together. */
  const withDocument = <Result>(id: string, found: Found<Result>): Found<Result> => {
    const document = documents().get(id);
    if (document?.ok) return found;
    const message = document?.sentence ?? `There is no scenario ${id} in this notebook.`;
    return { ...found, progress: null, problems: [{ code: "no-document", path: [], message }] };
  };

  const page: NotebookPage = {
    notebook: state.now,
    scenario: (id) => scenarioIn(state.now(), id),
    document: (id) => {
      const found = documents().get(id);
      return found?.ok ? found.document : null;
    },
    baseDocument: (id) => {
      const scenario = scenarioIn(state.now(), id);
      return scenario !== null && "basedOn" in scenario ? page.document(scenario.basedOn) : null;
    },
    change: state.change,
    turn: state.turn,
    settle: state.settle,
    rename: (id, name) => {
      const scenario = scenarioIn(state.now(), id);
      const clean = name.trim().slice(0, 120);
      if (scenario === null || clean === "" || clean === scenario.name) return;
      state.act(withScenario(state.now(), { ...scenario, name: clean }));
    },
    takeWeather,
    removeScenario: (id) => {
      const why = whyKept(state.now(), id);
      if (why === null) state.act(withoutScenario(state.now(), id));
      return why;
    },
    lostChanges: (id) => lostChanges(state.now(), id),
    forgetChange: (id, number) => state.act(withoutChange(state.now(), id, number)),
    branch: (basedOn, after, changes, wantedName) => {
      const { notebook, id } = withVariant(state.now(), basedOn, changes, wantedName);
      const { name } = scenarioIn(notebook, id)!;
      const at = notebook.entries.findIndex((entry) => entry.id === after);
      const entry = {
        id: freeId("scenario", notebook.entries),
        kind: "scenario" as const,
        title: name,
        doc: { scenario: id },
      };
      return state.act(withEntry(notebook, entry, at + 1)) === null ? name : null;
    },
    run: (id) =>
      withDocument(
        id,
        results.find(
          "run",
          `run ${id}`,
          keyOnce(`run ${id}`, () => runKey(documents().get(id))),
        ),
      ),
    runBefore: (id): RunPicture | null => {
      const key = runKey(documentsBefore()?.get(id));
      if (key === null || key === runKey(documents().get(id))) return null;
      const before = results.known("run", key);
      const now = page.run(id).result;
      return before === null || now === null || sameCharge(before, now) ? null : before;
    },
    odds: (id) =>
      withDocument(
        id,
        results.find(
          "odds",
          `odds ${id}`,
          keyOnce(`odds ${id}`, () => oddsKey(documents().get(id))),
        ),
      ),
    versus: (first, second) => {
      const key = keyOnce(`versus ${first} ${second}`, () =>
        versusKey(documents().get(first), documents().get(second)),
      );
      const found = results.find("versus", `versus ${first} ${second}`, key);
      return withDocument(first, withDocument(second, found));
    },
    sizes: (doc) => {
      const slot = `sizes ${JSON.stringify([doc.scenario, doc.across?.at, doc.up?.at])}`;
      const key = keyOnce(`sizes ${JSON.stringify(doc)}`, () => sizesWant(doc)?.key ?? null);
      return withDocument(doc.scenario, results.find("sizes", slot, key));
    },
    drivers: (id) => {
      const key = keyOnce(`drivers ${id}`, () => driversWant(id)?.key ?? null);
      return withDocument(id, results.find("drivers", `drivers ${id}`, key));
    },
    limits: (doc) =>
      withDocument(doc.scenario, results.find("limits", `limits ${doc.scenario}`, limitsWant(doc)?.key ?? null)),
    learned: (doc) =>
      withDocument(doc.scenario, results.find("learned", `learned ${doc.scenario}`, learnedWant(doc)?.key ?? null)),
    actual: (doc) =>
      withDocument(doc.scenario, results.find("actual", `actual ${doc.scenario}`, actualWant(doc)?.key ?? null)),
    scale: ({ ruler }) => timeScale(ruler, isPhone() ? null : Math.min(864, roomPx())),
    room,
    readingMs,
    read: setReadingMs,
    scrollPx: () => (page.scrolls() ? scrolled().px : 0),
    scrolls: () => isPhone() || widthPx() > Math.max(864 + 24, roomPx() + 24),
    scroll: (px, viewPx) => setScrolled({ px, viewPx }),
  };
  const lead = createMemo(() => {
    const first = askedByAll(state.now())[0]!;
    return first.kind === "run" ? page.run(first.scenario).result : null;
  });
  const widthPx = createMemo(() => {
    const picture = lead();
    return picture === null ? 0 : page.scale(picture).widthPx;
  });
  return { page, lead, viewPx: () => scrolled().viewPx };
}

/** Whether two runs have one and the same curve, as after a change of reserve. */
function sameCharge(a: RunPicture, b: RunPicture): boolean {
  return a.steps === b.steps && a.chargeShare.every((share, i) => share === b.chargeShare[i]);
}
