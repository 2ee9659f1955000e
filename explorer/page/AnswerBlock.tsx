import { Show } from "solid-js";
import type { headlineOf } from "../../engine/notebook/headlineOf.ts";
import { fadesWhile } from "../parts/fadesWhile.ts";
import { SaidWords } from "../parts/SaidWords.tsx";

/** The answer to the notebook's first question, in large letters. */
export function AnswerBlock(props: { answer: ReturnType<typeof headlineOf>; title: string; hasTrouble: boolean }) {
  return (
    <div
      class="answer-block"
      aria-live="polite"
      aria-atomic="true"
      ref={fadesWhile(() => props.answer?.stale ?? false)}
    >
      <h1 class="answer">
        <Show
          when={props.answer?.words}
          fallback={
            props.hasTrouble
              ? "This plan cannot be worked out as it stands."
              : props.answer === null
                ? props.title
                : "Working it out…"
          }
        >
          {(words) => <SaidWords words={words()} />}
        </Show>
      </h1>
      <p class="more">{props.answer?.more}</p>
    </div>
  );
}
