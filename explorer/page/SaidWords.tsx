import { For } from "solid-js";
import type { Words } from "../words/answerOf.ts";

const CLASS = {
  figure: "answer-figure",
  plan: "answer-plan",
  other: "answer-other",
  third: "answer-third",
  fourth: "answer-fourth",
} as const;

/** A sentence with its figures heavy and the words that name a scenario underlined in the scenario's own line. */
export function SaidWords(props: { words: readonly Words[] }) {
  return (
    <For each={props.words}>
      {(words) => (words.as === undefined ? words.text : <span class={CLASS[words.as]}>{words.text}</span>)}
    </For>
  );
}
