import { valueAt } from "../../../engine/fields/formPath.ts";
import { elementId, useForm } from "../../parts/formContext.ts";
import { TypedBox } from "../../parts/TypedBox.tsx";
import { clockStep, typedClock } from "../../parts/typedClock.ts";
import type { ControlProps } from "./controlProps.ts";

/** A box for a word, a time of day or a longer text. */
export function WordBox(props: ControlProps) {
  const form = useForm();
  const value = () => String(valueAt(form.document(), props.path) ?? "");
  const isClock = () => props.node.pattern?.includes("24:00") === true;
  const isLong = () => (props.node.maxLength ?? 0) > 1000;
  const commit = (text: string) => {
    if (text.trim() === "" && props.isOptional) form.clear(props.path);
    else form.set(props.path, isClock() ? typedClock(text) : text.trim());
  };
  const usual = () => valueAt(form.filled(), props.path);
  return (
    <TypedBox
      id={elementId(form, props.path)}
      label={props.label}
      value={value()}
      placeholder={
        props.isOptional ? (typeof usual() === "string" && value() === "" ? String(usual()) : "–") : undefined
      }
      describedBy={props.describedBy}
      isWrong={props.isWrong}
      room={isClock() ? 5 : props.path.at(-1) === "name" || props.path.at(-1) === "at" ? 26 : 16}
      isLong={isLong()}
      onCommit={commit}
      onStep={
        isClock()
          ? (direction, isLarge, typed) => form.set(props.path, clockStep(typed, direction, isLarge))
          : undefined
      }
    />
  );
}
