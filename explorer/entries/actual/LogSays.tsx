import { For, Show } from "solid-js";

/** What there is to say of a log, each sentence once; nothing where there is nothing. */
export function LogSays(props: { readonly name: string; readonly said: readonly string[] }) {
  return (
    <Show when={props.said.length > 0}>
      <details>
        <summary>What there is to say of the log, {props.name}</summary>
        <ul class="lines">
          <For each={[...new Set(props.said)]}>{(sentence) => <li>{sentence}</li>}</For>
        </ul>
      </details>
    </Show>
  );
}
