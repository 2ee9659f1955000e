import { For } from "solid-js";
import { dayHeads, dayRows } from "../../../engine/answers/days/dayRows.ts";
import type { RunPicture } from "../../../engine/answers/run/runPicture.ts";

/** The same days in figures. */
export function DaysTable(props: { picture: RunPicture }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="Table of days">
      <table>
        <caption class="unseen">Each day of the event in figures</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <For each={dayHeads(props.picture)}>{(head) => <th scope="col">{head}</th>}</For>
          </tr>
        </thead>
        <tbody>
          <For each={dayRows(props.picture)}>
            {(row) => (
              <tr>
                <th scope="row">{row.day}</th>
                <For each={row.figures}>{(text) => <td>{text}</td>}</For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
