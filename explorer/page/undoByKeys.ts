import { onCleanup, onMount } from "solid-js";

/** Ctrl Z takes the last edit back and Ctrl Y brings it again, as long as what calls this is on the page. */
export function undoByKeys(state: { undo(): unknown; redo(): unknown }): void {
  const undoKeys = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    if (key === "y" || event.shiftKey) state.redo();
    else state.undo();
  };
  onMount(() => document.addEventListener("keydown", undoKeys));
  onCleanup(() => document.removeEventListener("keydown", undoKeys));
}
