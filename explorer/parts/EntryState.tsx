import { For, Show } from "solid-js";
import type { Found } from "../../engine/answers/found.ts";
import { figure } from "../../engine/words/numbers.ts";
import { makeLasting } from "./makeLasting.ts";

type Founds = readonly Pick<Found<unknown>, "progress" | "problems" | "result">[];

/** How far the working out has come, as a rule that fills and as a count, where it takes a while. */
export function Progress(props: { of: Founds }) {
  const running = () => props.of.flatMap(({ progress }) => (progress === null ? [] : [progress]));
  const sum = () =>
    running().reduce((all, each) => ({ done: all.done + each.done, of: all.of + each.of }), { done: 0, of: 0 });
  const isShown = makeLasting(() => running().length > 0);
  return (
    <Show when={isShown()}>
      <p class="progress no-print">
        <span class="progress-rule" aria-hidden="true">
          <span style={{ width: `${(100 * sum().done) / Math.max(1, sum().of)}%` }} />
        </span>
        <span class="progress-count">
          {sum().of > 1 ? `${figure(sum().done)} of ${figure(sum().of)} skies` : "waiting its turn"}
        </span>
      </p>
    </Show>
  );
}

/** What is wrong with the scenarios that an entry shows, each sentence once. */
export function Problems(props: { of: Founds }) {
  const sentences = () => [...new Set(props.of.flatMap(({ problems }) => problems.map(({ message }) => message)))];
  return (
    <Show when={sentences().length > 0}>
      <div class="wrongs" role="alert">
        <For each={sentences().slice(0, 4)}>
          {(sentence) => (
            <p class="wrong">
              {sentence}{" "}
              {props.of.some(({ result }) => result !== null)
                ? "Until it is put right, the last good result stays."
                : ""}
            </p>
          )}
        </For>
      </div>
    </Show>
  );
}
