import { createMemo, For, Index, Show } from "solid-js";
import type { VersusDoc } from "../../../engine/answers/versus/ask.ts";
import type { PlanColumn } from "../../../engine/answers/versus/planColumns.ts";
import { decisionTable } from "../../../engine/answers/versus/rows.ts";
import { tallyDrawing, tallyKey } from "../../../engine/answers/versus/tallyDrawing.ts";
import { DrawnPicture } from "../../charts/DrawnPicture.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { DiffersLines } from "./DiffersLines.tsx";
import { LargeOdds } from "./LargeOdds.tsx";

/** A column for each scenario: odds large, their tally, and a line for each thing that tells them apart. */
export function DecisionTable(props: { page: NotebookPage; doc: VersusDoc; columns: readonly PlanColumn[] }) {
  const table = createMemo(() => decisionTable(props.columns));
  const isOdds = (id: string) => id === "holds";
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide decision-place" tabIndex={0} aria-label="The scenarios side by side">
      <table class="decision">
        <caption class="unseen">The scenarios in figures</caption>
        <thead>
          <tr>
            <td />
            <Index each={props.columns}>
              {(column) => (
                <th scope="col">
                  <span class="decision-name">
                    <SaidWords words={[{ text: column().name, as: column().look }]} />
                  </span>
                  <DiffersLines page={props.page} doc={props.doc} column={column()} />
                </th>
              )}
            </Index>
          </tr>
        </thead>
        <tbody>
          <For each={table().rows}>
            {(row) => (
              <>
                <tr class={`decision-${row.id}`}>
                  <th scope="row">{row.name}</th>
                  <For each={row.cells}>
                    {(cell, k) => (
                      <td>
                        <Show when={isOdds(row.id)} fallback={cell.isBest ? <strong>{cell.text}</strong> : cell.text}>
                          <LargeOdds column={props.columns[k()]!} />
                        </Show>
                      </td>
                    )}
                  </For>
                </tr>
                <Show when={isOdds(row.id)}>
                  <tr class="decision-tally">
                    <th scope="row">
                      <For each={tallyKey(props.columns)}>{(words) => <span class="tally-key">{words}</span>}</For>
                    </th>
                    <For each={props.columns}>
                      {(column) => (
                        <td>
                          <DrawnPicture drawing={tallyDrawing(column)} class="tally" />
                        </td>
                      )}
                    </For>
                  </tr>
                </Show>
              </>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
