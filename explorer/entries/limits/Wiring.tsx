import { createMemo, For } from "solid-js";
import { wiringDiagram } from "../../../engine/answers/limits/wiringDrawing.ts";
import { isOver, WIRING_COLUMNS, WIRING_NOTE, wiringTitle } from "../../../engine/answers/limits/wiringWords.ts";
import type { LimitsReport } from "../../../engine/checks/limits.ts";
import { DrawnPicture } from "../../charts/DrawnPicture.tsx";
import "../../../engine/drawing/wiring.css";

/** The plan's branches on one line each, and every conductor as a row; numbers tie the two together. */
export function Wiring(props: { report: LimitsReport }) {
  const drawing = createMemo(() => wiringDiagram(props.report));
  return (
    <section class="wiring-part">
      <h3>The wiring: {wiringTitle(props.report)}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="One-line diagram">
        <DrawnPicture drawing={drawing()} class="drawing" />
      </section>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="Every run, table">
        <table class="wiring-table">
          <caption class="unseen">Every run with its currents, fuse, wire, length and drop</caption>
          <thead>
            <tr>
              <For each={WIRING_COLUMNS}>{({ head }) => <th scope="col">{head}</th>}</For>
            </tr>
          </thead>
          <tbody>
            <For each={props.report.wiring}>
              {(run) => (
                <tr class={isOver(run) ? "wiring-over" : undefined}>
                  <For each={WIRING_COLUMNS}>
                    {({ cell }, c) => (c() === 0 ? <th scope="row">{cell(run)}</th> : <td>{cell(run)}</td>)}
                  </For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
      <p class="more">{WIRING_NOTE}</p>
    </section>
  );
}
