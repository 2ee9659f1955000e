import "./share.css";
import { createSignal, For, Show } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { figure } from "../../engine/words/numbers.ts";
import { makeTheme } from "../parts/makeTheme.ts";
import { MOST_STEPS_UNASKED, workSteps } from "./workSteps.ts";

const MOST_SENTENCES = 8;

/** What there is to say before anything is opened. */
function Sentences(props: { head: string; of: readonly string[] }) {
  return (
    <Show when={props.of.length > 0}>
      <p class="wrong">{props.head}</p>
      <ul>
        <For each={props.of.slice(0, MOST_SENTENCES)}>{(sentence) => <li>{sentence}</li>}</For>
        <Show when={props.of.length > MOST_SENTENCES}>
          <li>and {props.of.length - MOST_SENTENCES} more</li>
        </Show>
      </ul>
    </Show>
  );
}

/** What a link carries, before anything of it is kept or worked out. */
export function SharedNotebook(props: {
  notebook: Notebook;
  /** What of it could not be read, and what keeps scenarios of it from being worked out. */
  missing: readonly string[];
  wrong: readonly string[];
  /** @returns why there is no copy now */
  onOpen: (waits: boolean) => Promise<string | null>;
}) {
  makeTheme();
  const [whyNot, setWhyNot] = createSignal<string | null>(null);
  const isLarge = () => workSteps(props.notebook) > MOST_STEPS_UNASKED;
  const count = (n: number, one: string, many: string) => `${figure(n)} ${n === 1 ? one : many}`;
  return (
    <div class="page page-shelf">
      <main class="sheet">
        <div class="answer-block">
          <h1 class="answer">{props.notebook.title}</h1>
          <p class="more">
            A notebook came with the link: {count(props.notebook.entries.length, "entry", "entries")},{" "}
            {count(props.notebook.scenarios.length, "scenario", "scenarios")}, {figure(props.notebook.members)} skies.
            Nothing of it is kept, and nothing was worked out yet.
          </p>
        </div>
        <div class="margin-left shared">
          <ul>
            <For each={props.notebook.entries.slice(0, 20)}>{({ title }) => <li>{title}</li>}</For>
            <Show when={props.notebook.entries.length > 20}>
              <li>and {props.notebook.entries.length - 20} more</li>
            </Show>
          </ul>
          <Sentences head="Not all of it can be read; the copy holds the rest." of={props.missing} />
          <Sentences head="Not all of it can be worked out as it stands." of={props.wrong} />
          <Show when={isLarge()}>
            <p class="wrong">
              It asks for much work. It opens without starting on it; “Work it out” on the sheet does.
            </p>
          </Show>
          <p role="alert" class="wrong">
            {whyNot()}
          </p>
          <p class="acts-row">
            <button type="button" class="shared-open" onClick={async () => setWhyNot(await props.onOpen(isLarge()))}>
              Open a copy
            </button>
            <a class="act" href="?shelf">
              Leave it
            </a>
          </p>
          <p>
            The copy goes onto this browser's shelf, beside what is there already. Whoever sent it sees nothing of it.
          </p>
        </div>
      </main>
    </div>
  );
}
