import { createSignal, onCleanup, onMount, Show } from "solid-js";
import type { NotebookStore } from "../store/notebookStore.ts";
import { DRAGGED } from "./EntryFrame.tsx";
import { takeFile } from "./takeFile.ts";

/** Takes a file that is dropped anywhere on the page: a notebook or a scenario opens as a notebook of its own. */
export function FileDrop(props: { store: NotebookStore | null; onRefused: (sentences: readonly string[]) => void }) {
  const [isOver, setOver] = createSignal(false);
  const hasFile = (event: DragEvent) =>
    event.dataTransfer?.types.includes("Files") === true && !event.dataTransfer.types.includes(DRAGGED);
  const over = (event: DragEvent) => {
    if (!hasFile(event)) return;
    event.preventDefault();
    setOver(true);
  };
  const leave = (event: DragEvent) => event.relatedTarget === null && setOver(false);
  const drop = async (event: DragEvent) => {
    if (!hasFile(event)) return;
    event.preventDefault();
    setOver(false);
    const file = event.dataTransfer!.files[0];
    if (file === undefined) return;
    const sentences = await takeFile(file, props.store);
    if (sentences.length > 0) props.onRefused(sentences);
  };
  onMount(() => {
    document.addEventListener("dragover", over);
    document.addEventListener("dragleave", leave);
    document.addEventListener("drop", drop);
  });
  onCleanup(() => {
    document.removeEventListener("dragover", over);
    document.removeEventListener("dragleave", leave);
    document.removeEventListener("drop", drop);
  });
  return (
    <Show when={isOver()}>
      <p class="drop-here">Let go to open the notebook or scenario file.</p>
    </Show>
  );
}
