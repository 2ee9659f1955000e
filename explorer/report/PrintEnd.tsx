import { createSignal, onCleanup, onMount } from "solid-js";
import type { ReportPage } from "./reportPage.ts";

/** On paper only: what was assumed, the seed, and what can hurt, at the end. */
export function PrintEnd(props: { page: ReportPage }) {
  const [end, setEnd] = createSignal("");
  let make: typeof import("./reportEnd.ts").reportEnd | null = null;
  // Printing does not wait for anybody, so the words are fetched before somebody asks for them.
  const fetchWords = async () => {
    make = (await import("./reportEnd.ts")).reportEnd;
  };
  const fill = () => setEnd(make === null ? "" : make(props.page).text);
  onMount(() => {
    const later = setTimeout(() => void fetchWords(), 1500);
    addEventListener("beforeprint", fill);
    onCleanup(() => {
      clearTimeout(later);
      removeEventListener("beforeprint", fill);
    });
  });
  return <div class="print-only print-end" innerHTML={end()} />;
}
