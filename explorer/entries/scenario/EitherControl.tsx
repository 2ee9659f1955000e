import { Show } from "solid-js";
import { choiceLabel } from "../../../engine/fields/fieldWords.ts";
import { valueAt } from "../../../engine/fields/formPath.ts";
import { numberPart } from "../../../engine/fields/formSchema.ts";
import { shownValue } from "../../../engine/fields/shownValue.ts";
import { elementId, useForm } from "../../parts/formContext.ts";
import type { ControlProps } from "./controlProps.ts";
import { NumberControl } from "./NumberControl.tsx";

/** A number, or a word or nothing in its stead. */
export function EitherControl(props: ControlProps) {
  const form = useForm();
  const value = () => valueAt(form.document(), props.path);
  const word = () => props.node.anyOf!.find((option) => option.const !== undefined)?.const;
  const hasNone = () => props.node.anyOf!.some((option) => option.type === "null");
  const mode = () => {
    const now = value();
    if (now === undefined) return "usual";
    return now === null ? "none" : now === word() ? "word" : "number";
  };
  const pick = (to: string) => {
    const facts = numberPart(props.node).quantity!;
    if (to === "usual") form.clear(props.path);
    else if (to === "none") form.set(props.path, null);
    else if (to === "word") form.set(props.path, word());
    else {
      const usual = valueAt(form.filled(), props.path);
      const middle = Math.min(facts.high, Math.max(facts.low, 20));
      form.set(props.path, typeof usual === "number" ? usual : middle);
    }
  };
  const usualWords = () => {
    const usual = valueAt(form.filled(), props.path);
    return usual === undefined ? "as usual" : `as usual (${shownValue(usual, props.node)})`;
  };
  return (
    <>
      <select
        class="box"
        id={mode() === "number" ? undefined : elementId(form, props.path)}
        aria-label={mode() === "number" ? `${props.label}, how` : props.label}
        aria-describedby={props.describedBy || undefined}
        onChange={(event) => pick(event.currentTarget.value)}
      >
        <Show when={props.isOptional || mode() === "usual"}>
          <option value="usual" selected={mode() === "usual"}>
            {usualWords()}
          </option>
        </Show>
        <Show when={word() !== undefined}>
          <option value="word" selected={mode() === "word"}>
            {choiceLabel(word(), props.node)}
          </option>
        </Show>
        <Show when={hasNone()}>
          <option value="none" selected={mode() === "none"}>
            none
          </option>
        </Show>
        <option value="number" selected={mode() === "number"}>
          a figure
        </option>
      </select>
      <Show when={mode() === "number"}>
        <NumberControl {...props} isOptional={false} />
      </Show>
    </>
  );
}
