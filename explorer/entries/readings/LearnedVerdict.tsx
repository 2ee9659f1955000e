import { For, Show } from "solid-js";
import type { LearnedPicture } from "../../../engine/answers/readings/learnedPicture.ts";
import { learnedMore, learnedSentence, roughWords } from "../../../engine/answers/readings/learnedWords.ts";
import { timeWords } from "../../../engine/answers/readings/localTime.ts";
import { readingWords } from "../../../engine/learn/readingWords.ts";
import type { Look } from "../../../engine/words/look.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import type { KeptReading } from "./readingDraft.ts";

/** What the words say while an answer is shown that does not know the readings as they stand. */
const OLD_WORDS = {
  working: "What the readings change is being worked out.",
  stuck: "What the readings change cannot be worked out as they stand.",
} as const;

/** The latest reading, what it makes of the forecast, and what is rough about that. An answer from before the readings' last change stands apart and says so. */
export function LearnedVerdict(props: {
  latest: KeptReading | null;
  learned: LearnedPicture | null;
  name: string;
  look: Look;
  /** Why what was learned is not of the readings as they stand; null where it is. */
  old: keyof typeof OLD_WORDS | null;
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
        <Show when={props.latest !== null && props.old} fallback={<Answer {...props} />}>
          {(old) => OLD_WORDS[old()]}
        </Show>
      </p>
      <Show when={props.old !== null && props.learned !== null}>
        <p class="reading-old">
          <strong>The answer before that:</strong> <Answer {...props} />
        </p>
      </Show>
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

function Answer(props: { learned: LearnedPicture | null; name: string; look: Look }) {
  return (
    <Show when={props.learned}>
      {(learned) => (
        <span class="data">
          <SaidWords words={learnedSentence(learned(), props.name, props.look)} />
        </span>
      )}
    </Show>
  );
}
