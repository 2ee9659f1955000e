import { createSignal, onMount, Show } from "solid-js";
import { Portal } from "solid-js/web";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { notebookText } from "../notebook/notebookText.ts";
import "./share.css";
import { type ShareLink, shareFragment } from "./shareLink.ts";

/** A link that carries the notebook as it is now: shown, copied, or refused with the file instead. */
export function ShareDialog(props: { notebook: Notebook; onClose: () => void }) {
  let dialog!: HTMLDialogElement;
  let box: HTMLInputElement | undefined;
  const [link, setLink] = createSignal<ShareLink | null>(null);
  const [said, setSaid] = createSignal("");
  onMount(async () => {
    setLink(await shareFragment(props.notebook));
    dialog.showModal();
    box?.select();
  });
  const address = () => {
    const made = link();
    return made?.ok ? `${location.origin}${location.pathname}${made.fragment}` : null;
  };
  const copy = async (text: string) => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid("Copied.");
    } catch {
      box?.select();
      setSaid("This browser lets no page copy; the link is marked, so press Ctrl+C.");
    }
  };
  const saveNotebook = () =>
    saveFile(`${fileName(props.notebook.title)}.json`, "application/json", notebookText(props.notebook));
  return (
    <Portal>
      <dialog ref={dialog} class="share" aria-label="A link that carries this notebook" onClose={() => props.onClose()}>
        <Show
          when={address()}
          fallback={
            <Show when={link()}>{(made) => <p>{made().ok ? "" : (made() as { sentence: string }).sentence}</p>}</Show>
          }
        >
          {(text) => (
            <>
              <p>
                The link is the notebook: {Math.ceil(text().length / 1000)} kB, kept nowhere else. Whoever gets it opens
                a copy of the notebook as it is now.
              </p>
              <label class="share-link">
                Link
                <input ref={box} type="text" readOnly value={text()} />
              </label>
            </>
          )}
        </Show>
        <p class="share-acts">
          <Show when={address()}>
            {(text) => (
              <button type="button" class="act" onClick={() => void copy(text())}>
                Copy
              </button>
            )}
          </Show>
          <button type="button" class="act" onClick={saveNotebook}>
            Save as a file
          </button>
          <button type="button" class="act" onClick={() => dialog.close()}>
            Close
          </button>
          <span role="status">{said()}</span>
        </p>
      </dialog>
    </Portal>
  );
}
