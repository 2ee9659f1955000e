import { createMemo, For, Index } from "solid-js";
import type { VersusDoc } from "../../../engine/answers/versus/ask.ts";
import type { PlanColumn } from "../../../engine/answers/versus/planColumns.ts";
import { decisionTable } from "../../../engine/answers/versus/rows.ts";
import { tallyDrawing, tallyKey } from "../../../engine/answers/versus/tallyDrawing.ts";
import { DrawnPicture } from "../../charts/DrawnPicture.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { DiffersLines } from "./DiffersLines.tsx";
import { LargeOdds } from "./LargeOdds.tsx";

/** On a phone: a card for each scenario, its odds first. */
export function DecisionCards(props: { page: NotebookPage; doc: VersusDoc; columns: readonly PlanColumn[] }) {
  const table = createMemo(() => decisionTable(props.columns));
  const figures = createMemo(() => table().rows.filter(({ id }) => id !== "holds"));
  return (
    <>
      <Index each={props.columns}>
        {(column, k) => (
          <section class="decision-card" aria-label={column().name}>
            <h3 class="decision-name">
              <SaidWords words={[{ text: column().name, as: column().look }]} />
            </h3>
            <p class="decision-holds">
              <LargeOdds column={column()} /> of 100 skies hold
            </p>
            <DiffersLines page={props.page} doc={props.doc} column={column()} />
            <DrawnPicture drawing={tallyDrawing(column())} class="tally" />
            <dl>
              <For each={figures()}>
                {(row) => (
                  <div>
                    <dt>{row.name}</dt>
                    <dd>{row.cells[k]?.isBest ? <strong>{row.cells[k]!.text}</strong> : row.cells[k]?.text}</dd>
                  </div>
                )}
              </For>
            </dl>
          </section>
        )}
      </Index>
      <p class="tally-key">{tallyKey(props.columns).join("; ")}</p>
    </>
  );
}
