import { createMemo, For, Show } from "solid-js";
import type { VersusDoc } from "../../../engine/answers/versus/ask.ts";
import { differsLines } from "../../../engine/answers/versus/differsWords.ts";
import type { PlanColumn } from "../../../engine/answers/versus/planColumns.ts";
import type { NotebookPage } from "../../notebook/notebookPage.ts";
import { changeWords } from "../../parts/changeWords.ts";

const MOST_LINES = 3;

/** What a scenario changes against the first, in words; the rest of a long list opens. */
export function DiffersLines(props: { page: NotebookPage; doc: VersusDoc; column: PlanColumn }) {
  const lines = createMemo(
    () => differsLines(props.page, props.doc, changeWords)[props.doc.scenarios.indexOf(props.column.id)] ?? [],
  );
  const words = () => (props.column.pair === null ? ["the others are held against it"] : lines());
  return (
    <span class="decision-differs">
      <For each={words().slice(0, MOST_LINES)} fallback={<span>nothing differs</span>}>
        {(line) => <span>{line}</span>}
      </For>
      <Show when={words().length > MOST_LINES}>
        <details>
          <summary>and {words().length - MOST_LINES} more</summary>
          <For each={words().slice(MOST_LINES)}>{(line) => <span>{line}</span>}</For>
        </details>
      </Show>
    </span>
  );
}
