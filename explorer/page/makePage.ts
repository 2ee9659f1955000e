import { createComputed, createMemo, createSignal } from "solid-js";
import type { Asked } from "../../engine/answers/asked.ts";
import type { Found } from "../../engine/answers/found.ts";
import { askRuler, EDITING_KIND, kindOf } from "../../engine/answers/kinds.ts";
import { placeOf, wantOf } from "../../engine/answers/wantOf.ts";
import { timeScale } from "../../engine/drawing/timeScale.ts";
import { askedByAll, leadOf } from "../../engine/notebook/asked.ts";
import type { Entry, Notebook } from "../../engine/notebook/notebook.ts";
import {
  freeId,
  whyKept,
  withEntry,
  withoutChange,
  withoutScenario,
  withScenario,
  withVariant,
} from "../../engine/notebook/notebookEdits.ts";
import {
  lostChanges,
  type ScenarioDocument,
  scenarioDocument,
  scenarioIn,
  scenariosIn,
} from "../../engine/notebook/scenarioDocument.ts";
import type { NotebookState } from "../notebook/makeNotebook.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import type { Results } from "../results/makeResults.ts";

/** A sheet narrower than this is read with a thumb. */
const PHONE_PX = 700;

type Documents = ReadonlyMap<string, ScenarioDocument>;

function documentsOf(notebook: Notebook): Documents {
  return new Map(notebook.scenarios.map(({ id }) => [id, scenarioDocument(notebook, id)]));
}

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
  const axisPx = () => (isPhone() ? 40 : 64);
  const labelsPx = () => (sheetPx() >= 1100 ? 214 : 192);
  const roomPx = () => sheetPx() - axisPx() - labelsPx();
  const room = createMemo(() => ({
    isPhone: isPhone(),
    isShort: isPhone(),
    daysPx: isPhone() ? null : Math.min(864, roomPx()),
    axisPx: axisPx(),
    labelsPx: labelsPx(),
    titlePx: isPhone() ? 6 : axisPx(),
  }));
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
  const documentIn = (all: Documents) => (id: string) => {
    const found = all.get(id);
    return found?.ok ? found.document : null;
  };
  const wantNow = (asked: Asked) => wantOf(asked, documentIn(documents()), state.now());
  const keyNow = (asked: Asked) => keyOnce(JSON.stringify(asked), () => wantNow(asked)?.key ?? null);

  // Before anything is drawn: the desk works while the page does.
  createComputed(() => {
    const wants = askedByAll(state.now()).flatMap((asked) => wantNow(asked) ?? []);
    results.want(wants);
  });

  /** Adds what is wrong with the document itself, where it cannot even be put together. */
  const withDocuments = <Result>(ids: readonly string[], found: Found<Result>): Found<Result> => {
    for (const id of ids) {
      const document = documents().get(id);
      if (document?.ok) continue;
      const message = document?.sentence ?? `There is no scenario ${id} in this notebook.`;
      return { ...found, progress: null, problems: [{ code: "no-document", path: [], message }] };
    }
    return found;
  };

  const page: NotebookPage = {
    notebook: state.now,
    drawn: state.now,
    scenarios: () => scenariosIn(state.now()),
    scenario: (id) => scenarioIn(state.now(), id),
    document: (id) => documentIn(documents())(id),
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
        id: freeId(EDITING_KIND, notebook.entries),
        kind: EDITING_KIND,
        title: name,
        doc: { scenario: id },
      } as Entry;
      return state.act(withEntry(notebook, entry, at + 1)) === null ? name : null;
    },
    find: (asked) =>
      withDocuments(kindOf(asked.kind).scenarios(asked.doc), results.find(placeOf(asked), keyNow(asked))),
    before: <Picture>(asked: Asked<Picture>): Picture | null => {
      const all = documentsBefore();
      const key = all === null ? null : (wantOf(asked, documentIn(all), state.now())?.key ?? null);
      return key === null || key === keyNow(asked) ? null : results.known<Picture>(key);
    },
    scale: ({ ruler }) => timeScale(ruler, room().daysPx),
    room,
    readingMs,
    read: setReadingMs,
    scrollPx: () => (page.scrolls() ? scrolled().px : 0),
    scrolls: () => isPhone() || widthPx() > Math.max(864 + 24, roomPx() + 24),
    scroll: (px, viewPx) => setScrolled({ px, viewPx }),
  };
  const lead = createMemo(() => {
    return page.find(askRuler(leadOf(state.now()))).result;
  });
  const widthPx = createMemo(() => {
    const picture = lead();
    return picture === null ? 0 : page.scale(picture).widthPx;
  });
  return { page, lead, viewPx: () => scrolled().viewPx };
}
