import { For, Show } from "solid-js";
import type { StillHelps } from "../../../engine/learn/whatStillHelps.ts";

/** What can still be done from the last reading on, by what it gains; each can be made a scenario. */
export function StillHelpsList(props: {
  helps: readonly StillHelps[] | null;
  isStale: boolean;
  onMake: (help: StillHelps) => void;
}) {
  return (
    <section class="still-helps" aria-label="What can still be done">
      <h3>What can still be done</h3>
      <Show when={props.helps} fallback={<p>Trying changes…</p>}>
        {(helps) => (
          <Show
            when={helps().length > 0}
            fallback={<p>Nothing that was tried would gain 1 in 100 skies, 1 point of charge or half an hour.</p>}
          >
            <p class="more">
              By what it gains under the same skies and operators, from the last reading on. As a scenario, too, the
              change counts from then on, and what was before stays as it was.
            </p>
            <ol>
              <For each={helps()}>
                {(help) => (
                  <li>
                    <p>{help.sentence}</p>
                    <p class="reading-who">
                      Takes: {help.takes}.{" "}
                      <button
                        type="button"
                        class="act no-print"
                        disabled={props.isStale}
                        onClick={() => props.onMake(help)}
                      >
                        Make it a scenario<span class="unseen">: {help.name}</span>
                      </button>
                    </p>
                    <Show when={help.caution}>
                      {(caution) => (
                        <p class="help-caution">
                          <strong>Caution.</strong> {caution()}
                        </p>
                      )}
                    </Show>
                  </li>
                )}
              </For>
            </ol>
          </Show>
        )}
      </Show>
    </section>
  );
}
