import { For } from "solid-js";
import { html } from "../../../engine/drawing/html.ts";
import { lookMark } from "../../../engine/drawing/lookMark.ts";
import { looksOf } from "../../../engine/notebook/looks.ts";
import { LOOK_WORDS, LOOKS } from "../../../engine/words/look.ts";
import { Drawn } from "../../charts/Drawn.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** How a scenario is drawn in all of the notebook; a look that another has is exchanged with it. */
export function LookChoice(props: { page: NotebookPage; scenario: string }) {
  const look = () => props.page.look(props.scenario);
  const held = () => looksOf(props.page.notebook());
  const words = (k: number) => {
    const id = held()[k];
    const holder = id == null || id === props.scenario ? null : (props.page.scenario(id)?.name ?? null);
    const text = LOOK_WORDS[LOOKS[k]!];
    return holder === null ? text : `${text} (now ${holder})`;
  };
  return (
    <label class="look-choice">
      Drawn
      <svg class={`look-sample series-${look()}`} width="44" height="16" aria-hidden="true">
        <path class="median" d="M0 8H44" />
        <Drawn of={lookMark(look(), 22, 8) ?? html``} />
      </svg>
      <select
        aria-label="How the scenario is drawn"
        onChange={(event) => {
          const chosen = LOOKS.find((each) => each === event.currentTarget.value);
          if (chosen !== undefined) props.page.setLook(props.scenario, chosen);
        }}
      >
        {look() === "plain" && (
          <option value="plain" selected={true}>
            {LOOK_WORDS.plain}
          </option>
        )}
        <For each={LOOKS}>
          {(each, k) => (
            <option value={each} selected={each === look()}>
              {words(k())}
            </option>
          )}
        </For>
      </select>
    </label>
  );
}
