import { createSignal, onCleanup, onMount, Show } from "solid-js";
import { Portal } from "solid-js/web";
import type { PackingDoc } from "../../../engine/answers/packing/ask.ts";
import { listMarkup } from "../../../engine/answers/packing/listMarkup.ts";
import type { PackingPicture } from "../../../engine/answers/packing/packingPicture.ts";
import { packingSentence, setWords } from "../../../engine/answers/packing/packingWords.ts";
import { html } from "../../../engine/drawing/html.ts";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** Prints the list for the proposal on a page of its own, to tick on the way out and on the way home. */
export function PrintListAct(props: { page: NotebookPage; doc: PackingDoc; picture: PackingPicture | null }) {
  const [isPrinting, setPrinting] = createSignal(false);
  const done = () => {
    delete document.documentElement.dataset.print;
    setPrinting(false);
  };
  onMount(() => addEventListener("afterprint", done));
  onCleanup(() => removeEventListener("afterprint", done));
  const start = () => {
    document.documentElement.dataset.print = "list";
    setPrinting(true);
    print();
  };
  return (
    <>
      <button type="button" class="act" disabled={props.picture?.list == null} onClick={start}>
        Print the list
      </button>
      <Show when={isPrinting() && props.picture}>
        {(picture) => (
          <Portal ref={(place) => place.classList.add("packing-print")}>
            <div innerHTML={sheetOf(props.page, props.doc, picture())} />
          </Portal>
        )}
      </Show>
    </>
  );
}

function sheetOf(page: NotebookPage, doc: PackingDoc, picture: PackingPicture): string {
  const { list, report, things } = picture;
  if (list === null || report.proposed === null) return "";
  const { place, time } = page.document(doc.scenario) ?? {};
  const when = time === undefined ? "" : `, ${time.start.replace("T", " ")} to ${time.end.replace("T", " ")}`;
  const said = packingSentence(picture)
    .map(({ text }) => text)
    .join("");
  return html`<h1>Packing: <b>${setWords(report.proposed, things)}</b></h1><p>${place?.name ?? ""}${when}. ${said}</p>${listMarkup(list)}<p class="packing-foot">${String(report.members)} skies, seed ${report.seed}. Weights marked usual are what such things usually weigh.</p>`
    .text;
}
