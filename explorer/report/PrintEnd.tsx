import { createSignal, onCleanup, onMount } from "solid-js";
import { firstAnswer } from "../page/firstAnswer.ts";
import type { ReportPage } from "./reportPage.ts";

/** On paper only: what was assumed, the seed, and what can hurt, at the end. */
export function PrintEnd(props: { page: ReportPage }) {
  const [end, setEnd] = createSignal("");
  let make: typeof import("./reportEnd.ts").reportEnd | null = null;
  // Printing does not wait for anybody, so the words are fetched before somebody asks for them.
  const fetchWords = async () => {
    await firstAnswer;
    make = (await import("./reportEnd.ts")).reportEnd;
  };
  const fill = () => setEnd(make === null ? "" : make(props.page).text);
  onMount(() => {
    void fetchWords();
    addEventListener("beforeprint", fill);
    onCleanup(() => removeEventListener("beforeprint", fill));
  });
  return <div class="print-only print-end" innerHTML={end()} />;
}
