import { For } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { pattern } from "../../../engine/fields/formPath.ts";
import { useForm } from "../../parts/formContext.ts";
import { namedChoices } from "./choices.ts";
import { FieldRow } from "./FieldRow.tsx";
import { type ListProps, makeList } from "./makeList.ts";
import { UsualAct } from "./UsualAct.tsx";

/** What stands at the selector: ticks for every panel group and source there is. */
export function NameTicks(props: ListProps) {
  const form = useForm();
  const list = makeList(() => props.path);
  const named = () => namedChoices(form.document(), props.path, props.node.items!)!;
  const toggle = (name: unknown) => {
    const known = named().map((choice) => choice.value);
    const next = known.filter((each) => list().includes(each) !== (each === name));
    form.set(props.path, next);
  };
  return (
    <FieldRow path={props.path} node={props.node} isOptional={props.isOptional} within={true}>
      <fieldset class="weekdays">
        <legend class="unseen">{fieldLabel(pattern(props.path))}</legend>
        <For each={named()}>
          {(choice) => (
            <label class="weekday">
              <input type="checkbox" checked={list().includes(choice.value)} onChange={() => toggle(choice.value)} />
              {choice.words}
            </label>
          )}
        </For>
      </fieldset>
      <UsualAct {...props} />
    </FieldRow>
  );
}
