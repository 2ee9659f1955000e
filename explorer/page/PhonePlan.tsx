import { Show } from "solid-js";
import { askRuler } from "../../engine/answers/kinds.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { QuickFields } from "../parts/QuickFields.tsx";

/** The quick fields of the scenario that the notebook is about; on a phone they wait for the bar's button. */
export function PhonePlan(props: { page: NotebookPage; scenario: string; isOpen: boolean }) {
  return (
    <Show when={props.page.document(props.scenario)}>
      {(document) => (
        <div class="plan-place" id="planFields" classList={{ "plan-open": props.isOpen }}>
          <QuickFields
            document={document()}
            base={props.page.baseDocument(props.scenario)}
            problems={props.page.find(askRuler(props.scenario)).problems}
            onTurn={(field, changes) => props.page.turn(props.scenario, field, changes)}
            onSettle={props.page.settle}
          />
        </div>
      )}
    </Show>
  );
}
