import { For } from "solid-js";
import type { Answer } from "../words/answerOf.ts";

/** The answer, with its figures heavy and the plan's words underlined in the plan's own line. */
export function AnswerSentence(props: { answer: Answer }) {
  return (
    <>
      <h1 class="answer">
        <For each={props.answer.sentence}>
          {(words) =>
            words.as === undefined ? (
              words.text
            ) : (
              <span class={words.as === "figure" ? "answer-figure" : "answer-plan"}>{words.text}</span>
            )
          }
        </For>
      </h1>
      <p class="more">{props.answer.more.join(" ")}</p>
    </>
  );
}
