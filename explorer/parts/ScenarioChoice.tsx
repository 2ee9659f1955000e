import { Index, Show } from "solid-js";
import type { NotebookPage } from "../notebook/notebookPage.ts";

/** Picks one of the notebook's scenarios; with `none`, or nothing. */
export function ScenarioChoice<Id extends string | null>(props: {
  page: NotebookPage;
  label: string;
  value: Id;
  none?: string;
  onPick: (id: Id) => void;
}) {
  return (
    <select
      aria-label={props.label}
      class="no-print"
      onChange={(event) => props.onPick((event.currentTarget.value || null) as Id)}
    >
      <Show when={props.none}>
        <option value="" selected={props.value === null}>
          {props.none}
        </option>
      </Show>
      <Index each={props.page.notebook().scenarios}>
        {(scenario) => (
          <option value={scenario().id} selected={props.value === scenario().id}>
            {scenario().name}
          </option>
        )}
      </Index>
    </select>
  );
}
