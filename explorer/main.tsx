import "./noEval.ts";
import { ErrorBoundary, lazy } from "solid-js";
import { render } from "solid-js/web";
import type { Notebook } from "../engine/notebook/notebook.ts";
import { exampleNotebook } from "./notebook/exampleNotebook.ts";
import { watchInstalling } from "./offline/installing.ts";
import { makeOffline } from "./offline/makeOffline.ts";
import { NewerVersion } from "./offline/NewerVersion.tsx";
import { OFFLINE_WORKER } from "./offline/offlineFile.ts";
import { type OpenedNotebook, Sheet } from "./page/Sheet.tsx";
import { startForDesk } from "./pool/startForDesk.ts";
import { carriesNotebook } from "./share/sharePrefix.ts";
import { type NotebookStore, openNotebookStore } from "./store/notebookStore.ts";

import "@fontsource-variable/radio-canada/standard.css";
import "../engine/drawing/palette.css";
import "./sheet.css";
import "../engine/drawing/saidWords.css";
import "./entries.css";
import "./phone.css";
import "./print.css";
import "../engine/drawing/strata.css";
import "../engine/drawing/drawing.css";

const Shelf = lazy(async () => ({ default: (await import("./page/Shelf.tsx")).Shelf }));
const NewNotebook = lazy(async () => ({ default: (await import("./page/NewNotebook.tsx")).NewNotebook }));

const Refused = lazy(async () => ({ default: (await import("./parts/Refused.tsx")).Refused }));
const Framed = lazy(async () => ({ default: (await import("./page/Framed.tsx")).Framed }));
const SheetFailed = lazy(async () => ({ default: (await import("./page/SheetFailed.tsx")).SheetFailed }));

const EXAMPLE_ID = "example";
const root = document.querySelector("#root")!;

/** The notebook that the address names, else the one that was changed last, else the example. */
async function firstNotebook(store: NotebookStore, wanted: string | null) {
  const id = wanted ?? (await store.list())[0]?.id ?? EXAMPLE_ID;
  const found = await store.open(id);
  if (found.kind === "partly")
    return { ...found, kind: "open" as const, held: null, partly: { id, missing: found.missing } };
  if (found.kind === "refused") return { ...found, id };
  if (found.kind === "open") return found;
  if (wanted !== null && wanted !== EXAMPLE_ID) {
    return { kind: "refused" as const, id: null, sentences: [`There is no notebook ${wanted} on this shelf.`] };
  }
  return { kind: "open" as const, notebook: exampleNotebook(EXAMPLE_ID), held: null };
}

/** Asks the six questions; the notebook that they make goes on the shelf, or where there is none, straight onto the sheet. */
function newNotebook(store: NotebookStore | null): Promise<Notebook> {
  return new Promise((resolve) => {
    const close = render(
      () => (
        <NewNotebook
          store={store}
          onUnkept={(notebook) => {
            close();
            resolve(notebook);
          }}
        />
      ),
      root,
    );
  });
}

const startDesk = () =>
  startForDesk(new Worker(new URL("./results/deskWorker.ts", import.meta.url), { type: "module" }));

async function start(): Promise<void> {
  if (window.top !== window) {
    render(() => <Framed />, root);
    return;
  }
  const asked = new URLSearchParams(location.search);
  const isSheet = !asked.has("shelf") && !asked.has("new") && !carriesNotebook(location.hash);
  // What the answer waits for most is the desk's scripts: they are fetched while the notebook is.
  const early = isSheet ? startDesk() : null;
  const store = await openNotebookStore().catch(() => null);
  let shared: { notebook: Notebook; waits: boolean } | null = null;
  if (carriesNotebook(location.hash)) {
    shared = await (await import("./share/openShared.tsx")).openShared(root, store);
    if (shared === null) return;
  }
  if (store !== null && asked.has("shelf")) {
    render(() => <Shelf store={store} />, root);
    return;
  }
  const answered = asked.has("new") ? await newNotebook(store) : null;
  let opened: OpenedNotebook = { notebook: exampleNotebook(EXAMPLE_ID), held: null };
  if (answered !== null) opened = { notebook: answered, held: null, isNew: true };
  else if (shared !== null) opened = { notebook: shared.notebook, held: null };
  else if (store !== null) {
    const found = await firstNotebook(store, asked.get("notebook"));
    if (found.kind === "refused") {
      early?.terminate();
      render(() => <Refused sentences={found.sentences} id={found.id} store={store} />, root);
      return;
    }
    opened = found;
  }
  const desk = early ?? startDesk();
  const failed = (error: unknown) => <SheetFailed error={error} notebook={opened.notebook} store={store} />;
  render(
    () => (
      <ErrorBoundary fallback={failed}>
        <Sheet opened={opened} waits={shared?.waits ?? asked.has("wait")} store={store} desk={desk} />
      </ErrorBoundary>
    ),
    root,
  );
}

start().catch((error: unknown) => {
  root.replaceChildren();
  render(() => <SheetFailed error={error} notebook={null} store={null} />, root);
});
watchInstalling();
// A link to a notebook that is put into an open page's address is followed like any other.
addEventListener("hashchange", () => carriesNotebook(location.hash) && location.reload());

// A page that is one file has nothing beside it to put by, and is put by itself.
if (import.meta.env.PROD && import.meta.env.MODE !== "single") {
  const offline = makeOffline(navigator.serviceWorker, new URL(OFFLINE_WORKER, document.baseURI));
  render(() => <NewerVersion offline={offline} />, document.querySelector("#news")!);
}
