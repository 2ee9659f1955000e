import { For, Show } from "solid-js";
import type { ScenarioProblem } from "../../../engine/answers/found.ts";
import { timeWords } from "../../../engine/answers/readings/localTime.ts";
import { readingWords } from "../../../engine/learn/readingWords.ts";
import type { KeptReading } from "./readingDraft.ts";

/** What was read, the latest first, each with who read it; what is wrong with one stands beside it. */
export function ReadingsList(props: {
  readings: readonly KeptReading[];
  problems: readonly ScenarioProblem[];
  /** What can hardly be, and waits for a word. */
  asked: readonly { readonly number: number; readonly sentence: string }[];
  onConfirm: (number: number) => void;
  onCorrect: (number: number) => void;
  onRemove: (number: number) => void;
}) {
  const latestFirst = () =>
    props.readings
      .map((reading, number) => ({ reading, number }))
      .sort((a, b) => b.reading.at.localeCompare(a.reading.at) || b.number - a.number);
  const wrongOf = (number: number) =>
    props.problems.find(({ path }) => path[0] === "readings" && path[1] === number)?.message;
  return (
    <ol class="readings-list">
      <For each={latestFirst()}>
        {({ reading, number }) => (
          <li>
            <p>
              <strong>{timeWords(reading.at)}</strong> {readingWords(reading)}
              <span class="reading-who">{whoWords(reading)}</span>
            </p>
            <p class="acts no-print">
              <button type="button" class="act" onClick={() => props.onCorrect(number)}>
                Correct<span class="unseen"> the reading of {timeWords(reading.at)}</span>
              </button>
              <button type="button" class="act" onClick={() => props.onRemove(number)}>
                Remove<span class="unseen"> the reading of {timeWords(reading.at)}</span>
              </button>
            </p>
            <Show when={reading.note}>{(note) => <p class="reading-who">{note()}</p>}</Show>
            <Show when={props.asked.find((each) => each.number === number)}>
              {(odd) => (
                <p class="wrong" role="alert">
                  {odd().sentence} It does not count until you correct it, or{" "}
                  <button type="button" class="act" onClick={() => props.onConfirm(number)}>
                    say that it is so
                  </button>
                  .
                </p>
              )}
            </Show>
            <Show when={wrongOf(number)}>{(sentence) => <p class="wrong">{sentence()}</p>}</Show>
          </li>
        )}
      </For>
    </ol>
  );
}

function whoWords({ by }: KeptReading): string {
  return by === undefined ? "" : `, read by ${by}`;
}
