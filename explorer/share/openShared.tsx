import { render } from "solid-js/web";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { checkedNotebook } from "../notebook/checkedNotebook.ts";
import { Refused } from "../parts/Refused.tsx";
import type { NotebookStore } from "../store/notebookStore.ts";
import { whyUnkept } from "../store/whyUnkept.ts";
import { SharedNotebook } from "./SharedNotebook.tsx";
import { textOfFragment } from "./shareLink.ts";
import { PART_PREFIX } from "./sharePrefix.ts";

/**
 * Shows what a link carries and waits until somebody wants it. With a store the copy goes onto the shelf and the page goes there; without
 * one it comes back to be shown from memory.
 * @returns null when it is refused
 */
export async function openShared(
  root: Element,
  store: NotebookStore | null,
): Promise<{ readonly notebook: Notebook; readonly waits: boolean } | null> {
  const fragment = location.hash.startsWith(PART_PREFIX)
    ? await (await import("./gatherParts.tsx")).gatherParts(root)
    : location.hash;
  if (fragment === null) return null;
  const unpacked = await textOfFragment(fragment);
  const read = unpacked.ok ? checkedNotebook(unpacked.text) : unpacked;
  if (!read.ok) {
    render(() => <Refused sentences={read.sentences} />, root);
    return null;
  }
  const { notebook, missing, wrong } = read;
  return new Promise((resolve) => {
    const dispose = render(
      () => (
        <SharedNotebook
          notebook={notebook}
          missing={missing}
          wrong={wrong}
          onOpen={async (waits) => {
            if (store !== null) {
              try {
                const { id } = await store.create({ ...notebook, id: freeId(notebook.title, []) }, Date.now());
                location.assign(`${location.pathname}?notebook=${id}${waits ? "&wait" : ""}`);
                return null;
              } catch (error) {
                return whyUnkept(error);
              }
            }
            history.replaceState(null, "", location.pathname);
            dispose();
            resolve({ notebook, waits });
            return null;
          }}
        />
      ),
      root,
    );
  });
}
