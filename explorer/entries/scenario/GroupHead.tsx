import { Show } from "solid-js";
import { type FormGroup, problemsIn } from "../../../engine/fields/groups.ts";
import { WarningSign } from "../../parts/WrongLines.tsx";
import type { FormOf } from "./makeScenarioForm.ts";

/** A group of fields as a line: what is in it, whether it differs from the base, what is wrong in it; a press shows its fields. */
export function GroupHead(props: {
  group: FormGroup;
  of: FormOf;
  row: number;
  isCurrent: boolean;
  fieldsId: string;
  onChoose: () => void;
}) {
  const isChanged = () => {
    if (props.of.base === undefined) return false;
    const [base, now] = [props.of.base, props.of.document] as unknown as Record<string, unknown>[];
    return props.group.keys.some((key) => JSON.stringify(base![key]) !== JSON.stringify(now![key]));
  };
  const says = () => {
    try {
      return props.group.summary(props.of.document);
    } catch {
      return ""; // a document that is wrong all through has nothing to sum up
    }
  };
  const wrong = () => problemsIn(props.group, props.of.problems);
  return (
    <button
      type="button"
      class="group"
      style={{ "grid-row": props.row }}
      aria-expanded={props.isCurrent}
      aria-controls={props.isCurrent ? props.fieldsId : undefined}
      onClick={() => props.onChoose()}
    >
      <span class="group-name">{props.group.name}</span>
      <span class="group-says">
        {says()}
        <Show when={isChanged()}>, changed</Show>
      </span>
      <Show when={wrong() > 0}>
        <span class="wrong">
          <WarningSign /> {wrong()} to put right
        </span>
      </Show>
    </button>
  );
}
