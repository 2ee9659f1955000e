import { createSignal, lazy, onMount, Show, Suspense } from "solid-js";
import { Portal } from "solid-js/web";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { notebookText } from "../notebook/notebookText.ts";
import "./share.css";
import { type Reach, reachOf } from "./reachOf.ts";
import { type ShareLink, shareFragment } from "./shareLink.ts";

// Whoever wants a link seldom wants it as pictures.
const QrCodes = lazy(async () => ({ default: (await import("./QrCodes.tsx")).QrCodes }));

/** What is said of the way to others, where the link is not all of it. */
const REACH_WORDS: Readonly<Record<Reach, string | null>> = {
  others: null,
  machine:
    "Its address is this machine's own, so it opens nothing on a phone or elsewhere: send the file, or share from a page that others can open.",
  nobody:
    "This page is a file, and no link leads to it from elsewhere. Save the notebook as a file and take that along: any duskline opens it, from its shelf or dropped on it.",
};

/** A link that carries the notebook as it is now: shown, copied, drawn as codes, or refused with the file instead. */
export function ShareDialog(props: { notebook: Notebook; onClose: () => void }) {
  let dialog!: HTMLDialogElement;
  let box: HTMLInputElement | undefined;
  const [link, setLink] = createSignal<ShareLink | null>(null);
  const [said, setSaid] = createSignal("");
  const [isDrawn, setDrawn] = createSignal(false);
  const reach = reachOf(location);
  onMount(async () => {
    setLink(await shareFragment(props.notebook));
    dialog.showModal();
    box?.select();
  });
  const page = `${location.origin}${location.pathname}`;
  const fragment = () => {
    const made = link();
    return made?.ok && reach !== "nobody" ? made.fragment : null;
  };
  const address = () => (fragment() === null ? null : `${page}${fragment()}`);
  const whyNone = () => {
    const made = link();
    return made === null || made.ok ? null : made.sentence;
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
        <Show when={address()} fallback={<Show when={reach !== "nobody" && whyNone()}>{(why) => <p>{why()}</p>}</Show>}>
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
        <Show when={REACH_WORDS[reach]}>{(words) => <p class="share-way">{words()}</p>}</Show>
        <Suspense>
          <Show when={isDrawn() && fragment()}>{(of) => <QrCodes page={page} fragment={of()} />}</Show>
        </Suspense>
        <p class="share-acts">
          <Show when={address()}>
            {(text) => (
              <button type="button" class="act" onClick={() => void copy(text())}>
                Copy
              </button>
            )}
          </Show>
          <Show when={reach === "others" && fragment() !== null}>
            <button type="button" class="act" aria-expanded={isDrawn()} onClick={() => setDrawn(!isDrawn())}>
              As QR codes
            </button>
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
