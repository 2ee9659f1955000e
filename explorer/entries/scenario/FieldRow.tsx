import { type JSX, Show } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { type Path, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import { numberPart, type SchemaNode } from "../../../engine/fields/formSchema.ts";
import { shownValue } from "../../../engine/fields/shownValue.ts";
import { elementId, isChanged, problemsAt, useForm, wasAt } from "../../parts/formContext.ts";
import { WrongLines } from "../../parts/WrongLines.tsx";
import { whyInWords } from "../../parts/whyInWords.ts";
import { Control } from "./Control.tsx";
import { Scale } from "./Scale.tsx";

/** One ruled line of the booking sheet: name, value and unit, scale, why, and what it was. */
export function FieldRow(props: {
  path: Path;
  node: SchemaNode;
  isOptional: boolean;
  /** Stands in for the box that follows from the schema. */
  children?: JSX.Element;
  label?: string;
  /** Whether problems of what lies inside belong to this line too. */
  within?: boolean;
}) {
  const form = useForm();
  const label = () => props.label ?? fieldLabel(pattern(props.path));
  const problems = () => problemsAt(form, props.path, props.within === true);
  const changed = () => isChanged(form, props.path);
  const was = () => wasAt(form, props.path);
  const value = () => valueAt(form.document(), props.path);
  const describedBy = () =>
    [problems().length > 0 ? elementId(form, props.path, "wrong") : "", elementId(form, props.path, "why")]
      .join(" ")
      .trim();
  const hasScale = () =>
    numberPart(props.node).quantity !== undefined && typeof value() !== "string" && props.children === undefined;
  const wasWords = () => {
    const before = was();
    if (before === null) return "";
    if (before === "new") return "new";
    return changed() ? shownValue(before.value, props.node) : "as base";
  };
  return (
    <div class="row" classList={{ "row-plain": !hasScale() }}>
      <div class="row-name">
        <Show when={changed()}>
          <i class="changed" aria-hidden="true" />
        </Show>
        {label()}
        <Show when={changed()}>
          <span class="unseen">, changed</span>
        </Show>
      </div>
      <div class="row-value">
        {props.children ?? (
          <Control
            path={props.path}
            node={props.node}
            label={label()}
            isOptional={props.isOptional}
            isWrong={problems().length > 0}
            describedBy={describedBy()}
          />
        )}
        <Show when={props.isOptional && value() !== undefined && props.node.quantity !== undefined}>
          <button
            type="button"
            class="act act-usual"
            aria-label={`As usual: ${label()}`}
            onClick={() => form.clear(props.path)}
          >
            as usual
          </button>
        </Show>
      </div>
      <div class="row-scale">
        <Show when={hasScale()}>
          <Scale
            node={props.node}
            now={value() ?? valueAt(form.filled(), props.path)}
            was={(() => {
              const before = was();
              return before === null || before === "new" ? undefined : before.value;
            })()}
          />
        </Show>
      </div>
      <p class="row-why" id={elementId(form, props.path, "why")}>
        {whyInWords(props.node)}
      </p>
      <p class="row-was">
        <Show when={changed()}>
          <span class="row-was-word">was </span>
        </Show>
        {wasWords()}
      </p>
      <WrongLines path={props.path} problems={problems()} />
    </div>
  );
}
