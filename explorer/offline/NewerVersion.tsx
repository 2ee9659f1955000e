import { createSignal, Show } from "solid-js";
import type { Offline } from "./makeOffline.ts";
import "./offline.css";

/** Offers a newer version of the page; it comes when it is asked for, or when the page is opened the next time. */
export function NewerVersion(props: { offline: Offline }) {
  const [isLater, setLater] = createSignal(false);
  return (
    <Show when={props.offline.isNewer() && !isLater()}>
      <aside class="newer no-print" aria-label="A newer version">
        <p role="status">A newer version of duskline is here. Your notebooks stay as they are.</p>
        <button type="button" class="act" onClick={() => props.offline.takeNewer()}>
          Use it now
        </button>
        <button type="button" class="act" onClick={() => setLater(true)}>
          Later
        </button>
      </aside>
    </Show>
  );
}
