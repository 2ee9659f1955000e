import { type JSX, Show } from "solid-js";
import { Control } from "./Control.tsx";
import { fieldLabel, withLabels } from "./fieldWords.ts";
import { elementId, isChanged, problemsAt, useForm, wasAt } from "./formContext.ts";
import { type Path, pattern, valueAt } from "./formPath.ts";
import { numberPart, type SchemaNode } from "./formSchema.ts";
import { Scale } from "./Scale.tsx";
import { plainFigure, shownUnit, shownValue, toShown } from "./shownValue.ts";
import { WrongLines } from "./WrongLines.tsx";

/** What a field is for and what is usual, as it stands beside the blank. */
export function whyInWords(node: SchemaNode): string {
  const number = numberPart(node);
  const what = (number.quantity?.what ?? node.description ?? "")
    .replace(/, as a share of 1$/, "")
    .replace(/, from -?[\d.]+ to .*$/, "");
  const sentence = what === "" ? "" : withLabels(`${what.charAt(0).toUpperCase()}${what.slice(1).replace(/\.$/, "")}.`);
  const { typical, why = "" } = number.quantity ?? {};
  if (typical === undefined) return sentence;
  const unit = shownUnit(node);
  const [low, high] = typical.map((value) => plainFigure(toShown(value, number)));
  const range = `Usually ${low} to ${high}${unit === "" || unit === "°" ? unit : `\u202f${unit}`}${why === "" ? "." : `: ${why.replace(/\.?$/, ".")}`}`;
  return `${sentence} ${range}`.trim();
}

/** One ruled line of the booking sheet: name, value and unit, scale, why, and what it was. */
export function FieldRow(props: {
  path: Path;
  node: SchemaNode;
  isOptional: boolean;
  /** Stands in for the blank that follows from the schema. */
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
