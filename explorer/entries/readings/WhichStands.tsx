import { Show } from "solid-js";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";

/** Asks which of several scenarios the readings are of. */
export function WhichStands(props: EntryProps<"readings">) {
  return (
    <Show when={props.page.scenarios().length > 1}>
      <p class="reading-standing no-print">
        <span aria-hidden="true">Which of these is really standing?</span>{" "}
        <ScenarioChoice
          page={props.page}
          label="Which of these is really standing?"
          value={props.doc.scenario}
          onPick={(scenario) => props.edit({ ...props.doc, scenario }, "scenario that stands")}
        />
      </p>
    </Show>
  );
}
