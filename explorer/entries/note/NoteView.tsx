import { createMemo, createResource, createSignal, createUniqueId, For, Show } from "solid-js";
import {
  figuresIn,
  figureWords,
  ODDS_FIGURES,
  plainNote,
  RUN_FIGURES,
  VERSUS_FIGURES,
} from "../../../engine/answers/note/noteFigures.ts";
import { whyNoteTooLong } from "../../../engine/answers/note/notePieces.ts";
import { LONGEST_NOTE } from "../../../engine/answers/notebookLimits.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";
import { NoteText } from "./NoteText.tsx";

/** Text with figures quoted from the results, so that words and numbers cannot disagree. */
export function NoteView(props: EntryProps<"note">) {
  const id = createUniqueId();
  const [isEditing, setEditing] = createSignal(props.doc.text === "");
  /** What is in the box while it is too long to be kept. */
  const [unkept, setUnkept] = createSignal<string | null>(null);
  const type = (text: string) => {
    const isTooLong = text.length > LONGEST_NOTE;
    setUnkept(isTooLong || props.edit({ text }, "text") !== null ? text : null);
  };
  // Told apart by what they say, so that a note is set again when a figure changes and not at every tick of the work.
  const said = createMemo(
    () => new Map(figuresIn(props.doc.text).map((figure) => [figure.text, figureWords(props.page, figure)])),
    undefined,
    { equals: (before, after) => JSON.stringify([...before]) === JSON.stringify([...after]) },
  );
  const [render] = createResource(() => firstAnswer.then(async () => (await import("./renderNote.ts")).renderNote));
  const html = createMemo(() => {
    const [ready, figures] = [render(), said()];
    return ready === undefined
      ? null
      : ready(props.doc.text, ({ text }) => figures.get(text) ?? { text, state: "unknown" });
  });
  const unknown = () =>
    figuresIn(props.doc.text).filter((figure) => figureWords(props.page, figure).state === "unknown");
  const askFigure = (text: string) => {
    const figure = figuresIn(props.doc.text).find((each) => each.text === text);
    if (figure !== undefined) props.page.askWhy({ entry: props.id, figure });
  };
  return (
    <div class="margin-left note">
      <Show
        when={html()}
        fallback={
          <div class="note-text">
            <For each={plainNote(props.doc.text).split(/\n{2,}/)}>{(words) => <p>{words}</p>}</For>
          </div>
        }
      >
        {/* What `renderNote` gives has been through the sanitiser. */}
        {(clean) => <NoteText clean={clean()} onWhy={askFigure} />}
      </Show>
      <Show when={unknown().length > 0}>
        <p class="wrong" role="alert">
          No figure answers to{" "}
          {unknown()
            .map((figure) => `{${figure.text}}`)
            .join(", ")}
          ; the list of figures is under “Edit”.
        </p>
      </Show>
      <Show when={unkept()}>
        {(text) => (
          <p class="wrong no-print" role="alert" id={`${id}-wrong`}>
            {whyNoteTooLong(text().length) ?? "The note is too large for this notebook."} Until then it is kept as it
            was.
          </p>
        )}
      </Show>
      <p class="acts-row no-print">
        <button
          type="button"
          class="act"
          aria-expanded={isEditing()}
          aria-controls={`${id}-box`}
          onClick={() => setEditing(!isEditing())}
        >
          {isEditing() ? "Done" : "Edit"}
        </button>
      </p>
      <div id={`${id}-box`} class="no-print">
        <Show when={isEditing()}>
          <label class="note-label" for={`${id}-text`}>
            Markdown; a figure from the results is written between braces: {"{holds, meadow}"}
          </label>
          <textarea
            id={`${id}-text`}
            class="note-box"
            rows={Math.min(16, 3 + props.doc.text.split("\n").length)}
            value={unkept() ?? props.doc.text}
            aria-invalid={unkept() !== null}
            aria-describedby={unkept() === null ? undefined : `${id}-wrong`}
            onInput={(event) => type(event.currentTarget.value)}
          />
          <FigureList {...props} />
        </Show>
      </div>
    </div>
  );
}

/** Everything that can be quoted, with the ids that scenarios go by. */
function FigureList(props: EntryProps<"note">) {
  const scenarios = () => props.page.notebook().scenarios;
  const [one, other] = [() => scenarios()[0]!.id, () => scenarios()[1]?.id ?? scenarios()[0]!.id];
  const list = () => [
    ...Object.entries({ ...ODDS_FIGURES, ...RUN_FIGURES }).map(([name, { means }]) => ({
      text: `{${name}, ${one()}}`,
      means,
    })),
    ...Object.entries(VERSUS_FIGURES).map(([name, { means }]) => ({
      text: `{${name}, ${other()} over ${one()}}`,
      means,
    })),
  ];
  return (
    <details class="figure-list">
      <summary>Figures that can be quoted</summary>
      <p>
        Scenarios go by their ids:{" "}
        {scenarios()
          .map((scenario) => `${scenario.id} (${scenario.name})`)
          .join(", ")}
        .
      </p>
      <ul>
        <For each={list()}>
          {(each) => (
            <li>
              <code>{each.text}</code> {each.means}
            </li>
          )}
        </For>
      </ul>
    </details>
  );
}

/** The first words of the note. */
export function noteSummary(props: EntryProps<"note">): string {
  const figures = figuresIn(props.doc.text).length;
  return figures === 0 ? "text" : `${figures} live ${figures === 1 ? "figure" : "figures"}`;
}
