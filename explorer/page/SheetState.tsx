import { Show } from "solid-js";
import type { makeResults } from "../results/makeResults.ts";
import type { makeKeeper } from "../store/makeKeeper.ts";

/** What has just happened to the notebook, and whether it is kept. */
export function SheetState(props: {
  kept: ReturnType<ReturnType<typeof makeKeeper>["state"]>;
  said: string;
  onSave(): void;
}) {
  return (
    <div class="sheet-state" role="status">
      <Show when={props.kept.kind === "unkept" ? (props.kept as { sentence: string }).sentence : null}>
        {(sentence) => (
          <p class="wrong">
            {sentence()}{" "}
            <button type="button" class="act" onClick={props.onSave}>
              Save file
            </button>
          </p>
        )}
      </Show>
      <Show when={props.said}>{(sentence) => <p>{sentence()}</p>}</Show>
    </div>
  );
}

/** How far the work is, with what stops it and what lets it go on. */
export function WorkLine(props: { results: ReturnType<typeof makeResults>; isLongWork: boolean; isKept: boolean }) {
  return (
    <p class="work-line no-print">
      <Show
        when={props.isLongWork}
        fallback={<span class="kept">{props.isKept ? "All kept in this browser." : ""}</span>}
      >
        <span>
          Working
          {props.results.progress() === null
            ? "…"
            : `: ${props.results.progress()!.done} of ${props.results.progress()!.of} skies`}
        </span>
        <button type="button" class="act" onClick={() => props.results.stop()}>
          Stop
        </button>
      </Show>
      <Show when={props.results.isStopped()}>
        <button type="button" class="act" onClick={() => props.results.goOn()}>
          Work it out
        </button>
      </Show>
    </p>
  );
}
