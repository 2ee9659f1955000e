import { For } from "solid-js";
import { makeTheme } from "./makeTheme.ts";

/** A notebook that cannot be shown, and why; it stays on the shelf as it is. */
export function Refused(props: { sentences: readonly string[] }) {
  makeTheme();
  return (
    <div class="page page-shelf">
      <main class="sheet">
        <div class="answer-block">
          <h1 class="answer">This notebook is not opened.</h1>
          <For each={props.sentences}>{(sentence) => <p class="more">{sentence}</p>}</For>
          <p class="more">
            It was left as it is. <a href="?shelf">To the shelf</a>
          </p>
        </div>
      </main>
    </div>
  );
}
