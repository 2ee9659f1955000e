import { For } from "solid-js";
import { SHADE_HEADS, shadeRows } from "../../../engine/answers/shade/shadeRows.ts";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";

/** The strip in figures: each group and day. */
export function ShadeTable(props: { light: Sunlight }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="Hours of sun in figures">
      <table>
        <caption class="unseen">Hours of sun of each panel group on each day of the event, under a clear sky</caption>
        <thead>
          <tr>
            <th scope="col">Panels</th>
            <For each={SHADE_HEADS}>{(head) => <th scope="col">{head}</th>}</For>
          </tr>
        </thead>
        <tbody>
          <For each={shadeRows(props.light)}>
            {(row) => (
              <tr>
                <th scope="row">{row.name}</th>
                <For each={row.figures}>{(text, i) => <td class={i() === 2 ? "sum" : undefined}>{text}</td>}</For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
