import { createMemo, Index } from "solid-js";
import type { Words } from "../../engine/words/said.ts";

/**
 * A sentence with its figures heavy and the words that name a scenario underlined in the scenario's own line. Place by place, and
 * each in an element of its own: a sentence that comes again has few words that are new.
 */
export function SaidWords(props: { words: readonly Words[] }) {
  return (
    <Index each={props.words}>
      {(words) => {
        const as = createMemo(() => words().as);
        return <span class={as() && `answer-${as()}`}>{words().text}</span>;
      }}
    </Index>
  );
}
