import { For } from "solid-js";
import { choiceLabel } from "../../../engine/fields/fieldWords.ts";
import { valueAt } from "../../../engine/fields/formPath.ts";
import { useForm } from "../../parts/formContext.ts";
import type { ControlProps } from "./controlProps.ts";

/** A tick for every day of the week; all of them is the same as none written. */
export function WeekdayTicks(props: ControlProps) {
  const form = useForm();
  const all = () => (props.node.items?.enum ?? []) as string[];
  const chosen = () => (valueAt(form.document(), props.path) as string[] | undefined) ?? all();
  const toggle = (day: string) => {
    const next = all().filter((each) => chosen().includes(each) !== (each === day));
    if (next.length === 0 || next.length === all().length) form.clear(props.path);
    else form.set(props.path, next);
  };
  return (
    <fieldset class="weekdays">
      <legend class="unseen">{props.label}</legend>
      <For each={all()}>
        {(day) => (
          <label class="weekday">
            <input type="checkbox" checked={chosen().includes(day)} onChange={() => toggle(day)} />
            {choiceLabel(day, props.node)}
          </label>
        )}
      </For>
    </fieldset>
  );
}
