import { createMemo, createSignal } from "solid-js";
import { askRuler, EDITING_KIND } from "../../engine/answers/kinds.ts";
import { askWhy as askInstant } from "../../engine/answers/run/ask.ts";
import { timeScale } from "../../engine/drawing/timeScale.ts";
import { leadOf } from "../../engine/notebook/asked.ts";
import { lookOf, withLook } from "../../engine/notebook/looks.ts";
import type { Entry } from "../../engine/notebook/notebook.ts";
import {
  freeId,
  whyKept,
  withEntry,
  withoutChange,
  withoutScenario,
  withScenario,
  withVariant,
} from "../../engine/notebook/notebookEdits.ts";
import { lostChanges, scenarioIn, scenariosIn } from "../../engine/notebook/scenarioDocument.ts";
import type { NotebookState } from "../notebook/makeNotebook.ts";
import type { NotebookPage, WhyOf } from "../notebook/notebookPage.ts";
import { MOST_DAYS_PX, sheetRoom } from "../notebook/sheetRoom.ts";
import type { Results } from "../results/makeResults.ts";
import { makeFinds } from "./makeFinds.ts";

/** What entries see of their page, put together from the notebook, its results and the width of the sheet. */
export function makePage(
  state: NotebookState,
  results: Results,
  sheetPx: () => number,
  takeWeather: NotebookPage["takeWeather"],
) {
  const [readingMs, setReadingMs] = createSignal<number | null>(null);
  const [why, askWhy] = createSignal<WhyOf | null>(null);
  const [scrolled, setScrolled] = createSignal({ px: 0, viewPx: 0 });
  const { document, find, before } = makeFinds(state, results, () => {
    const of = why();
    return of === null || "figure" in of ? [] : [askInstant(of.scenario, of.ms)];
  });
  const room = createMemo(() => sheetRoom(sheetPx()));
  const page: NotebookPage = {
    notebook: state.now,
    drawn: state.now,
    scenarios: () => scenariosIn(state.now()),
    scenario: (id) => scenarioIn(state.now(), id),
    look: (id) => lookOf(state.now(), id),
    setLook: (id, look) => state.act(withLook(state.now(), id, look)),
    document,
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
    find,
    before,
    scale: ({ ruler }) => timeScale(ruler, room().daysPx),
    room,
    why,
    askWhy,
    readingMs,
    read: setReadingMs,
    scrollPx: () => (page.scrolls() ? scrolled().px : 0),
    scrolls: () => {
      const { isPhone, axisPx, labelsPx } = room();
      return isPhone || widthPx() > Math.max(MOST_DAYS_PX, sheetPx() - axisPx - labelsPx) + 24;
    },
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
