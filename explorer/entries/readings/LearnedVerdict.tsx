import { For, Show } from "solid-js";
import type { LearnedPicture } from "../../../engine/answers/readings/learnedPicture.ts";
import { learnedMore, learnedSentence, roughWords } from "../../../engine/answers/readings/learnedWords.ts";
import { timeWords } from "../../../engine/answers/readings/localTime.ts";
import { readingWords } from "../../../engine/learn/readingWords.ts";
import type { Look } from "../../../engine/words/look.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import type { KeptReading } from "./readingDraft.ts";

/** The latest reading, what it makes of the forecast, and what is rough about that. */
export function LearnedVerdict(props: {
  latest: KeptReading | null;
  learned: LearnedPicture | null;
  name: string;
  look: Look;
}) {
  return (
    <>
      <p class="verdict">
        <Show
          when={props.latest}
          fallback="Nothing has been read yet: the first reading makes the forecast start from it."
        >
          {(reading) => (
            <>
              <strong>{timeWords(reading().at)}:</strong> {readingWords(reading())}.{" "}
            </>
          )}
        </Show>
        <Show when={props.learned}>
          {(learned) => (
            <span class="data">
              <SaidWords words={learnedSentence(learned(), props.name, props.look)} />
            </span>
          )}
        </Show>
      </p>
      <Show when={props.learned}>
        {(learned) => (
          <div class="data">
            <For each={learned().report.wrong}>{({ sentence }) => <p class="wrong">{sentence}</p>}</For>
            <p class="more">{learnedMore(learned())}</p>
            <For each={roughWords(learned())}>{(sentence) => <p class="reading-rough">{sentence}</p>}</For>
          </div>
        )}
      </Show>
    </>
  );
}
