import { Show } from "solid-js";
import { valueAt } from "../../../engine/fields/formPath.ts";
import { numberPart } from "../../../engine/fields/formSchema.ts";
import { plainFigure, shownUnit, toShown, toStored } from "../../../engine/fields/shownValue.ts";
import { elementId, useForm } from "../../parts/formContext.ts";
import { TypedBox } from "../../parts/TypedBox.tsx";
import { arrowStep, typedQuantity, typedWithUnit } from "../../parts/typedQuantity.ts";
import type { ControlProps } from "./controlProps.ts";

const ASCII_MINUS = (text: string) => text.replaceAll("\u202f", "").replace("\u2212", "-");

/** A box for a number, with its unit behind it; the arrow keys move it within what is allowed. */
export function NumberControl(props: ControlProps) {
  const form = useForm();
  const node = () => numberPart(props.node);
  const unit = () => shownUnit(node());
  const value = () => valueAt(form.document(), props.path);
  const shown = (stored: unknown) =>
    typeof stored === "number"
      ? ASCII_MINUS(plainFigure(toShown(stored, node())))
      : stored === undefined || stored === null
        ? ""
        : String(stored);
  const commit = (text: string) => {
    if (text.trim() === "") {
      if (props.isOptional) form.clear(props.path);
      return;
    }
    const typed = typedQuantity(text, unit());
    const stored =
      typeof typed === "number" ? toStored(typed, node()) : typedWithUnit(text, node().quantity?.unit ?? "");
    form.set(props.path, stored ?? text);
  };
  const step = (direction: number, isLarge: boolean, text: string) => {
    const facts = node().quantity!;
    const from = typedQuantity(text === "" ? shown(valueAt(form.filled(), props.path)) : text, unit());
    if (typeof from !== "number") return;
    const limits = { unit: unit(), low: toShown(facts.low, node()), high: toShown(facts.high, node()) };
    const by = arrowStep(from, limits, node().type === "integer") * (isLarge ? 10 : 1);
    const to = Number(((Math.round(from / by) + direction) * by).toPrecision(10));
    form.set(props.path, toStored(Math.min(limits.high, Math.max(limits.low, to)), node()));
  };
  return (
    <>
      <TypedBox
        id={elementId(form, props.path)}
        label={unit() === "" ? props.label : `${props.label}, ${unit()}`}
        value={shown(value())}
        placeholder={props.isOptional ? shown(valueAt(form.filled(), props.path)) || "–" : undefined}
        describedBy={props.describedBy}
        isWrong={props.isWrong}
        room={Math.max(5, shown(value() ?? valueAt(form.filled(), props.path)).length)}
        isNumber={true}
        onCommit={commit}
        onStep={step}
      />
      <Show when={unit() !== ""}>
        <span class="unit">{unit()}</span>
      </Show>
    </>
  );
}
