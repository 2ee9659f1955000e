import { For, Show } from "solid-js";
import { valueAt } from "../../../engine/fields/formPath.ts";
import { elementId, useForm } from "../../parts/formContext.ts";
import type { Choice } from "./choices.ts";
import type { ControlProps } from "./controlProps.ts";

/** A list to choose from; what the document has and the list has not stays choosable. */
export function ChoiceBox(props: ControlProps & { choices: readonly Choice[] }) {
  const form = useForm();
  const value = () => valueAt(form.document(), props.path);
  const usual = () => {
    const filled = valueAt(form.filled(), props.path);
    const found = props.choices.find((choice) => choice.value === filled);
    return found === undefined ? "as usual" : `as usual (${found.words})`;
  };
  const isStrange = () => value() !== undefined && !props.choices.some((choice) => choice.value === value());
  const pick = (index: string) => {
    if (index === "") form.clear(props.path);
    else if (index !== "now") form.set(props.path, props.choices[Number(index)]!.value);
  };
  return (
    <select
      class="box"
      id={elementId(form, props.path)}
      aria-label={props.label}
      aria-invalid={props.isWrong ? "true" : undefined}
      aria-describedby={props.describedBy || undefined}
      onChange={(event) => pick(event.currentTarget.value)}
    >
      <Show when={props.isOptional || value() === undefined}>
        <option value="" selected={value() === undefined}>
          {props.node.leftOut ?? usual()}
        </option>
      </Show>
      <Show when={isStrange()}>
        <option value="now" selected={true}>
          {String(value())}
        </option>
      </Show>
      <For each={props.choices}>
        {(choice, index) => (
          <option value={index()} selected={choice.value === value()}>
            {choice.words}
          </option>
        )}
      </For>
    </select>
  );
}
