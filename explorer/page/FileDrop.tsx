import { createSignal, onCleanup, onMount, Show } from "solid-js";
import { DRAGGED } from "./EntryFrame.tsx";

/** Takes a file that is dropped anywhere on the page. */
export function FileDrop(props: { words: string; onFile: (file: File) => void }) {
  const [isOver, setOver] = createSignal(false);
  const hasFile = (event: DragEvent) =>
    event.dataTransfer?.types.includes("Files") === true && !event.dataTransfer.types.includes(DRAGGED);
  const over = (event: DragEvent) => {
    if (!hasFile(event)) return;
    event.preventDefault();
    setOver(true);
  };
  const leave = (event: DragEvent) => event.relatedTarget === null && setOver(false);
  const drop = (event: DragEvent) => {
    if (!hasFile(event)) return;
    event.preventDefault();
    setOver(false);
    const file = event.dataTransfer!.files[0];
    if (file !== undefined) props.onFile(file);
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
      <p class="drop-here">{props.words}</p>
    </Show>
  );
}
