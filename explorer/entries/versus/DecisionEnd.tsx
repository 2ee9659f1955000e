import { gainsWords } from "../../../engine/answers/versus/gainsWords.ts";
import type { PlanColumn } from "../../../engine/answers/versus/planColumns.ts";
import { decisionTable } from "../../../engine/answers/versus/rows.ts";
import { TABLE_FOOT } from "../../../engine/answers/versus/tableFoot.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";

/** Under the table: what is the same in all, who gains from which, and how to read it. */
export function DecisionEnd(props: { columns: readonly PlanColumn[] }) {
  return (
    <dl class="decision-end">
      <div>
        <dt>The same in all</dt>
        <dd>{decisionTable(props.columns).same}</dd>
      </div>
      <div class="decision-gains">
        <dt>Who gains</dt>
        <dd>
          <SaidWords words={gainsWords(props.columns)} />
        </dd>
      </div>
      <div class="decision-foot">
        <dt class="unseen">How to read it</dt>
        <dd>{TABLE_FOOT}</dd>
      </div>
    </dl>
  );
}
