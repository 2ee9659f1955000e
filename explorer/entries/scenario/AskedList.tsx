import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { pattern } from "../../../engine/fields/formPath.ts";
import { elementId, useForm } from "../../parts/formContext.ts";
import { namedChoices } from "./choices.ts";
import { FieldRow } from "./FieldRow.tsx";
import type { ListProps } from "./makeList.ts";
import { firstOf } from "./newItem.ts";

/** A list that may be left out: what stands for it then, and an act that gives it. */
export function AskedList(props: ListProps) {
  const form = useForm();
  const key = () => String(props.path.at(-1));
  const label = () => fieldLabel(pattern(props.path));
  const first = () =>
    key() === "inputs"
      ? namedChoices(form.document(), props.path, props.node.items!)!
          .slice(0, 2)
          .map((choice) => choice.value)
      : firstOf(key());
  return (
    <FieldRow path={props.path} node={props.node} isOptional={true}>
      <span class="fixed">{props.node.leftOut ?? "as usual"}</span>
      <button
        type="button"
        class="act"
        id={elementId(form, props.path)}
        aria-label={`Give it: ${label()}`}
        onClick={() => form.set(props.path, first())}
      >
        {key() === "out" ? "set hours" : "give figures"}
      </button>
    </FieldRow>
  );
}
