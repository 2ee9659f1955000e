import { For, Show } from "solid-js";
import type { ActualPicture } from "../../../engine/answers/actual/actualPicture.ts";
import { lackingWords, leadingMiss } from "../../../engine/answers/actual/actualWords.ts";
import { MissTable } from "./MissTable.tsx";

/** Where the plan missed and why: where it was farthest off, and at the end of the log. */
export function ActualMisses(props: { against: ActualPicture }) {
  const leading = () => leadingMiss(props.against);
  return (
    <>
      <Show when={leading()}>
        {(miss) => (
          <>
            <MissTable
              miss={miss()}
              title={
                miss() === props.against.miss
                  ? "What made the difference at the end of the log, in points of charge"
                  : "What made the difference where it was farthest from the plan, in points of charge"
              }
            />
            <p class="more">The line over each bar holds the true part 19 times in 20.</p>
            <For each={lackingWords(miss())}>{(sentence) => <p class="more">{sentence}</p>}</For>
          </>
        )}
      </Show>
      <Show when={leading() !== props.against.miss && props.against.miss}>
        {(miss) => <MissTable miss={miss()} title="At the end of the log" />}
      </Show>
    </>
  );
}
