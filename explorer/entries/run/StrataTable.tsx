import { For } from "solid-js";
import { hourHeads, hourRows } from "../../../engine/answers/run/hourRows.ts";
import type { RunPicture } from "../../../engine/answers/run/runPicture.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";

/** The strata hour by hour, for reading and copying; every step is in the CSV. */
export function StrataTable(props: { picture: RunPicture }) {
  const when = (ms: number) => {
    const { day, clock } = clockAt(props.picture.ruler, ms);
    return `${day} ${clock}`;
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide tall" tabIndex={0} aria-label="Hours in figures">
      <table>
        <caption class="unseen">
          Charge at the start of each hour, powers as means over it, volts as the least in it
        </caption>
        <thead>
          <tr>
            <th scope="col">Hour from</th>
            <For each={hourHeads(props.picture)}>{(head) => <th scope="col">{head}</th>}</For>
          </tr>
        </thead>
        <tbody>
          <For each={hourRows(props.picture)}>
            {(row) => (
              <tr>
                <th scope="row">{when(row.ms)}</th>
                <For each={row.figures}>{(text) => <td>{text}</td>}</For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
