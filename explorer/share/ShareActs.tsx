import { createSignal, lazy, Show, Suspense } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";

// Packing and its dialog are fetched when somebody asks for a link.
const ShareDialog = lazy(async () => ({ default: (await import("./ShareDialog.tsx")).ShareDialog }));

/** Makes a link that carries the notebook itself. */
export function ShareActs(props: { notebook: Notebook }) {
  const [isOpen, setOpen] = createSignal(false);
  return (
    <>
      <button type="button" class="act" onClick={() => setOpen(true)}>
        Share link
      </button>
      <Suspense>
        <Show when={isOpen()}>
          <ShareDialog notebook={props.notebook} onClose={() => setOpen(false)} />
        </Show>
      </Suspense>
    </>
  );
}
