import { Index } from "solid-js";
import type { Entry } from "../../engine/notebook/notebook.ts";

export type EntryState = "fresh" | "working" | "stale" | "attention";

export interface IndexLine {
  readonly entry: Entry;
  readonly letter: string;
  readonly says: string;
  readonly state: EntryState;
}

const STATE_WORDS: Record<EntryState, string> = {
  fresh: "fresh",
  working: "working",
  stale: "stale",
  attention: "needs attention",
};

/** The entries by letter, with the one-line result and the state of each. */
export function SheetIndex(props: { lines: readonly IndexLine[] }) {
  return (
    <nav class="index" aria-label="Sheet index">
      <p class="index-title">Sheet index</p>
      <ol>
        <Index each={props.lines}>
          {(line) => (
            <li>
              <a href={`#${line().entry.id}`}>
                <span class="index-letter">{line().letter}</span>
                <span class="index-name">{line().entry.title}</span>
                <span class="index-says">{line().says}</span>
                <span class="index-state" classList={{ "state-wrong": line().state === "attention" }}>
                  <StateGlyph state={line().state} />
                  {STATE_WORDS[line().state]}
                </span>
              </a>
            </li>
          )}
        </Index>
      </ol>
    </nav>
  );
}

function StateGlyph(props: { state: EntryState }) {
  return (
    <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
      {props.state === "attention" ? (
        <path class="glyph-wrong" d="M7 1.5L13 12.5H1Z" />
      ) : props.state === "fresh" ? (
        <circle class="glyph-fresh" cx="7" cy="7" r="4.5" />
      ) : (
        <circle class="glyph-stale" cx="7" cy="7" r="4.5" />
      )}
    </svg>
  );
}
