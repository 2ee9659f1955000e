import { For, Show } from "solid-js";
import { makeTheme } from "../parts/makeTheme.ts";
import type { PartSet } from "./partBox.ts";
import "./share.css";

/** How much of a notebook that comes in several codes is here. */
export function PartsCome(props: { set: PartSet; onGoOn: () => void }) {
  makeTheme();
  const missing = () => props.set.pieces.flatMap((piece, k) => (piece === null ? [k + 1] : []));
  const here = () => props.set.pieces.length - missing().length;
  const list = () =>
    missing()
      .join(", ")
      .replace(/, (\d+)$/, " and $1");
  return (
    <div class="page page-shelf">
      <main class="sheet">
        <div class="answer-block">
          <h1 class="answer">A notebook in {props.set.pieces.length} codes</h1>
          <p class="more" role="status">
            <Show
              when={missing().length > 0}
              fallback="All of them are here. The notebook waits in the tab that the last code opened, and can be opened here as well."
            >
              {here()} of {props.set.pieces.length} {here() === 1 ? "is" : "are"} here. Scan{" "}
              {missing().length === 1 ? "code" : "codes"} {list()} now, in any order: this page may stay open or be
              closed, and what came is kept.
            </Show>
          </p>
        </div>
        <div class="margin-left shared">
          <ol class="parts-come">
            <For each={props.set.pieces}>
              {(piece, k) => (
                <li classList={{ "part-here": piece !== null }}>
                  {k() + 1} {piece === null ? "missing" : "here"}
                </li>
              )}
            </For>
          </ol>
          <p class="acts-row">
            <Show when={missing().length === 0}>
              <button type="button" class="shared-open" onClick={() => props.onGoOn()}>
                Go on here
              </button>
            </Show>
            <a class="act" href="?shelf">
              To the shelf
            </a>
          </p>
        </div>
      </main>
    </div>
  );
}
