import { createSignal, onCleanup, onMount } from "solid-js";
import { tellEnd } from "../../engine/answers/kinds.ts";
import type { ReportPage } from "../../engine/report/reportPage.ts";
import { firstAnswer } from "../parts/firstAnswer.ts";

/** On paper only: what was assumed, the seed, and what can hurt, at the end. */
export function PrintEnd(props: { page: ReportPage }) {
  const [end, setEnd] = createSignal("");
  let make: Awaited<ReturnType<typeof tellEnd>> | null = null;
  // Printing does not wait for anybody, so the words are fetched before somebody asks for them.
  const fetchWords = async () => {
    await firstAnswer;
    make = await tellEnd();
  };
  const fill = () => setEnd(make === null ? "" : make(props.page).text);
  onMount(() => {
    // Firefox reports what a page was still fetching when it was left.
    fetchWords().catch(() => {});
    addEventListener("beforeprint", fill);
    onCleanup(() => removeEventListener("beforeprint", fill));
  });
  return <div class="print-only print-end" innerHTML={end()} />;
}
