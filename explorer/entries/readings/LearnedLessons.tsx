import { For } from "solid-js";
import type { LearnedPicture } from "../../../engine/answers/readings/learnedPicture.ts";
import { LEARNED_HEADS, learnedRows } from "../../../engine/answers/readings/learnedRows.ts";
import { LESSON_HEADS, lessonRows, lessonWords } from "../../../engine/answers/readings/learnedWords.ts";

const ROWS_MS = 3 * 3_600_000;

/** What the readings teach of the plan's figures, and bands and figures as tables. */
export function LearnedLessons(props: { learned: LearnedPicture }) {
  return (
    <>
      <h3>What has been learned</h3>
      <ul class="lines">
        <For
          each={lessonWords(props.learned)}
          fallback={<li>Nothing that stands out of the noise: the plan's figures stay as sure as they were.</li>}
        >
          {(sentence) => <li>{sentence}</li>}
        </For>
      </ul>
      <Folded title="Every figure, before and after" heads={LESSON_HEADS} rows={lessonRows(props.learned)} />
      <Folded
        title="The bands in figures, every three hours"
        heads={["At", ...LEARNED_HEADS]}
        rows={learnedRows(props.learned, ROWS_MS)}
      />
    </>
  );
}

function Folded(props: {
  title: string;
  heads: readonly string[];
  rows: readonly { readonly name: string; readonly figures: readonly string[] }[];
}) {
  return (
    <details>
      <summary>{props.title}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label={props.title}>
        <table>
          <caption class="unseen">{props.title}</caption>
          <thead>
            <tr>
              <For each={props.heads}>{(head) => <th scope="col">{head}</th>}</For>
            </tr>
          </thead>
          <tbody>
            <For each={props.rows}>
              {({ name, figures }) => (
                <tr>
                  <th scope="row">{name}</th>
                  <For each={figures}>{(text) => <td>{text}</td>}</For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </details>
  );
}
