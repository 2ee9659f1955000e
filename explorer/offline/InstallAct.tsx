import { Show } from "solid-js";
import { canInstall, install } from "./installing.ts";

/** Puts the page among the programs of this device, where the browser offers that; nothing stands here where it does not. */
export function InstallAct() {
  return (
    <Show when={canInstall()}>
      <button type="button" class="act" onClick={install}>
        Install on this device
      </button>
    </Show>
  );
}
