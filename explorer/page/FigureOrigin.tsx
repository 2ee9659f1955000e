import { For, Show } from "solid-js";
import {
  figureWords,
  type NoteFigure,
  ODDS_FIGURES,
  RUN_FIGURES,
  VERSUS_FIGURES,
} from "../../engine/answers/note/noteFigures.ts";
import { scenariosOf } from "../../engine/notebook/asked.ts";
import { letterOf } from "../../engine/notebook/letterOf.ts";
import { figure as number } from "../../engine/words/numbers.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";

const TABLES = { run: RUN_FIGURES, odds: ODDS_FIGURES, versus: VERSUS_FIGURES };
/** Entries that show what a figure is taken from, by the question that it comes from. */
const SHOWN_IN = { run: "run", odds: "forecast", versus: "versus" } as const;

/** Where a quoted figure comes from: what it means, whose it is, out of how many skies, and the entries that show it. */
export function FigureOrigin(props: { page: NotebookPage; figure: NoteFigure }) {
  const name = (id: string) => props.page.scenario(id)?.name ?? id;
  const drawn = () => props.page.drawn();
  const entries = () =>
    props.page
      .notebook()
      .entries.map((entry, k) => ({ entry, letter: letterOf(k) }))
      .filter(
        ({ entry }) => entry.kind === SHOWN_IN[props.figure.of] && scenariosOf(entry).includes(props.figure.scenario),
      );
  return (
    <dl>
      <div>
        <dt>It says</dt>
        <dd>
          <strong>{figureWords(props.page, props.figure).text}</strong>
          <span>{TABLES[props.figure.of][props.figure.want]?.means}</span>
        </dd>
      </div>
      <div>
        <dt>Of</dt>
        <dd>
          {name(props.figure.scenario)}
          {props.figure.over === null ? "" : ` over ${name(props.figure.over)}`}
        </dd>
      </div>
      <div>
        <dt>Out of</dt>
        <dd>
          {props.figure.of === "run"
            ? "one run under the sky as written"
            : `${number(drawn().members)} skies and operators, seed ${drawn().seed}`}
        </dd>
      </div>
      <Show when={entries().length > 0}>
        <div>
          <dt>Shown in</dt>
          <dd>
            <For each={entries()}>
              {({ entry, letter }) => (
                <a href={`#${entry.id}`}>
                  {letter}, {entry.title}
                </a>
              )}
            </For>
          </dd>
        </div>
      </Show>
    </dl>
  );
}
